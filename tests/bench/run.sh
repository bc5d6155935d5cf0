#!/bin/sh
# Measures reading: against the bare parse, against the compiler, how time and memory grow with the size; check against
# reading.
# usage: tests/bench/run.sh BUILD SCORES LILYPOND
set -eu
build=$1
scores=$2
lilypond=$3
film=corpus
out=$build/bench
runs=5
mkdir -p "$out"

for megabytes in 1 5 20; do
    tests/bench/make_score.py $film $((megabytes * 1000000)) "$out/film-$megabytes-MB.ly"
done
largest=""
if [ -f "$scores/LIST.tsv" ]; then
    largest=$(tail -n +2 "$scores/LIST.tsv" | sort -t "$(printf '\t')" -k 2,2nr | head -n 5 | cut -f 1 |
        sed "s|^|$scores/|")
fi
# shellcheck disable=SC2086  # a list of paths without spaces
"$out/bench" $runs "$out/film-1-MB.ly" "$out/film-5-MB.ly" "$out/film-20-MB.ly" $film/*/score.ly $largest \
    >"$out/figures.tsv"

echo "Reading (includes, syntax, staves, events, bars, tempos) against the bare parse of the same files:"
echo "processor time, medians of $runs runs"
awk -F '\t' '
    BEGIN {
        row = "%9s  %8s  %8s  %9s  %8s  %8s  %8s  %8s  %s\n"
        printf row, "reading/", "reading", "parse", "memory an", "peak of", "peak of", "", "", ""
        printf row, "parse", "MB/s", "MB/s", "event, B", "reading", "parse", "MB", "events", "score"
    }
    {
        name = $1
        sub(/.*\/bench\//, "", name)
        if (length(name) > 50) name = "..." substr(name, length(name) - 46)
        printf row, sprintf("%.2f", $5 / $4), sprintf("%.1f", $2 / $5 / 1e6), sprintf("%.1f", $2 / $4 / 1e6), \
            sprintf("%.0f", $6 / $3), sprintf("%.1f MB", $8 / 1e6), sprintf("%.1f MB", $7 / 1e6), \
            sprintf("%.3f", $2 / 1e6), $3, name
    }
    NR == 1 { bytes = $2; time = $5; memory = $6; peak = $8 }
    NR == 3 {
        grown = sprintf("From %.0f to %.0f MB, each a byte (1.00 = linear; %.1f times the bytes): %.2f times the time,\n" \
            "%.2f times the memory of music and scores, %.2f times the peak", bytes / 1e6, $2 / 1e6, $2 / bytes, \
            $5 / time * bytes / $2, $6 / memory * bytes / $2, $8 / peak * bytes / $2)
    }
    END { print ""; print grown }' "$out/figures.tsv"

printf '\nReading and all rules of check against the reading alone (1.60 at the most is wanted)\n'
awk -F '\t' '
    BEGIN { printf "%9s  %8s  %8s  %s\n%9s  %8s  %8s\n", "check/", "check", "reading", "", "reading", "s", "s" }
    {
        name = $1
        sub(/.*\/bench\//, "", name)
        if (length(name) > 50) name = "..." substr(name, length(name) - 46)
        printf "%9.2f  %8.3f  %8.3f  %s\n", $9 / $5, $9, $5, name
    }' "$out/figures.tsv"

edits() { # ONE|ALL|MIXED FILE...: a row a score
    mode=$1
    shift
    "$out/bench_edit" "$mode" $runs "$@" |
        awk -F '\t' '
            BEGIN { printf "%9s  %8s  %8s  %8s  %8s  %s\n", "edit/", "edit", "reading", "", "", ""
                    printf "%9s  %8s  %8s  %8s  %8s  %s\n", "reading", "s", "s", "MB", "changes", "score" }
            {
                name = $1
                sub(/.*\/bench\//, "", name)
                if (length(name) > 50) name = "..." substr(name, length(name) - 46)
                printf "%9.2f  %8.3f  %8.3f  %8.3f  %8d  %s\n", $4 / $3, $4, $3, $2 / 1e6, $5, name
            }'
}
printf '\nOne note changed (planned, printed, the result read and compared) against the reading; processor time,\n'
echo "medians of $runs runs"
# shellcheck disable=SC2086
edits one "$out/film-1-MB.ly" "$out/film-5-MB.ly" $largest
printf '\nEvery note of one staff changed, half of them in \\relative: linear when the first column stays\n'
staves=""
for notes in 5000 10000 20000; do
    tests/bench/make_staff.py $notes "$out/staff-$notes.ly"
    staves="$staves $out/staff-$notes.ly"
done
# shellcheck disable=SC2086
edits all $staves
printf '\nThousands of changes of mixed kinds in one request, over 35 staves of 120, 240 and 480 bars\n'
cues=""
for bytes in 100000 200000 400000; do
    tests/bench/make_score.py $film $bytes "$out/film-$bytes-bytes.ly"
    cues="$cues $out/film-$bytes-bytes.ly"
done
# shellcheck disable=SC2086
edits mixed $cues

printf '\nTransformations of 21 bars in a cue of 35 staves and 120 bars (at most 3.00 times the reading is wanted)\n'
mkdir -p "$out/cue" # what lies beside a source may include it, and is looked at
cp "$out/film-100000-bytes.ly" "$out/cue/score.ly"
"$out/bench_moves" $runs 40-60 "$out/cue/score.ly" |
    awk -F '\t' '
        BEGIN { printf "%9s  %8s  %8s  %8s\n%9s  %8s  %8s  %8s\n", "moved/", "moved", "reading", "", \
                       "reading", "s", "s", "bytes" }
        { printf "%9.2f  %8.4f  %8.4f  %8d  %s\n", $3 / $2, $3, $2, $4, $1 }'

if ! command -v "$lilypond" >/dev/null; then
    echo "Against the compiler: left out, there is no $lilypond"
    exit 0
fi
microseconds() { # COMMAND...: what it takes, its output thrown away; it may have findings
    begin=$(date +%s%N)
    "$@" >/dev/null 2>&1 || true
    echo $((($(date +%s%N) - begin) / 1000))
}
printf '\nThe whole command against the compiler, which also lays out the notes, but prints no pages here;\n'
echo "medians of $runs runs, one run of the compiler"
printf '%9s  %11s  %10s  %s\n' "compiler/" "stavewright" "compiler" ""
printf '%9s  %11s  %10s  %s\n' "ours" "ms" "ms" "score"
for cue in $film/*/score.ly; do
    ours=$(for run in $(seq $runs); do microseconds "$build/stavewright" events "$cue"; done |
        sort -n | sed -n "$((runs / 2 + 1))p")
    theirs=$(microseconds "$lilypond" -dno-print-pages -o "$out/compiled" "$cue")
    echo "$ours $theirs $cue" |
        awk '{ printf "%9.0f  %11.1f  %10.0f  %s\n", $2 / $1, $1 / 1000, $2 / 1000, $3 }'
done

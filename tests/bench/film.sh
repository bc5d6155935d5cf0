#!/bin/sh
# Measures a whole film: the full check on all processors against the bare parse of the same bytes on one, against the compiler
# on a sample of its cues, and the check of what is staged.
# usage: tests/bench/film.sh BUILD FOLDER LILYPOND      writes the film into FOLDER
set -eu
build=$(cd "$1" && pwd)
film=$2
lilypond=$3
runs=5
cues=60

tests/bench/make_film.py corpus $cues 3 "$film"
microseconds() { # COMMAND...: what it takes, its output thrown away; it may have findings
    begin=$(date +%s%N)
    "$@" >/dev/null 2>&1 || true
    echo $((($(date +%s%N) - begin) / 1000))
}
median() { # COMMAND...
    for run in $(seq $runs); do microseconds "$@"; done | sort -n | sed -n "$((runs / 2 + 1))p"
}

parse=$(for run in $(seq $runs); do find "$film" -name '*.*ly' -print0 | xargs -0 "$build/bench/bench_parse"; done |
    sort -t "$(printf '\t')" -k 2,2n | sed -n "$((runs / 2 + 1))p")
check=$(median "$build/stavewright" check --quiet "$film")
scores=$(find "$film" -name score.ly -o -path '*/parts/*.ly' | wc -l)
printf '\nA film of %d cues, %d scores and parts: check with all rules on %d processors (elapsed time) against the bare parse\n' \
    $cues "$scores" "$(nproc)"
echo "of each file once on one (processor time); medians of $runs runs (1.60 at the most is wanted)"
echo "$parse $check" | awk '
    { printf "%9s  %8s  %8s  %8s\n%9.2f  %8.3f  %8.3f  %8.3f\n", "check/", "check", "parse", "MB", $3 / 1e6 / $2, $3 / 1e6, $2, $1 / 1e6 }'

git -C "$film" init -q
git -C "$film" add .
git -C "$film" -c user.name=bench -c user.email=bench@localhost commit -q -m "all cues"
printf '%% a late change\n' >>"$film/1m2/woodwinds.ily"
git -C "$film" add .
staged=$(cd "$film" && median "$build/stavewright" check --quiet --staged)
echo "$staged" | awk '{ printf "check --staged with one family file of one cue staged: %.0f ms (under 150 is wanted)\n", $1 / 1000 }'

if ! command -v "$lilypond" >/dev/null; then
    echo "Against the compiler: left out, there is no $lilypond"
    exit 0
fi
sample="$film/1m1 $film/3m2 $film/5m6"
compiler=0
for source in $(find $sample -name '*.ly' | sort); do
    compiler=$((compiler + $(microseconds "$lilypond" -dno-print-pages -o "$film/compiled" "$source")))
done
# shellcheck disable=SC2086  # paths without spaces
ours=$(median "$build/stavewright" check --quiet $sample)
echo "$compiler $ours" | awk '
    { printf "Three of its cues, scores and parts, through the compiler (no pages printed) against their check: %.0f times (%.1f s, %.3f s)\n",
          $1 / $2, $1 / 1e6, $2 / 1e6 }'

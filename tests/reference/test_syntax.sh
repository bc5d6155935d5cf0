#!/bin/sh
# How much of what people write is parsed without an error node: all of the demo film and of the real scores (when they
# are there), and nearly all examples of the language manual (where it is installed; some show what is wrong on purpose).
set -u
manual=/usr/share/doc/lilypond/html
status=0

# share NAME FLOOR FOLDER: FLOOR in tenths of a percent.
share() {
    find -L "$3" -type f \( -name '*.ly' -o -name '*.ily' -o -name '*.lyi' \) -print0 |
        sort -z | xargs -0 -r "$SW_COMMAND" syntax >"$SW_TEMP/$1" 2>"$SW_TEMP/errors"
    # xargs may need several runs of the command, so there may be several totals.
    counts=$(awk '/^total: / { files += $2; clean += $4 } END { print files + 0, clean + 0 }' "$SW_TEMP/$1")
    files=${counts% *}
    clean=${counts#* }
    echo "# $1: $clean of $files files parsed without an error"
    if [ -s "$SW_TEMP/errors" ]; then
        cat "$SW_TEMP/errors"
        status=1
    fi
    if [ "$files" = 0 ] || [ $((clean * 1000)) -lt $((files * $2)) ]; then
        echo "at least $2 in 1000 must be:"
        grep ': error: ' "$SW_TEMP/$1" | head -n 40
        status=1
    fi
}

share demo-film 1000 corpus
if [ -d "$SW_SCORES" ]; then
    share real-scores 1000 "$SW_SCORES"
else
    echo "# real-scores: left out, there is no $SW_SCORES"
fi
if [ -d "$manual" ]; then
    share manual 995 "$manual"
else
    echo "# manual: left out, there is no $manual"
fi
exit $status

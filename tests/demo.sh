#!/bin/sh
# Shows the main job on the demo film: what a score holds, what is wrong in it, and a part shaped for the player.
# usage: tests/demo.sh COMMAND FILM
set -u
command=$1
film=$2
shown=25

# show WHAT ARGUMENTS...: the first lines of what the command prints. Findings (status 1) are what a demo is for;
# bad input (status 2) or worse ends it. A command that this build does not have is passed over.
show() {
    what=$1
    shift
    "$command" help "$1" >/dev/null 2>&1 || return 0
    output=$("$command" "$@" 2>&1)
    status=$?
    printf '\n==== %s\n==== stavewright %s\n\n' "$what" "$*"
    printf '%s\n' "$output" | head -n $shown
    lines=$(printf '%s\n' "$output" | wc -l)
    [ "$lines" -le $shown ] || echo "... and $((lines - shown)) lines more"
    if [ $status -gt 1 ]; then
        echo "demo: stavewright $1 ended with status $status" >&2
        exit $status
    fi
}

show 'What is in the first cue: staves, instruments, keys, tempos, time' outline "$film/1m1-first-light/score.ly"
show 'What is wrong in the film: notes that do not add up, and what no player can play' check "$film"
shown=80
show "The first harp's line shared out between two hands, as a change to review" \
    hands "$film/1m1-first-light/score.ly" --staff harp1
show 'Two bars of the first flute an octave higher: only the marks that must change do' \
    octave "$film/1m1-first-light/score.ly" --staff flute1 --bars 8-9 --by 1
printf '\nThese are the first lines; run the commands yourself to see all: %s help\n' "$command"

#!/bin/sh
# Runs tests, several at a time: one line each, the output of those that fail, and a summary.
# usage: tests/run.sh BUILD SCORES LILYPOND TEST...
#
# A test is a program or script, run from the root of the repository. It passes with exit status 0; 77 means that it
# can't be run here and was left out. Of a test that does not fail only lines that begin with "# " are shown. It finds
# in its environment:
#   SW_COMMAND   the command, built with the sanitizers
#   SW_BUILD     the folder of what is built, and SW_TEMP, an empty folder of the test's own
#   SW_SCORES    the full path of real scores with the compiler's reading of them (the folder may be missing)
#   SW_LILYPOND  the compiler's name (it may be missing)
#   SW_SEED      the seed of what is drawn by chance: always the same here, so that a test that fails does so because of
#                what was changed. SW_SEED=N make test, or a test run by itself, looks at other cases.
set -u

run_one() {
    name=${1##*tests/}
    log=$SW_BUILD/test-results/$name
    SW_TEMP=$log.temp
    export SW_TEMP
    mkdir -p "$SW_TEMP"
    begin=$(date +%s%N)
    timeout 600 "$1" >"$log.log" 2>&1 </dev/null
    status=$?
    milliseconds=$((($(date +%s%N) - begin) / 1000000))
    show='s/^# /         /p'
    case $status in
    0) verdict=ok ;;
    77) verdict=skipped ;;
    124) verdict=FAILED show='s/^/    /p;$s/.*/    (stopped: it took more than 600 s)/p' ;;
    *) verdict=FAILED show='s/^/    /p' ;;
    esac
    echo $verdict >"$log.verdict"
    # One write, so that the lines of tests that run at the same time do not mix.
    text=$(printf '%-8s %4d.%03d s  %s\n' $verdict $((milliseconds / 1000)) $((milliseconds % 1000)) "$name"
        sed -n "$show" "$log.log")
    printf '%s\n' "$text"
}

if [ "$1" = --one ]; then
    run_one "$2"
    exit 0
fi

SW_BUILD=$(realpath "$1")
SW_COMMAND=$SW_BUILD/test/stavewright
# Tests write this path into sources of their own, which lie elsewhere.
SW_SCORES=$(realpath -m "${2:-no-scores}")
SW_LILYPOND=$3
# What a sanitizer finds must not look like the command's own status 1.
ASAN_OPTIONS=${ASAN_OPTIONS:-exitcode=99}
UBSAN_OPTIONS=${UBSAN_OPTIONS:-exitcode=99:print_stacktrace=1}
SW_SEED=${SW_SEED:-1126}
export SW_BUILD SW_COMMAND SW_SCORES SW_LILYPOND SW_SEED ASAN_OPTIONS UBSAN_OPTIONS
shift 3
rm -rf "$SW_BUILD/test-results"
mkdir -p "$SW_BUILD/test-results"
begin=$(date +%s)
printf '%s\0' "$@" | xargs -0 -n 1 -P "$(nproc)" "$0" --one

count() {
    find "$SW_BUILD/test-results" -name '*.verdict' -exec grep -lx "$1" {} + | wc -l
}
failed=$(count FAILED)
skipped=$(count skipped)
passed=$(count ok)
echo "$passed tests passed, $failed failed, $skipped skipped, in $(($(date +%s) - begin)) s"
if [ $((passed + failed + skipped)) != $# ]; then
    echo "$(($# - passed - failed - skipped)) tests were not run to their end"
    exit 1
fi
[ "$failed" = 0 ]

#!/bin/sh
# A layer may include only headers of its own and of the layers before it (DEVELOPERS.md, 'The map').
set -u
layers="base music source syntax score write players checks moves report app"

# The layer that a public header belongs to.
layer_of_header() {
    case $1 in
    base | rational) echo base ;;
    pitch | duration | metre | dynamic) echo music ;;
    source | git | paths) echo source ;;
    syntax) echo syntax ;;
    score | finding | main_files | cues | compare | meaning | selection) echo score ;;
    change | edit) echo write ;;
    players | abilities | dynamics | techniques | limits | film) echo players ;;
    check) echo checks ;;
    move | fix) echo moves ;;
    report) echo report ;;
    *) echo "unknown" ;;
    esac
}

rank() {
    n=0
    for layer in $layers; do
        n=$((n + 1))
        [ "$layer" = "$1" ] && { echo $n; return; }
    done
    echo 0
}

bad=0
check() { # FILE ITS-LAYER
    own=$(rank "$2")
    for header in $(sed -n 's/^#include "\([^"]*\)".*/\1/p' "$1"); do
        case $header in
        stavewright/*) other=$(layer_of_header "$(basename "$header" .h)") ;;
        */*) other=${header%%/*} ;;
        *) other=$2 ;;
        esac
        if [ "$(rank "$other")" = 0 ] || [ "$(rank "$other")" -gt "$own" ]; then
            echo "$1: layer $2 includes $header of layer $other"
            bad=1
        fi
    done
}

for file in src/*/*.c src/*/*.h; do
    layer=${file#src/}
    check "$file" "${layer%%/*}"
done
for file in include/stavewright/*.h; do
    layer=$(layer_of_header "$(basename "$file" .h)")
    [ "$layer" = unknown ] && { echo "$file: name its layer in this test"; bad=1; }
    check "$file" "$layer"
done
exit $bad

#!/bin/sh
# What `make install` puts in place can be used: the command runs, and a program that is compiled with pkg-config's
# words alone, against the shared and against the static library, reads a score.
set -eu
cat >"$SW_TEMP/count.c" <<'EOF'
#include <stdio.h>
#include <stavewright/score.h>

int main(int count, char **arguments)
{
    char *error = NULL;
    sw_reading *reading = count == 2 ? sw_read(arguments[1], NULL, &error) : NULL;
    if (reading == NULL) {
        fprintf(stderr, "%s\n", error != NULL ? error : "name a score");
        return 2;
    }
    printf("%zu events\n", reading->scores[0].event_count);
    sw_reading_free(reading);
    return 0;
}
EOF
CC=${CC:-cc}
score=corpus/1m1-first-light/score.ly
for header in include/stavewright/*.h; do
    headers="${headers:-}#include <stavewright/${header##*/}>
"
done

prefix=$SW_TEMP/prefix
make --no-print-directory -s BUILD="$SW_BUILD" PREFIX="$prefix" install
"$prefix/bin/stavewright" --version
PKG_CONFIG_PATH=$prefix/lib/pkgconfig
export PKG_CONFIG_PATH
[ "$("$prefix/bin/stavewright" --version)" = "stavewright $(pkg-config --modversion stavewright)" ]

# All public headers can be used together, and each alone.
printf '%s' "$headers" >"$SW_TEMP/headers.c"
"$CC" -std=c17 -Wall -Wextra -Wpedantic -Werror -fsyntax-only $(pkg-config --cflags stavewright) "$SW_TEMP/headers.c"
for header in "$prefix"/include/stavewright/*.h; do
    "$CC" -std=c17 -Wall -Wextra -Wpedantic -Werror -fsyntax-only -x c $(pkg-config --cflags stavewright) "$header"
done

"$CC" "$SW_TEMP/count.c" $(pkg-config --cflags --libs stavewright) -o "$SW_TEMP/shared"
LD_LIBRARY_PATH=$prefix/lib "$SW_TEMP/shared" $score >"$SW_TEMP/shared.out"
readelf -d "$SW_TEMP/shared" | grep -q 'NEEDED.*libstavewright\.so\.[0-9]'

# Without the shared library the linker takes the static one.
rm "$prefix"/lib/libstavewright.so*
"$CC" "$SW_TEMP/count.c" $(pkg-config --static --cflags --libs stavewright) -o "$SW_TEMP/static"
"$SW_TEMP/static" $score >"$SW_TEMP/static.out"

grep -q '^[1-9][0-9]* events$' "$SW_TEMP/shared.out"
cmp "$SW_TEMP/shared.out" "$SW_TEMP/static.out"

# A staged installation: files land below DESTDIR, the paths written into them do not name it.
make --no-print-directory -s BUILD="$SW_BUILD" PREFIX="$prefix" DESTDIR="$SW_TEMP/stage" install
[ -x "$SW_TEMP/stage$prefix/bin/stavewright" ]
if grep -q "$SW_TEMP/stage" "$SW_TEMP/stage$prefix/lib/pkgconfig/stavewright.pc"; then
    echo "stavewright.pc names DESTDIR"
    exit 1
fi
echo "# $(cat "$SW_TEMP/shared.out") read through the installed library, shared and static"

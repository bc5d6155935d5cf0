#!/bin/sh
# The committed parser is the one that grammar.js gives: says when `make grammar` was forgotten, when the parser was
# changed by hand, or when the scanner counts other tokens than the grammar.
set -u
cd grammar || exit 1
if ! sha256sum --check --quiet generated-from.sha256; then
    echo "grammar.js and src/parser.c do not belong together: run \`make grammar\` and commit what it changes"
    exit 1
fi

# The scanner's tokens are the four of Scheme, one for each kind of markup command, and one that is never given.
of_grammar=$(sed -n 's/^#define EXTERNAL_TOKEN_COUNT //p' src/parser.c)
of_scanner=$((4 + 1 + $(sed -n '/^enum markup_kind/,/^}/p' src/markup_commands.h | grep -c '^ *MARKUP_') - 1))
if [ "$of_grammar" != "$of_scanner" ]; then
    echo "grammar.js has $of_grammar external tokens, src/scanner.c and src/markup_commands.h have $of_scanner"
    exit 1
fi

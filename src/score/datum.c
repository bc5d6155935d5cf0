#include <ctype.h>

#include "score/datum.h"

/* The byte behind LilyPond in Scheme, #{ ... #}, that begins at `at`. */
static size_t behind_template(sw_slice text, size_t at)
{
    size_t depth = 0;
    for (; at < text.length; at++) {
        sw_slice rest = sw_datum_rest(text, at);
        if (sw_slice_starts(rest, "#{")) {
            depth++;
        } else if (sw_slice_starts(rest, "#}") && --depth == 0) {
            return at + 2;
        }
    }
    return text.length;
}

size_t sw_datum_next(sw_slice text, sw_slice *datum)
{
    size_t at = 0;
    while (at < text.length) {
        if (isspace((unsigned char)text.data[at])) {
            at++;
        } else if (text.data[at] == ';') {
            while (at < text.length && text.data[at] != '\n') {
                at++;
            }
        } else {
            break;
        }
    }
    size_t start = at;
    size_t depth = 0;
    while (at < text.length) {
        char c = text.data[at];
        if (c == '"') {
            for (at++; at < text.length && text.data[at] != '"'; at++) {
                at += text.data[at] == '\\' && at + 1 < text.length;
            }
            at++;
        } else if (c == '(') {
            depth++;
            at++;
            continue;
        } else if (c == ')') {
            if (depth == 0) {
                break;
            }
            depth--;
            at++;
        } else if (c == '\'' || c == '`' || c == ',' ||
                   (c == '#' && at + 1 < text.length && text.data[at + 1] == '(')) {
            at++;
            continue;
        } else if (isspace((unsigned char)c)) {
            at++;
            continue;
        } else if (c == ';') {
            while (at < text.length && text.data[at] != '\n') {
                at++;
            }
            continue;
        } else if (c == '#' && at + 1 < text.length && text.data[at + 1] == '{') {
            at = behind_template(text, at);
        } else {
            if (c == '#' && at + 1 < text.length && text.data[at + 1] == '\\') {
                at += 3;
            }
            while (at < text.length && !isspace((unsigned char)text.data[at]) && text.data[at] != '(' &&
                   text.data[at] != ')' && text.data[at] != '"' && text.data[at] != ';') {
                at++;
            }
        }
        if (depth == 0) {
            break;
        }
    }
    if (at > text.length) {
        at = text.length;
    }
    *datum = (sw_slice){text.data + start, at - start};
    return at == start ? 0 : at;
}

sw_slice sw_datum_rest(sw_slice text, size_t from)
{
    return (sw_slice){text.data + from, text.length - from};
}

sw_slice sw_datum_inside(sw_slice datum)
{
    if (datum.length < 2 || datum.data[0] != '(') {
        return (sw_slice){datum.data, 0};
    }
    bool closed = datum.data[datum.length - 1] == ')';
    return (sw_slice){datum.data + 1, datum.length - (closed ? 2 : 1)};
}

bool sw_datum_makes_event(sw_slice symbol)
{
    enum { LENGTH = 10 };
    return symbol.length == LENGTH && sw_slice_starts(symbol, "make-") && sw_slice_ends(symbol, "-music");
}

#!/usr/bin/env python3
"""Inputs that nobody should write, and that an editor or a broken transfer can produce all the same: the command ends by itself with
status 0 or 1, in bounded time and memory, without a sanitizer's complaint."""
import os
import pathlib
import subprocess
import sys

COMMAND = os.environ["SW_COMMAND"]
TEMP = pathlib.Path(os.environ["SW_TEMP"])
SECONDS = 100


def doubling(first, count, line):
    """Definitions, each of which uses the one before twice: `line` with the names NEW and OLD."""
    names = [chr(97 + i // 26) + chr(97 + i % 26) for i in range(count + 1)]
    lines = [line.replace("NEW", new).replace("OLD", old) for old, new in zip(names, names[1:])]
    return "\n".join([first.replace("NEW", names[0])] + lines) + "\n", "\\" + names[-1]


MUSIC, GROWN = doubling("NEW = { c'4 d' }", 40, "NEW = { \\OLD \\OLD }")
CHAIN, CHAINED = doubling("NEW = { c'4 d' }", 600, "NEW = \\OLD")
MARKUPS, MARKED = doubling("NEW = { c'4^\\markup \\score { c'4 } }", 40, "NEW = { \\OLD \\OLD }")
TEMPLATES, EXPANDED = doubling("NEW = #(define-music-function (m) (ly:music?) #{ \\m \\m #})", 40,
                               "NEW = #(define-music-function (m) (ly:music?) #{ \\OLD \\m \\OLD \\m #})")
# What a few lines can grow to: it must end at the reader's own bounds, and say so.
GROWING = {
    "a template that calls itself":
        ("f = #(define-music-function (m) (ly:music?) #{ \\f { $m $m } #}) { \\f c4 }", "calls itself"),
    "a template that calls itself twice":
        ("f = #(define-music-function (m) (ly:music?) #{ \\f \\m \\f \\m #}) { \\f c4 }", "calls itself"),
    "variables that grow": (f"{MUSIC} {{ {GROWN} }}", "longer than any real one"),
    "variables that grow, in many scores": (MUSIC + f"\\score {{ {GROWN} }}" * 30, "longer than any real one"),
    "variables that grow, in \\relative": (f"{MUSIC} \\relative {GROWN}", "copies of music are left out"),
    "variables that grow, computed with": (f"{MUSIC} {{ \\retrograde {GROWN} }}", "copies of music are left out"),
    "variables that grow, measured": (f"{MUSIC} x = #(skip-of-length {GROWN[1:]}) {{ \\x }}", "longer than any real one"),
    "variables that grow, as grace notes": (f"{MUSIC} {{ \\grace {GROWN} c'4 }}", "longer than any real one"),
    "variables that grow, combined": (f"{MUSIC} \\partCombine {GROWN} {GROWN}", "longer than any real one"),
    "repeats that grow": ("{ " + "\\repeat unfold 9999 { " * 9 + "c'4 " + "} " * 10, "longer than any real one"),
    "templates that grow": (f"{TEMPLATES} {{ {EXPANDED} c'4 }}", "copies of music are left out"),
    "scores in markups that grow": (f"{MARKUPS} {{ {MARKED} }}", "copies of music are left out"),
    "a long chain of variables": (f"{CHAIN} {{ {CHAINED} }}", ""),
}
INPUTS = {
    "nothing": b"",
    "one brace": b"{",
    "deep blocks": b"{" * 100000 + b" c4 " + b"}" * 100000,
    "deep blocks left open": b"{" * 100000 + b" c4",
    "blocks deeper than are read": b"{" * 5000 + b" c4 " + b"}" * 5000,
    "deep simultaneous music": b"<<" * 50000 + b" c4 " + b">>" * 50000,
    "deep Scheme": b"x = #" + b"(" * 100000 + b")" * 100000 + b"\n{ c4 }",
    "deep markup": b"\\markup " + b"\\bold " * 50000 + b"x\n{ c4 }",
    "calls in calls": b"\\once " * 20000 + b"c4 { d }",
    "relative in relative": b"\\relative " * 20000 + b"{ c4 }",
    "a block left open": b"{ " + b"c4 " * 70000,
    "stray brackets": b"c4 } " * 20000,
    "a chord of many notes, turned": b"{ \\invertChords 99 <" + b"c' e' g' " * 8000 + b">4 }",
    "latin-1": "% caf\u00e9\n\\header { title = \"\u00e9t\u00e9\" }\n{ c4 ^\"caf\u00e9\" d\u00e9 }".encode("latin-1"),
    "byte-order mark, carriage returns, tabs": b"\xef\xbb\xbf{ c4\r\n\td |\r\n}\r\n",
    "many staves": b"<< " + b"\\new Staff { c4 d } " * 20000 + b">>",
    "many scores": b"c4 d e " * 40000,
    "a NUL": b"{ c4 \0 d }",
    "numbers beyond all bounds": b"{ c99999999999999999999 d4*99999999999/99999999999 \\tuplet 99999999999/1 { e } "
                                 b"\\repeat unfold 99999999999 f \\time 99999999999/0 \\partial 1*0/0 g }",
    "a string left open": b'{ c4 ^"text d e }',
    "Scheme left open": b"{ c4 #(foo (bar d }",
    "a comment left open": b"{ c4 %{ d }",
}

bad = []
for name, source in INPUTS.items():
    path = TEMP / "input.ly"
    path.write_bytes(source)
    for command in ("events", "outline", "check"):
        try:
            result = subprocess.run([COMMAND, command, path], stdout=subprocess.DEVNULL, stderr=subprocess.PIPE,
                                    timeout=SECONDS)
        except subprocess.TimeoutExpired:
            bad.append(f"{name}: {command} has not ended after {SECONDS} s")
            continue
        refused = result.returncode == 2 and b"this is no LilyPond source" in result.stderr
        if result.returncode not in (0, 1) and not refused:
            bad.append(f"{name}: {command} ended with {result.returncode}: {result.stderr[-300:]!r}")
for name, (source, wanted) in GROWING.items():
    path = TEMP / "input.ly"
    path.write_text(source)
    try:
        result = subprocess.run([COMMAND, "outline", path], capture_output=True, text=True, timeout=SECONDS)
    except subprocess.TimeoutExpired:
        bad.append(f"{name}: has not ended after {SECONDS} s")
        continue
    said = result.stdout + result.stderr
    if result.returncode not in (0, 1) or wanted not in said:
        bad.append(f"{name}: {result.returncode}, without '{wanted}': {said[-300:]}")
for name, first in (("include each other", '\\include "b.ly"\n'), ("include each other twice", '\\include "b.ly"\n' * 2),
                    ("include each other by another path", f'\\include "../{TEMP.name}/b.ly"\n')):
    (TEMP / "a.ly").write_text(first + "{ c4 }")
    (TEMP / "b.ly").write_text(first.replace("b.ly", "a.ly"))
    result = subprocess.run([COMMAND, "check", TEMP / "a.ly"], capture_output=True, text=True, timeout=SECONDS)
    if result.returncode != 1 or "includes itself" not in result.stdout:
        bad.append(f"files that {name}: {result.returncode}: {result.stdout[:300]}")
print(f"# {len(INPUTS) + len(GROWING) + 3} inputs, {len(bad)} with trouble")
print("\n".join(bad))
sys.exit(1 if bad else 0)

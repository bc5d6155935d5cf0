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

DOUBLING = " ".join(f"{chr(98 + i)} = {{ {chr(92)}{chr(97 + i)} {chr(92)}{chr(97 + i)} {chr(92)}{chr(97 + i)} }}"
                    for i in range(12))
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
    "a template that calls itself":
        b"f = #(define-music-function (m) (ly:music?) #{ \\f { $m $m } #}) { \\f c4 }",
    "variables that grow": b"a = { c4 d e f } " + DOUBLING.encode() + b" { \\m }",
    "latin-1": "% caf\u00e9\n\\header { title = \"\u00e9t\u00e9\" }\n{ c4 ^\"caf\u00e9\" d\u00e9 }".encode("latin-1"),
    "byte-order mark, carriage returns, tabs": b"\xef\xbb\xbf{ c4\r\n\td |\r\n}\r\n",
    "a NUL": b"{ c4 \0 d }",
    "numbers beyond all bounds": b"{ c99999999999999999999 d4*99999999999/99999999999 \\tuplet 99999999999/1 { e } "
                                 b"\\repeat unfold 99999999999 f \\time 99999999999/0 \\partial 1*0/0 g }",
    "a string left open": b'{ c4 ^"text d e }',
    "Scheme left open": b"{ c4 #(foo (bar d }",
    "a comment left open": b"{ c4 %{ d }",
}

# They write out as many notes as are allowed at all: once is enough.
COSTLY = ("a template that calls itself", "variables that grow")

bad = []
for name, source in INPUTS.items():
    path = TEMP / "input.ly"
    path.write_bytes(source)
    for command in ("outline",) if name in COSTLY else ("events", "outline", "check"):
        try:
            result = subprocess.run([COMMAND, command, path], stdout=subprocess.DEVNULL, stderr=subprocess.PIPE,
                                    timeout=SECONDS)
        except subprocess.TimeoutExpired:
            bad.append(f"{name}: {command} has not ended after {SECONDS} s")
            continue
        refused = result.returncode == 2 and b"this is no LilyPond source" in result.stderr
        if result.returncode not in (0, 1) and not refused:
            bad.append(f"{name}: {command} ended with {result.returncode}: {result.stderr[-300:]!r}")
(TEMP / "a.ly").write_text('\\include "b.ly"\n{ c4 }')
(TEMP / "b.ly").write_text('\\include "a.ly"\n')
result = subprocess.run([COMMAND, "check", TEMP / "a.ly"], capture_output=True, text=True, timeout=SECONDS)
if result.returncode != 1 or "includes itself" not in result.stdout:
    bad.append(f"files that include each other: {result.returncode}: {result.stdout[:300]}")
print(f"# {len(INPUTS) + 1} inputs, {len(bad)} with trouble")
print("\n".join(bad))
sys.exit(1 if bad else 0)

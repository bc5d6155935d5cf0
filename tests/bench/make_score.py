#!/usr/bin/env python3
"""Writes one large score of a given size: the second cue of the demo film, played again and again.
usage: make_score.py FILM BYTES FILE

Each pass has variables of its own (`fluteOneA`, `fluteOneB`, ...), and each staff plays its variable of every pass in
turn: many variables, one score, as in a real film, only longer."""
import pathlib
import re
import sys

film, size, target = pathlib.Path(sys.argv[1]), int(sys.argv[2]), pathlib.Path(sys.argv[3])
cue = film / "1m2-across-the-flats"
DEFINITION = re.compile(r"^([A-Za-z]+) = ", re.MULTILINE)


def letters(number):
    """A, B, ... Z, BA, BB, ...: names hold no digits."""
    text = ""
    while number > 0 or text == "":
        text = chr(ord("A") + number % 26) + text
        number //= 26
    return text


def without_includes(text):
    return re.sub(r"^\\(include|version) .*\n", "", text, flags=re.MULTILINE)


score = cue.joinpath("score.ly").read_text(encoding="utf-8")
includes = re.findall(r'^\\include "(.*)"', score, re.MULTILINE)
common, *families = (without_includes((cue / name).read_text(encoding="utf-8")) for name in includes)
music = "\n".join(families)
names = DEFINITION.findall(music)
use = re.compile(rf"\\({'|'.join(sorted(names, key=len, reverse=True))})(?![A-Za-z])")
score = without_includes(score)


def one_pass(suffix):
    text = DEFINITION.sub(lambda m: f"{m[1]}{suffix} = ", music)
    return use.sub(lambda m: f"\\{m[1]}{suffix}", text)


def whole_score(passes):
    def all_passes(match):
        uses = (f"\\{match[1]}{letters(n)}" for n in range(passes))
        return "{\n        " + "\n        ".join(uses) + "\n      }"
    return use.sub(all_passes, score)


# Every pass adds its music and its uses in the score.
base = len(whole_score(0))
each = len(one_pass("AA")) + len(whole_score(1)) - base
passes = max(1, round((size - base - len(common)) / each))
with open(target, "w", encoding="utf-8") as out:
    out.write('\\version "2.24.0"\n' + common)
    out.writelines(one_pass(letters(n)) for n in range(passes))
    out.write(whole_score(passes))

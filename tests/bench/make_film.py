#!/usr/bin/env python3
"""Writes a whole film: cues made of those of the demo film, each played several times over, with their families and parts in
files of their own.
usage: make_film.py FILM CUES PASSES FOLDER

Each pass of a cue has variables of its own (`fluteOneA`, `fluteOneB`, ...), which stand in the family's file one pass after the
other; scores and parts play them in turn."""
import pathlib
import re
import shutil
import sys

film, cues, passes, target = pathlib.Path(sys.argv[1]), int(sys.argv[2]), int(sys.argv[3]), pathlib.Path(sys.argv[4])
DEFINITION = re.compile(r"^([A-Za-z]+) = ", re.MULTILINE)
LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"[:passes]
sources = sorted(path.parent for path in film.glob("*/score.ly"))

shutil.rmtree(target, ignore_errors=True)
target.mkdir(parents=True)
for path in film.glob("*.*"):
    if path.suffix in (".ily", ".yaml"):
        shutil.copy(path, target / path.name)
for number in range(cues):
    source = sources[number % len(sources)]
    texts = {path.relative_to(source): path.read_text(encoding="utf-8") for path in source.rglob("*.*ly")}
    families = {path: text for path, text in texts.items() if path.suffix == ".ily"}
    names = [name for text in families.values() for name in DEFINITION.findall(text)]
    use = re.compile(rf"\\({'|'.join(sorted(names, key=len, reverse=True))})(?![A-Za-z])")
    folder = target / f"{1 + number // 10}m{1 + number % 10}"
    for path, text in texts.items():
        if path in families:
            head, *music = re.split(r"^(?=[A-Za-z]+ = )", text, maxsplit=1, flags=re.MULTILINE)
            for letter in LETTERS if music else "":
                one = DEFINITION.sub(lambda m: f"{m[1]}{letter} = ", music[0])
                head += use.sub(lambda m: f"\\{m[1]}{letter}", one) + "\n"
            text = head
        else:
            text = use.sub(lambda m: "{ " + " ".join(f"\\{m[1]}{letter}" for letter in LETTERS) + " }", text)
        (folder / path).parent.mkdir(parents=True, exist_ok=True)
        (folder / path).write_text(text, encoding="utf-8")

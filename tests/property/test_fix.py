#!/usr/bin/env python3
"""check --fix on a copy of the demo film: bar checks that are moved by a note come back to where they were, byte by byte;
house rules change words and nothing that is heard; what is fixed once is fixed. SW_SEED chooses other places."""
import os
import pathlib
import random
import re
import shutil
import subprocess
import sys
import tempfile

ROOT = pathlib.Path(__file__).resolve().parent.parent.parent
COMMAND = os.environ.get("SW_COMMAND", ROOT / "build/stavewright")
SEED = int(os.environ.get("SW_SEED", "1"))
TRIALS = 12
NOTE = r"[a-g](?:is|es|s|f)*[',]*\d*\.?"
MOVABLE = re.compile(rf"(?<=\s)({NOTE}) ({NOTE}) \|( % \d+)?\n(\s*)({NOTE})(?=\s)")

RULES = r"""house:
  - {in: [texts, markups], forbidden: '\bpizz\b\.?', message: in full, replacement: pizzicato}
  - {in: [texts, markups], forbidden: '\bcon sord\b\.?', message: in full, replacement: con sordino}
  - {in: [texts, markups], forbidden: '\bsolo\b', message: loud, replacement: SOLO "it is"}
"""


def run(*words):
    return subprocess.run([COMMAND, *map(str, words)], capture_output=True, text=True, check=False)


def heard(folder):
    """All that sounds, without the places in the text."""
    rows = []
    for path in sorted(folder.rglob("score.ly")):
        result = run("events", path)
        assert result.returncode == 0, result.stderr
        rows += [line.split("\t")[:8] for line in result.stdout.splitlines()]
    return rows


def move_bar_checks(film, chance):
    """Returns how many moved bar checks were told, and how many of these came back."""
    sources = [path for path in sorted(film.rglob("*.ily")) if MOVABLE.search(path.read_text(encoding="utf-8"))]
    told = mended = 0
    for _ in range(TRIALS):
        path = chance.choice(sources)
        text = path.read_text(encoding="utf-8")
        place = chance.choice(list(MOVABLE.finditer(text)))
        first, second, remark, indent, third = place.groups()
        moved = f"{first} | {second}{remark or ''}\n{indent}{third}"
        path.write_text(text[:place.start()] + moved + text[place.end():], encoding="utf-8")
        score = path.parent / "score.ly"
        if run("check", "--rules", "bar-length", score).returncode == 1:
            told += 1
            result = run("check", "--fix", "--rules", "bar-length", score)
            after = path.read_text(encoding="utf-8")
            back = result.returncode == 0 and after == text
            mended += back
            if not back:
                print(path.name, repr(moved), result.stdout, result.stderr)
        path.write_text(text, encoding="utf-8")
    return told, mended


def main():
    chance = random.Random(SEED)
    with tempfile.TemporaryDirectory(dir=os.environ.get("SW_TEMP")) as temp:
        film = pathlib.Path(temp) / "film"
        shutil.copytree(ROOT / "corpus", film)
        told, mended = move_bar_checks(film, chance)
        before = heard(film)
        (film / "stavewright.yaml").write_text(RULES, encoding="utf-8")
        first = run("check", "--fix", film)
        fixes = max([int(n) for n in re.findall(r"^(\d+) fix", first.stderr, re.M)], default=0)
        same = heard(film) == before
        again = run("check", "--fix", "--diff", film)
        quiet = run("check", "--rules", "house", film)
    print(f"# seed {SEED}: {told} bar checks moved, {mended} came back; {fixes} other fixes")
    good = told > 0 and mended == told and fixes > 5 and same and again.stdout == "" and quiet.stdout == ""
    if not good:
        print(f"same sound: {same}; second run: {again.stdout!r} {again.stderr!r}; left: {quiet.stdout!r}")
    return 0 if good else 1


sys.exit(main())

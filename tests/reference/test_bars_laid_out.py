#!/usr/bin/env python3
"""`stavewright bars` on real scores and the demo film, all files of a piece: a second run changes nothing, only white space, bar
checks and comments that are bar numbers differ (compared here by a rough reading of our own), and the compiler hears
the same notes as before, wherever they stand now. SW_SEED sets the seed, SW_BARS how many pieces are laid out, SW_COMPILED
how many of them are compiled (a long run: SW_BARS=176 SW_COMPILED=30)."""
import os
import pathlib
import random
import re
import shutil
import subprocess
import sys

import compiled
from compiler import LILYPOND, notes

COMMAND = os.environ["SW_COMMAND"]
SCORES = pathlib.Path(os.environ["SW_SCORES"])
TEMP = pathlib.Path(os.environ["SW_TEMP"])
PIECES = int(os.environ.get("SW_BARS", "4"))
COMPILED = int(os.environ.get("SW_COMPILED", "2"))
SEED = int(os.environ.get("SW_SEED", random.randrange(1_000_000)))

NUMBER = re.compile(r"%[% \t]*\d[\d-]*[ \t\r]*$", re.M)


def essence(path):
    """The text without bar numbers, bar checks and white space."""
    text = path.read_bytes().decode("latin-1")
    return re.sub(r"[\s|]+", "", NUMBER.sub("", text))


def without_places(rows):
    """Notes without line and column."""
    counted = {}
    for row, count in rows.items():
        counted[row[:6]] = counted.get(row[:6], 0) + count
    return counted


def events(path):
    result = subprocess.run([COMMAND, "events", path], capture_output=True, text=True)
    return without_places(notes(result.stdout.splitlines()))


def lay_out(folder):
    """Lays all files of a piece out; returns what is wrong, and how many files have changed."""
    faults, changed = [], 0
    for path in sorted(p for p in folder.rglob("*") if p.suffix in (".ly", ".ily")):
        before = essence(path)
        first = subprocess.run([COMMAND, "bars", "--write", path], capture_output=True, text=True, errors="replace")
        if first.returncode == 2 and "no LilyPond source" not in first.stderr:
            faults.append(f"{path}: refused: {first.stderr.strip()}")
        changed += "1 file changed" in first.stderr
        if essence(path) != before:
            faults.append(f"{path}: more than white space, bar checks and bar numbers has changed")
        again = subprocess.run([COMMAND, "bars", "--check", path], capture_output=True, text=True, errors="replace")
        if again.returncode == 1:
            faults.append(f"{path}: a second run changes it again")
    return faults, changed


def pieces():
    chosen = [(pathlib.Path("corpus"), cue) for cue in ("1m1-first-light/score.ly", "1m3-the-crossing/score.ly")]
    if SCORES.joinpath("LIST.tsv").exists():
        mains = [line.split("\t")[0] for line in SCORES.joinpath("LIST.tsv").read_text().splitlines()[1:]]
        random.Random(SEED).shuffle(mains)
        chosen += [(SCORES, main) for main in mains[:PIECES]]
    return chosen


faults, files, done = [], 0, []
for number, (root, main) in enumerate(pieces()):
    target = TEMP / f"{number:03}"
    if root == SCORES:
        piece = pathlib.Path(*pathlib.Path(main).parent.parts[:3])
        shutil.copytree(root / piece, target / piece, ignore=shutil.ignore_patterns("*.gz"))
    else:
        shutil.copytree(root, target)
    subprocess.run(["chmod", "-R", "u+w", target])
    before = events(target / main)
    found, changed = lay_out(target)
    faults += found
    files += changed
    if events(target / main) != before:
        faults.append(f"{main}: other notes are heard")
    done.append((target / main, before))
print(f"# seed {SEED}: {len(done)} pieces laid out, {files} files changed")
if shutil.which(LILYPOND) is not None:
    for path, _ in done[2:2 + COMPILED]:
        fault = compiled.judge(path)
        faults += [fault] if fault else []
    print(f"# {len(done[2:2 + COMPILED])} of them compiled: the compiler hears what is read")
for fault in faults:
    print(fault)
sys.exit(1 if faults or files == 0 else 0)

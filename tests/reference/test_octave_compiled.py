#!/usr/bin/env python3
"""Results of `stavewright octave` through the compiler: it must hear what the program says is there, and, against the score before,
the same names and times with nothing but octaves changed; with --ottava the very same notes. Staves of the demo film and of real
scores; SEED chooses them, SW_COMPILED says how many (a long run: 60)."""
import collections
import concurrent.futures
import os
import pathlib
import random
import re
import shutil
import subprocess
import sys

from compiler import LILYPOND, ORACLE, notes

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parent.parent / "property"))
from octave_trials import TEMP, choose, copy, is_refused, random_way, rows, run  # noqa: E402

SEED = int(os.environ.get("SW_SEED", random.randrange(10**6)))
WANTED = int(os.environ.get("SW_COMPILED", 3))


def compiled(path, name):
    """The compiler's notes; None when it has none."""
    target = TEMP / name
    subprocess.run([LILYPOND, f"-dinclude-settings={ORACLE}", "-dno-print-pages", "-o", target, path], capture_output=True,
                   timeout=300)
    truth = target.with_name(target.name + ".truth.tsv")
    if not truth.exists():
        return None
    with open(truth) as lines:
        return notes(lines)


def bare(heard, octaves):
    """Without places in the text, and without octaves if so wanted."""
    counts = collections.Counter()
    for row, count in heard.items():
        row = list(row[:6])
        if not octaves:
            row[5] = re.sub(r"^([a-g])-?\d+/", r"\1/", row[5])
        counts[tuple(row)] += count
    return counts


def trial(case):
    number, folder, main, staff, way = case
    place = copy(folder, f"compiled-{number}")
    label = f"{folder / main} --staff '{staff}' {way}"
    result = run("octave", place / main, "--staff", staff, "--everywhere", "--write", *way)
    if "changed\n" not in result.stderr:
        # What the proof refuses is not written, so there is nothing to compile: test_octave.py counts those.
        known = result.returncode in (0, 1) or is_refused(result) or "the change is refused" in result.stderr
        fault = None if known else result.stderr[-300:]
        return (f"{label}: {fault}" if fault else None), "unchanged"
    after = compiled(place / main, f"{number}-after")
    if after is None:
        return f"{label}: the compiler gives no notes", ""
    ours = notes("\t".join(row) for row in rows(place / main))
    before = compiled(folder / main, f"{number}-before")
    ottava = "--ottava" in way
    if ours != after:
        return f"{label}: {(after - ours).total()} notes missing, {(ours - after).total()} too many", ""
    if bare(before, ottava) != bare(after, ottava):
        return f"{label}: more than octaves has changed for the compiler", ""
    return None, "brackets" if ottava else "moved"


if shutil.which(LILYPOND) is None:
    print(f"# left out, there is no {LILYPOND}")
    sys.exit(77)
rng = random.Random(SEED)
cases = []
for i, (folder, main, staff) in enumerate(choose(rng, 2 * WANTED, 1)):
    way = ["--ottava", "add", "--ledgers", "1"] if i % 3 == 2 else random_way(rng)
    cases.append((i, folder, main, staff, way))
faults = []
counts = collections.Counter()
with concurrent.futures.ThreadPoolExecutor(2) as pool:
    for fault, verdict in pool.map(trial, cases):
        faults += [fault] if fault else []
        counts[verdict] += not fault
print(f"# seed {SEED}: the compiler agrees with {counts['moved']} moved staves and {counts['brackets']} staves with new brackets; "
      f"{counts['unchanged']} stay as they are")
print("\n".join(faults))
sys.exit(1 if faults or counts["moved"] == 0 else 0)

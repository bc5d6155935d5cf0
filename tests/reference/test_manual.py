#!/usr/bin/env python3
"""Reads 200 examples of the language manual, taken at random, and compares every note with what the compiler hears.

The compiler's answers are in manual-sample.tsv; the column `differs` names the cause where the reading is known to differ.
`make test-reference` asks the compiler again."""
import os
import subprocess
import sys

os.environ.setdefault("SW_LILYPOND", "lilypond")
from compiler import notes  # noqa: E402
from manual import FOLDER, digest, sample  # noqa: E402

COMMAND = os.environ["SW_COMMAND"]


def main():
    rows = sample()
    if not all((FOLDER / row["example"]).exists() for row in rows):
        print("# the manual's examples are not installed")
        return 77
    wrong = 0
    known = 0
    for row in rows:
        result = subprocess.run([COMMAND, "events", FOLDER / row["example"]], capture_output=True, text=True, errors="replace")
        if result.returncode not in (0, 1):
            print(f"{row['example']}: exit status {result.returncode}\n{result.stderr}")
            wrong += 1
            continue
        ours = notes(result.stdout.splitlines())
        equal = digest(ours) == row["digest"]
        if row["differs"]:
            known += 1
            if equal:
                print(f"# {row['example']} is read like the compiler now; take it out of the known differences")
        elif not equal:
            print(f"{row['example']}: {ours.total()} notes, the compiler hears {row['notes']}; they differ")
            wrong += 1
    print(f"# {len(rows) - known - wrong} of {len(rows)} examples equal, {known} known to differ")
    return 1 if wrong else 0


sys.exit(main())

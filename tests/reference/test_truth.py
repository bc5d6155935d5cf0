#!/usr/bin/env python3
"""Compares what `stavewright events` reads with what the compiler hears: every note of every piece must have the same
score, onset, grace offset, duration, kind, pitch, file, line and column in both readings.

Always: the demo film's scores and sketches, through the compiler (oracle.ily); left out when there is no compiler.
When SW_SCORES is there: the real scores in its LIST.tsv (column `main`: the main file), with the compiler's rows beside
each in MAIN.truth.tsv.gz, made with oracle.ily."""
import concurrent.futures
import csv
import gzip
import hashlib
import os
import pathlib
import shutil
import subprocess
import sys

from compiler import LILYPOND, ORACLE, compile_piece, notes

COMMAND = os.environ["SW_COMMAND"]
SCORES = pathlib.Path(os.environ["SW_SCORES"])

# The reading may get better, never worse: raise the floor when it does. No note may be missing at all.
EQUAL_PIECES_FLOOR = 176


def our_notes(path):
    """What the command reads; status 1 only means that it has something to report."""
    result = subprocess.run([COMMAND, "events", path], capture_output=True, text=True)
    if result.returncode not in (0, 1):
        sys.exit(f"{path}: exit status {result.returncode}\n{result.stderr}")
    return notes(result.stdout.splitlines())


class Comparison:
    def __init__(self, what):
        self.what = what
        self.pieces = self.equal_pieces = self.notes = self.missing = 0
        self.unequal = []

    def add(self, name, truth, ours):
        missing, extra = truth - ours, ours - truth
        self.pieces += 1
        self.notes += truth.total()
        self.missing += missing.total()
        if not missing and not extra:
            self.equal_pieces += 1
            return
        example = min(missing or extra, key=lambda r: (r[6], int(r[7]), int(r[8])))
        self.unequal.append(f"{name}: {missing.total()} missing, {extra.total()} too many, first "
                            f"{'missing' if missing else 'too many'}: {' '.join(example)}")

    def report(self):
        print(f"# {self.what}: {self.equal_pieces} of {self.pieces} pieces equal, "
              f"{self.notes - self.missing} of {self.notes} notes")
        for line in self.unequal:
            print(f"#   {line}")


def digest_of_compilation():
    digest = hashlib.sha256(subprocess.run([LILYPOND, "--version"], capture_output=True).stdout)
    for path in [ORACLE, *sorted(pathlib.Path("corpus").glob("**/*.*ly"))]:
        digest.update(path.read_bytes())
    return digest.hexdigest()[:16]


def compare_demo():
    if shutil.which(LILYPOND) is None:
        print(f"# demo film: left out, there is no {LILYPOND}")
        return True
    comparison = Comparison("demo film")
    sources = sorted(p for p in pathlib.Path("corpus").glob("*/*.ly") if p.stem in ("score", "sketch"))
    digest = digest_of_compilation()
    with concurrent.futures.ThreadPoolExecutor(max_workers=2) as pool:
        for path, truth in zip(sources, pool.map(lambda p: compile_piece(p, digest), sources)):
            comparison.add(path, truth, our_notes(path))
    comparison.report()
    return comparison.pieces > 0 and not comparison.unequal


def compare_real_scores():
    if not (SCORES / "LIST.tsv").exists():
        print(f"# real scores: left out, there is no {SCORES / 'LIST.tsv'}")
        return True
    comparison = Comparison("real scores")
    with open(SCORES / "LIST.tsv", newline="") as listing:
        for row in csv.DictReader(listing, delimiter="\t"):
            path = SCORES / row["main"]
            with gzip.open(path.with_suffix(".truth.tsv.gz"), "rt") as rows:
                comparison.add(row["main"], notes(rows), our_notes(path))
    comparison.report()
    if comparison.equal_pieces < EQUAL_PIECES_FLOOR or comparison.missing > 0:
        print(f"at least {EQUAL_PIECES_FLOOR} pieces must be equal, and no note may be missing")
        return False
    return True


demo = compare_demo()
real = compare_real_scores()
sys.exit(0 if demo and real else 1)

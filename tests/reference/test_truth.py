#!/usr/bin/env python3
"""Compares what `stavewright events` reads with what the compiler hears: every note of every piece must have the same
score, onset, grace offset, duration, kind, pitch, file, line and column in both readings.

Always: the demo film's scores and sketches, through the compiler (oracle.ily); left out when there is no compiler.
When SW_SCORES is there: the real scores in its LIST.tsv (column `main`: the main file), with the compiler's rows beside
each in MAIN.truth.tsv.gz, made with oracle.ily."""
import collections
import concurrent.futures
import csv
import gzip
import hashlib
import os
import pathlib
import shutil
import subprocess
import sys

COMMAND = os.environ["SW_COMMAND"]
LILYPOND = os.environ["SW_LILYPOND"]
SCORES = pathlib.Path(os.environ["SW_SCORES"])
KEPT = pathlib.Path(os.environ["SW_BUILD"]) / "truth"
ORACLE = pathlib.Path(__file__).resolve().parent / "oracle.ily"

# The reading may get better, never worse: raise the floor when it does. No note may be missing at all.
EQUAL_PIECES_FLOOR = 176


def notes(lines):
    """The multiset of note and drum rows, without staff and voice (columns 7 and 8)."""
    rows = (line.rstrip("\n").split("\t") for line in lines)
    return collections.Counter(tuple(r[:6] + r[8:]) for r in rows if len(r) > 4 and r[4] in ("note", "drum"))


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


def compile_piece(path, digest):
    """The compiler's reading of a source; kept as long as neither sources nor compiler change."""
    name = KEPT / f"{path.parent.name}-{path.stem}-{digest}"
    rows = name.with_name(name.name + ".truth.tsv")
    kept = name.with_name(name.name + ".kept.tsv")
    if not kept.exists():
        result = subprocess.run([LILYPOND, f"-dinclude-settings={ORACLE}", "-dno-print-pages", "-o", name, path],
                                capture_output=True, text=True)
        if result.returncode != 0:
            sys.exit(f"{path}: the compiler failed\n{result.stderr}")
        rows.rename(kept)
    with open(kept) as lines:
        return notes(lines)


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
    KEPT.mkdir(exist_ok=True)
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

#!/usr/bin/env python3
"""Splits staves with `stavewright hands --write` and lets the compiler say whether the music sounds as before: every note
with its score, onset, grace offset, duration and pitch. The demo film's harps always; staves of real piano, harpsichord and guitar
pieces when SW_SCORES is there."""
import collections
import concurrent.futures
import functools
import hashlib
import os
import pathlib
import shutil
import subprocess
import sys

from compiler import LILYPOND, compile_piece, notes

COMMAND = os.environ["SW_COMMAND"]
SCORES = pathlib.Path(os.environ["SW_SCORES"])
TEMP = pathlib.Path(os.environ["SW_TEMP"])

PIANO = ["--instrument", "piano"]
HARP = ["--instrument", "harp"]
MARIMBA = ["--instrument", "marimba"]
CHANGE = ["--change-staff"]
ROLL = ["--roll"]
CROSS = ["--crossing"]
DEMO = [(pathlib.Path("corpus"), f"{cue}/{file}", "harp1", options)
        for cue in ("1m1-first-light", "1m2-across-the-flats", "1m3-the-crossing")
        for file, options in (("score.ly", []), ("parts/harp-1.ly", []), ("parts/harp-1.ly", CROSS),
                              ("parts/harp-1.ly", ROLL + CROSS))]
DEMO.append((pathlib.Path("corpus"), "1m1-first-light/parts/harp-1.ly", "harp1", CHANGE))
# Each with the options of two uses.
REAL = [(SCORES / folder, file, staff, options + more)
        for folder, file, staff, options, uses in (
            ("BrahmsJ/O39/waltz-op39-10", "waltz-op39-10.ly", "ApartA", PIANO, ([], ROLL + CROSS)),
            ("ChopinFF/O28/Chop-28-5", "Chop-28-5.ly", "leftHand", PIANO, ([], CROSS)),
            ("RachmaninoffS/O23/rach-prelude23-10", "rach-prelude23-10.ly", "right", PIANO, ([], ROLL)),
            ("TchaikovskyPI/O39/16OldFrenchSong", "16OldFrenchSong.ly", "lower", PIANO, ([], CHANGE)),
            ("GriegE/O12/No03_Albumblatt", "No03_Albumblatt.ly", "upper", PIANO, ([], CROSS + ROLL)),
            ("ScarlattiD/K491/scarlatti-k491", "scarlatti-k491.ly", "upper", PIANO, ([], CROSS)),
            ("CzernyC/Op_821/Czerny_Op_821_No_007", "Czerny_Op_821_No_007.ly", "2", PIANO, ([], CROSS)),
            ("GiulianiM/O51/giuliani-o51-02", "giuliani-o51-02.ly", "Nº 2", HARP, ([], CHANGE)),
            ("CarcassiM/O26/carcassi-op26-03", "carcassi-op26-03.ly", "Nº 3", HARP, ([], CHANGE + CROSS)),
            ("MozartWA/KV487/no2/no2-lys", "no2.ly", "hornII", PIANO, ([], CHANGE)),
            ("PurcellH/Z628/WhatPowerArtThou", "WhatPowerArtThou.ly", "lower", PIANO, (CHANGE,)),
            ("SorF/O1/sor_op1_1", "sor_op1_1.ly", "/./", HARP, ([], MARIMBA, MARIMBA + ["--mallets", "2"])))
        for more in uses]


def without_places(rows):
    """Where a note is written changes; what is heard must not."""
    heard = collections.Counter()
    for row, count in rows.items():
        heard[row[:6]] += count
    return heard


def read_on_staves(path, heard):
    """Whether each note is read on the staff on which the compiler hears it: a \\change may come too early for it."""
    events = subprocess.run([COMMAND, "events", path], capture_output=True, text=True, check=True).stdout.splitlines()

    def places(rows):
        found = collections.Counter()
        for row, count in rows.items():
            found[row[:6] + (row[-1].replace("\\new", ""),)] += count  # so the compiler calls a staff without an id
        return found

    return places(notes(events, staves=True)) == places(heard)


@functools.cache
def heard_before(folder, file):
    """Each source is compiled once, however often it is split."""
    name = hashlib.sha256(f"{folder} {file}".encode()).hexdigest()[:12] + "-before"
    return without_places(compile_piece(folder / file, name, keep=False))


def check(case):
    folder, file, staff, options = case
    name = hashlib.sha256(repr(case).encode()).hexdigest()[:12]
    copy = TEMP / name
    shutil.copytree(folder, copy)
    before = heard_before(folder, file)
    result = subprocess.run([COMMAND, "hands", copy / file, "--staff", staff, "--write", *options],
                            capture_output=True, text=True)
    if result.returncode not in (0, 1) or " changed\n" not in result.stderr:
        return f"{file} {staff}: status {result.returncode}: {result.stderr[-300:]}", 0
    on_staves = compile_piece(copy / file, name + "-after", keep=False, staves=True)
    after = without_places(on_staves)
    if CHANGE[0] in options and not read_on_staves(copy / file, on_staves):
        return f"{file} {staff}: the compiler hears notes on other staves", 0
    again = subprocess.run([COMMAND, "check", "--rules", "bar-length,staff-length", copy / file], capture_output=True,
                           text=True)
    if after != before:
        return f"{file} {staff}: {(before - after).total()} notes lost, {(after - before).total()} new", 0
    if again.returncode == 2:
        return f"{file} {staff}: the result can't be read: {again.stderr[-300:]}", 0
    return None, after.total()


if shutil.which(LILYPOND) is None:
    print(f"# left out, there is no {LILYPOND}")
    sys.exit(77)
cases = DEMO + (REAL if SCORES.exists() else [])
with concurrent.futures.ThreadPoolExecutor(max_workers=2) as pool:
    list(pool.map(lambda piece: heard_before(*piece), dict.fromkeys(case[:2] for case in cases)))  # each by one thread only
    results = list(pool.map(check, cases))
bad = [message for message, _ in results if message]
print(f"# {len(cases) - len(bad)} of {len(cases)} split staves sound as before by the compiler, "
      f"{sum(notes for _, notes in results)} notes")
print("\n".join(bad))
sys.exit(1 if bad else 0)

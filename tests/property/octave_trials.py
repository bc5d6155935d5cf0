"""Shifting staves of real scores and of the demo film by octaves, and what must hold of each result."""
import csv
import os
import pathlib
import random
import re
import shutil
import subprocess

COMMAND = os.environ["SW_COMMAND"]
SCORES = pathlib.Path(os.environ["SW_SCORES"])
TEMP = pathlib.Path(os.environ["SW_TEMP"])
INTO = ("flute", "oboe", "bassoon", "horn", "viola", "cello", "trombone", "soprano", "violin")
# Reasons for which a staff may be refused: the user can do something about each.
REASONS = ("two changes want different pitches", "the source can't be", "mend this first", "stands in the music that would",
           "stands inside a call", "what this call does", "would have to become two different things", " staves: ",
           "only percussion", "no notes", "range of hearing", "two parts are combined", "quoted", "can't be changed", "the edit is refused",
           "is not known", "takes its octaves")


def run(*words):
    return subprocess.run([COMMAND, *map(str, words)], capture_output=True, text=True, errors="replace", timeout=300)


def staves(path):
    """Ids or variables of the first score's staves with notes."""
    found = []
    for line in run("outline", path).stdout.split("score 2:")[0].splitlines():
        match = re.match(r'  .{28} Staff(?: "([^"]+)")?(?: \\(\S+?))?(?: in \S+)?, \d+ voices?, [1-9]\d* notes$', line)
        if match and (match[1] or match[2]):
            found.append(match[1] or match[2])
    return found


def choose(rng, count, most=2):
    """(folder to copy, main file in it, staff) of so many staves."""
    mains = [(pathlib.Path("corpus"), path.relative_to("corpus")) for path in sorted(pathlib.Path("corpus").glob("*/score.ly"))]
    if (SCORES / "LIST.tsv").exists():
        with open(SCORES / "LIST.tsv", newline="") as listing:
            rows = [pathlib.PurePath(row["main"]) for row in csv.DictReader(listing, delimiter="\t")]
        mains += [(SCORES / row.parts[0], pathlib.Path(*row.parts[1:])) for row in rows]
    rng.shuffle(mains)
    chosen = []
    for folder, main in mains:
        known = staves(folder / main)
        chosen += [(folder, main, staff) for staff in rng.sample(known, min(len(known), most))]
        if len(chosen) >= count:
            break
    return chosen[:count]


def random_way(rng):
    """The words behind `octave FILE --staff NAME`."""
    if rng.random() < 0.3:
        way = ["--into", rng.choice(INTO)]
    else:
        low = rng.randrange(-24, 12)
        way = ["--between", f"{pitch(low)} {pitch(low + rng.randrange(14, 37))}"]
    return way + (["--fold"] if rng.random() < 0.5 else [])


def pitch(height):
    """Scientific notation of semitones above middle C."""
    return ("C", "C#", "D", "D#", "E", "F", "F#", "G", "G#", "A", "A#", "B")[height % 12] + str(height // 12 + 4)


def height(text):
    """Semitones above middle C of a pitch as `events` prints it."""
    name, octave, alter = re.fullmatch(r"([a-g])(-?\d+)/(-?\d+)", text).groups()
    return {"c": 0, "d": 2, "e": 4, "f": 5, "g": 7, "a": 9, "b": 11}[name] + 12 * int(octave) + int(int(alter) / 2)


def rows(path):
    return [line.split("\t") for line in run("events", path).stdout.splitlines()]


def without_octave(row):
    """All but the octave, and where it is written."""
    return row[:5] + [re.sub(r"^([a-g])-?\d+/", r"\1/", row[5])] + row[6:8]


def copy(folder, name):
    target = TEMP / name
    shutil.rmtree(target, ignore_errors=True)
    shutil.copytree(folder, target)
    return target


def bytes_of(folder):
    return {path: path.read_bytes() for path in sorted(folder.rglob("*")) if path.is_file()}


def is_refused(result):
    return result.returncode == 2 and any(reason in result.stderr for reason in REASONS)

#!/usr/bin/env python3
"""`stavewright octave` on staves of real scores and of the demo film: whatever range is asked for, all notes keep their name and
their time, all that can be is inside, and asking again changes nothing; up and down again restores every byte, and so do 8va brackets
in and out. SEED and COUNT in the environment choose the staves."""
import collections
import concurrent.futures
import os
import random
import re
import shutil
import sys

from octave_trials import (bytes_of, choose, copy, height, is_refused, random_way, rows, run, without_octave)

SEED = int(os.environ.get("SW_SEED", random.randrange(10**6)))
COUNT = int(os.environ.get("COUNT", 40))


def limits(way):
    """The heights that --between names; None without it."""
    if way[0] != "--between":
        return None
    scale = dict(zip(("C", "C#", "D", "D#", "E", "F", "F#", "G", "G#", "A", "A#", "B"), range(12)))
    return [scale[word[:-1]] + 12 * (int(word[-1]) - 4) for word in way[1].split()]


def same_names(folder, before, after):
    """All rows agree; where parts are combined, two that have come together on one note are one."""
    combined = any(b"\\partCombine" in data for path, data in bytes_of(folder).items() if path.suffix in (".ly", ".ily"))
    return before == after or (combined and {tuple(row[:7]) for row in before} == {tuple(row[:7]) for row in after})


def fit(main, staff, way):
    """What is wrong with a fit; otherwise (None, what came out)."""
    before = rows(main)
    words = ["octave", main, "--staff", staff, "--everywhere", "--write", "--why", *way]
    result = run(*words)
    if is_refused(result):
        return None, "refused"
    if result.returncode not in (0, 1):
        return f"status {result.returncode}: {result.stderr[-300:]}", ""
    after = rows(main)
    if not same_names(main.parent, [without_octave(row) for row in before], [without_octave(row) for row in after]):
        return "something else than octaves has changed", ""
    wanted = limits(way)
    complete = "fits in no octave" not in result.stderr and "fit in no octave" not in result.stderr
    moved = before != after and any(a[5] != b[5] for a, b in zip(before, after))
    own = [row for row in after if row[0] == "1" and row[4] == "note" and row[6] == staff]
    if wanted and complete and any(not wanted[0] <= height(row[5]) <= wanted[1] for row in own):
        return f"a note lies outside of {way[1]}, and nobody says so", ""
    again = run(*words)
    reached = "3 octaves" not in result.stderr  # further is another step
    if again.returncode not in (0, 1) or (reached and "changed\n" in again.stderr):
        return f"asked again, it changes something: {again.stderr[-300:]}", ""
    return None, ("moved" if moved else "stays") + ("" if complete else ", not all fits")


def without_blanks(files):
    """A blank between a name and its octave marks, or a missing one between two notes, is mended on the way."""
    return {path: re.sub(rb"[ \t]+", b"", data) for path, data in files.items()}


def there_and_back(folder, main, staff):
    before = bytes_of(folder)
    up = run("octave", main, "--staff", staff, "--everywhere", "--write", "--by", 1)
    if is_refused(up):
        return None, "up and down refused"
    down = run("octave", main, "--staff", staff, "--everywhere", "--write", "--by", -1)
    if up.returncode not in (0, 1) or down.returncode not in (0, 1):
        return f"up and down: {up.stderr[-200:]} {down.stderr[-200:]}", ""
    if without_blanks(bytes_of(folder)) != without_blanks(before):
        return "up and down again does not restore the bytes", ""
    return None, "up and down restored"


def brackets(folder, main, staff):
    """Brackets in and out again."""
    before, heard = bytes_of(folder), rows(main)
    words = ["octave", main, "--staff", staff, "--write", "--ottava"]
    added = run(*words, "add", "--ledgers", 2)
    if "changed\n" not in added.stderr:
        known = added.returncode in (0, 1) or is_refused(added) or "the change is refused" in added.stderr
        return (None, "no bracket") if known else (f"brackets: {added.stderr[-300:]}", "")
    if [row[:8] for row in rows(main)] != [row[:8] for row in heard]:
        return "brackets change what is heard", ""
    if "changed\n" in run(*words, "add", "--ledgers", 2).stderr:
        return "brackets are added to brackets", ""
    run(*words, "remove")
    if not any(b"\\ottava" in data for data in before.values()) and bytes_of(folder) != before:
        return "brackets in and out do not restore the bytes", ""
    return None, "brackets in and out"


def trial(number, folder, main, staff, way):
    place = copy(folder, str(number))
    found = [there_and_back(place, place / main, staff), brackets(place, place / main, staff), fit(place / main, staff, way)]
    shutil.rmtree(place)
    return [(f"{folder / main} --staff '{staff}' {way}: {wrong}" if wrong else None, verdict) for wrong, verdict in found]


rng = random.Random(SEED)
cases = [(i, *case, random_way(rng)) for i, case in enumerate(choose(rng, COUNT))]
with concurrent.futures.ThreadPoolExecutor(2) as pool:
    results = [result for three in pool.map(lambda case: trial(*case), cases) for result in three]
counts = collections.Counter(verdict for wrong, verdict in results if not wrong)
print(f"# seed {SEED}: " + ", ".join(f"{count} {verdict}" for verdict, count in counts.most_common()))
faults = [wrong for wrong, _ in results if wrong]
print("\n".join(faults))
sys.exit(1 if faults or counts["moved"] + counts["moved, not all fits"] < len(cases) // 10 else 0)

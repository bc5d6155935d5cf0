#!/usr/bin/env python3
"""`stavewright hands` on staves of real scores and of the demo film, whatever their instrument: each is either split, which
includes the proof by reading back, or refused for a reason that the user can do something about. SEED and COUNT in the environment choose
the staves."""
import collections
import concurrent.futures
import csv
import os
import pathlib
import random
import re
import subprocess
import sys

COMMAND = os.environ["SW_COMMAND"]
SCORES = pathlib.Path(os.environ["SW_SCORES"])
SEED = int(os.environ.get("SW_SEED", random.randrange(10**6)))
COUNT = int(os.environ.get("COUNT", 60))

REASONS = (
    "changes staves here", "comes to the staff here", "two parts are combined here", " staves: ",
    "stands in the music that would be changed", "stands in the music that would be divided", "become two different things", "takes its octaves from the \\relative around it", "stands inside a call",
    "what this call does", "the staff has no notes", "made implicitly",
    "without a staff of its own")
# Of the staves that could be split, so many may be refused by the proof: KV 250 has had such ones.
REFUSED_BY_PROOF = 0.02


def staves(path):
    """Ids or variables of the first score's staves with notes."""
    result = subprocess.run([COMMAND, "outline", path], capture_output=True, text=True, errors="replace")
    found = []
    for line in result.stdout.split("score 2:")[0].splitlines():
        match = re.match(r'  .{28} Staff(?: "([^"]+)")?(?: \\(\S+?))?(?: in \S+)?, \d+ voices?, [1-9]\d* notes$', line)
        if match and (match[1] or match[2]):
            found.append((path, match[1] or match[2]))
    return found


def split(staff):
    path, name, options = staff
    result = subprocess.run([COMMAND, "hands", path, "--staff", name, *options], capture_output=True,
                            text=True, errors="replace", timeout=300)
    if result.returncode in (0, 1) and result.stdout.startswith(("--- ", "# to be applied")):
        return "split", ""
    if result.returncode in (0, 1) and "nothing is split" in result.stderr:  # 1: chords of both hands in one voice
        return "one hand's alone", ""
    reason = next((r for r in REASONS if r in result.stderr), None)
    if result.returncode == 2 and reason:
        return "refused: " + reason, ""
    return ("refused by the proof" if "the change is refused" in result.stderr else "FAILED",
            f"{path} --staff {name} {' '.join(options)}: status {result.returncode}: {result.stderr[-300:]}")


mains = sorted(pathlib.Path("corpus").glob("*/score.ly"))
if (SCORES / "LIST.tsv").exists():
    with open(SCORES / "LIST.tsv", newline="") as listing:
        mains += [SCORES / row["main"] for row in csv.DictReader(listing, delimiter="\t")]
rng = random.Random(SEED)
rng.shuffle(mains)
chosen = []
for main in mains:
    if len(chosen) >= COUNT:
        break
    known = staves(main)
    for path, name in rng.sample(known, min(len(known), 3)):
        options = ["--instrument", rng.choice(("piano", "piano", "harp", "marimba"))]
        options += [o for o in ("--change-staff", "--roll", "--crossing") if rng.random() < 0.3]
        chosen.append((path, name, options))
with concurrent.futures.ThreadPoolExecutor(max_workers=2) as pool:
    results = list(pool.map(split, chosen))
counts = collections.Counter(verdict for verdict, _ in results)
print(f"# seed {SEED}: " + ", ".join(f"{count} {verdict}" for verdict, count in counts.most_common()))
for _, message in results:
    if message:
        print("# " + message)
able = counts["split"] + counts["refused by the proof"]
sys.exit(1 if counts["FAILED"] or able == 0 or counts["refused by the proof"] > max(1, REFUSED_BY_PROOF * able) else 0)

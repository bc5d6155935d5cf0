#!/usr/bin/env python3
"""Results of random edits (tests/property/test_edits.c) through the compiler: it must hear note for note what the proof
claims, which is the program's own reading of the result. SW_COMPILED says how many (a long run:
SW_EDITS=9000 SW_COMPILED=300)."""
import concurrent.futures
import os
import pathlib
import random
import shutil
import subprocess
import sys

from compiler import LILYPOND, ORACLE, notes

COMMAND = os.environ["SW_COMMAND"]
TEMP = pathlib.Path(os.environ["SW_TEMP"])
BUILD = pathlib.Path(os.environ["SW_BUILD"])
WANTED = int(os.environ.get("SW_COMPILED", "6"))


def judge(path):
    """None when both hear the same, otherwise what is wrong."""
    name = TEMP / path.stem
    result = subprocess.run([LILYPOND, f"-dinclude-settings={ORACLE}", "-dno-print-pages", "-o", name, path],
                            capture_output=True, text=True)
    truth = name.with_name(name.name + ".truth.tsv")
    if not truth.exists():
        return f"{path.name}: the compiler gives no notes\n{result.stderr[-500:]}"
    with open(truth) as lines:
        theirs = notes(lines)
    ours = notes(subprocess.run([COMMAND, "events", path], capture_output=True, text=True).stdout.splitlines())
    if ours == theirs:
        return None
    return f"{path.name}: {(theirs - ours).total()} notes missing, {(ours - theirs).total()} too many"


def main():
    if shutil.which(LILYPOND) is None or not pathlib.Path(os.environ["SW_SCORES"], "LIST.tsv").exists():
        sys.exit(77)
    kept = TEMP / "kept"
    kept.mkdir()
    seed = os.environ.get("SW_SEED", str(random.randrange(1_000_000)))
    environment = dict(os.environ, SW_EDITS_KEEP=str(kept), SW_SEED=seed, SW_EDITS=os.environ.get("SW_EDITS", "400"))
    subprocess.run([BUILD / "tests/property/test_edits"], env=environment, stdout=subprocess.DEVNULL)
    files = sorted(kept.glob("*.ly"))
    random.Random(int(seed)).shuffle(files)
    files = files[:WANTED]
    with concurrent.futures.ThreadPoolExecutor(2) as pool:
        wrong = [fault for fault in pool.map(judge, files) if fault is not None]
    print(f"# seed {seed}: {len(files) - len(wrong)} of {len(files)} edited scores equal for the compiler")
    for fault in wrong:
        print(fault)
    sys.exit(1 if wrong or not files else 0)


main()

"""Changed scores, kept by a property test, through the compiler: it must hear note for note what the program reads."""
import concurrent.futures
import hashlib
import os
import pathlib
import random
import shutil
import subprocess

from compiler import LILYPOND, ORACLE, notes

COMMAND = os.environ["SW_COMMAND"]
TEMP = pathlib.Path(os.environ["SW_TEMP"])
BUILD = pathlib.Path(os.environ["SW_BUILD"])


def judge(path):
    """None when both hear the same, otherwise what is wrong."""
    name = TEMP / (hashlib.sha256(str(path).encode()).hexdigest()[:16])
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


def judge_kept(test, keep, settings, wanted):
    """Runs a property test that keeps results in the folder named by the variable `keep`, and has `wanted` of them
    compiled. Returns the exit status of a test."""
    if shutil.which(LILYPOND) is None or not pathlib.Path(os.environ["SW_SCORES"], "LIST.tsv").exists():
        return 77
    kept = TEMP / "kept"
    kept.mkdir()
    seed = os.environ.get("SW_SEED", str(random.randrange(1_000_000)))
    environment = dict(os.environ, **settings)
    environment.update({keep: str(kept), "SW_SEED": seed})
    subprocess.run([BUILD / "tests/property" / test], env=environment, stdout=subprocess.DEVNULL)
    several = kept / "LIST"  # main files with their own copies of what they include
    files = [pathlib.Path(line) for line in several.read_text().splitlines()] if several.exists() else sorted(
        kept.glob("*.ly"))
    random.Random(int(seed)).shuffle(files)
    files = files[:wanted]
    with concurrent.futures.ThreadPoolExecutor(2) as pool:
        wrong = [fault for fault in pool.map(judge, files) if fault is not None]
    print(f"# seed {seed}: {len(files) - len(wrong)} of {len(files)} changed scores equal for the compiler")
    for fault in wrong:
        print(fault)
    return 1 if wrong or not files else 0

#!/usr/bin/env python3
"""`octave` on small sources: each folder of tests/golden/octave holds score.ly, whose first line gives the options, and in want/ the
file as it should be afterwards and what is said (with --why). ACCEPT=1 in the environment writes what comes out to want/."""
import os
import pathlib
import shlex
import shutil
import subprocess
import sys

COMMAND = os.environ["SW_COMMAND"]
TEMP = pathlib.Path(os.environ["SW_TEMP"])
FOLDER = pathlib.Path("tests/golden/octave")


def run(source):
    with open(source) as lines:
        words = shlex.split(lines.readline().removeprefix("% octave:"))
    return subprocess.run([COMMAND, "octave", source.name, "--why", "--write", *words], cwd=source.parent, capture_output=True,
                          text=True)


def check(case):
    """What is wrong, as texts."""
    place = TEMP / case.name
    place.mkdir()
    shutil.copy(case / "score.ly", place)
    result = run(place / "score.ly")
    came = {"score.ly": (place / "score.ly").read_text(), "said": result.stderr}
    if result.returncode not in (0, 1):
        return [f"{case}: status {result.returncode}: {result.stderr}"]
    want = case / "want"
    if "ACCEPT" in os.environ:
        want.mkdir(exist_ok=True)
        for name, text in came.items():
            (want / name).write_text(text)
    faults = [f"{want / name} differs; came:\n{text}" for name, text in came.items() if (want / name).read_text() != text]
    again = run(place / "score.ly")
    if "changed\n" in again.stderr:
        faults.append(f"{case}: done again, it changes something")
    return faults


cases = sorted(path for path in FOLDER.iterdir() if path.is_dir())
faults = [fault for case in cases for fault in check(case)]
print(f"# {len(cases)} cases of octave")
print("\n".join(faults))
sys.exit(1 if faults or len(cases) < 9 else 0)

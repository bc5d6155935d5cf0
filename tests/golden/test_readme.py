#!/usr/bin/env python3
"""The examples in README.md are what the command prints: each line below `$ stavewright ...` must come in its output, in this
order. A line that goes on in the README (six columns further in) is one line; `...` stands for lines left out; times vary.
`tests/golden/test_readme.py --show` prints the lines that are not found."""
import os
import pathlib
import re
import shlex
import subprocess
import sys

ROOT = pathlib.Path(__file__).resolve().parent.parent.parent
COMMAND = os.environ.get("SW_COMMAND", ROOT / "build/stavewright")


def plain(text):
    """White space and times of running do not count."""
    return re.sub(r"\(\d+ ms\)", "(N ms)", re.sub(r"\s+", " ", text)).strip()


def examples(readme):
    """Pairs of a command and the lines that must come."""
    command, lines = None, []
    for line in readme.splitlines() + [""]:
        if line.startswith("    $ stavewright "):
            command, lines = line[6:], []
        elif command and line.startswith("          ") and lines and lines[-1] != "..." and line[4] == " ":
            lines[-1] += " " + line.strip()
        elif command and line.startswith("    "):
            lines.append(line[4:])
        elif command:
            yield command, [line for line in lines if line.strip() != "..."]
            command = None


missing = 0
count = 0
for command, lines in examples((ROOT / "README.md").read_text(encoding="utf-8")):
    words = shlex.split(command)[1:]
    result = subprocess.run([COMMAND, *words], cwd=ROOT, capture_output=True, text=True, check=False)
    streams = [plain(result.stdout), plain(result.stderr)]
    places = [0, 0]  # each stream has an order of its own
    for line in lines:
        count += 1
        found = [stream.find(plain(line), place) for stream, place in zip(streams, places)]
        if max(found) < 0:
            missing += 1
            print(f"# README.md, {command}: not printed (or not in this order): {line}")
        else:
            stream = 0 if found[0] >= 0 else 1
            places[stream] = found[stream]
print(f"# {count} lines of examples, {missing} not as printed")
sys.exit(1 if missing or count == 0 else 0)

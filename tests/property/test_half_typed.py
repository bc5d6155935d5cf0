#!/usr/bin/env python3
"""Real sources in the middle of being typed: cut off anywhere, with words gone, doubled, swapped or from elsewhere, brackets
unbalanced, bytes lost. `check` reads them as an editor sends them. It must end with status 0 or 1 (2 only for what is no
LilyPond any more), in bounded time, without a sanitizer's complaint.
SW_SEED sets the seed, SW_HALF_TYPED how many texts are tried."""
import os
import pathlib
import random
import re
import subprocess
import sys

COMMAND = os.environ["SW_COMMAND"]
SCORES = pathlib.Path(os.environ["SW_SCORES"])
SECONDS = 60
WANTED = int(os.environ.get("SW_HALF_TYPED", "60"))
SEED = int(os.environ.get("SW_SEED", random.randrange(1_000_000)))
chance = random.Random(SEED)

WORD = re.compile(r'\\[a-zA-Z]+|"[^"\n]*"|[{}<>()\[\]|~]|[^\s{}<>()\[\]|~"\\]+')
STRAY = ["{", "}", "<<", ">>", "<", ">", "(", ")", "\\", "\"", "%{", "#", "#{", "\\relative", "\\repeat volta 2", "\\tuplet 3/2",
         "\\grace", "\\new Staff", "\\markup", "\\lyricmode {", "c", "'", "4..", "~", "|", "\\\\", "=", "x = ", "\\x", "#(", "\\with {",
         "\\score {", "\\transpose c", "\\include \"", "\\override", "\\tag", "-\\tweak", "q", "R1*", "\\key", "\\time 3/"]


def sources():
    files = sorted(pathlib.Path("corpus").glob("*/*.*ly"))
    if SCORES.joinpath("LIST.tsv").exists():
        files += sorted(SCORES.glob("*/**/*.*ly"))
    return [f for f in files if 0 < f.stat().st_size < 60000]


def typed(text):
    """The text as it may be at some moment."""
    kind = chance.randrange(6)
    words = list(WORD.finditer(text))
    if kind == 0 or len(words) < 4:
        return text[:chance.randrange(len(text) + 1)]
    if kind == 1:
        place = chance.choice(words).start()
        return text[:place] + chance.choice(STRAY) + " " + text[place:]
    if kind == 2:
        word = chance.choice(words)
        return text[:word.start()] + text[word.end():]
    if kind == 3:
        word = chance.choice(words)
        return text[:word.end()] + " " + word.group() + text[word.end():]
    if kind == 4:
        first, second = sorted(chance.sample(range(len(words)), 2))
        a, b = words[first], words[second]
        return text[:a.start()] + b.group() + text[a.end():b.start()] + a.group() + text[b.end():]
    place = chance.randrange(len(text))
    return text[:place] + text[place + chance.randrange(1, 40):]


def check(path, data):
    return subprocess.run([COMMAND, "check", "-", "--file-name", str(path)], input=data, capture_output=True,
                          timeout=SECONDS)


faults = []
files = sources()
tried = told = 0
for number in range(WANTED):
    path = chance.choice(files)
    text = path.read_bytes().decode("latin-1")
    changed = typed(text)
    tried += 1
    try:
        result = check(path, changed.encode("latin-1"))
    except subprocess.TimeoutExpired:
        faults.append(f"{path}: more than {SECONDS} s")
        continue
    if result.returncode not in (0, 1, 2) or b"Sanitizer" in result.stderr or b"runtime error" in result.stderr:
        faults.append(f"{path}: status {result.returncode}\n{result.stderr[-1500:].decode('latin-1')}")
    elif result.returncode == 2 and b"no LilyPond source" not in result.stderr:
        faults.append(f"{path}: status 2: {result.stderr[-300:].decode('latin-1')}")
    told += b"[syntax]" in result.stdout
print(f"# seed {SEED}: {tried} half-typed texts read, {told} with a finding of syntax")
for fault in faults:
    print(fault)
sys.exit(1 if faults else 0)

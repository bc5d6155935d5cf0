#!/usr/bin/env python3
"""`stavewright run RECIPE --write` over a film of two cues, several files in several folders, killed at random moments by SIGKILL. When the next command
has run, all files must be as before or all as after, with their permissions, and nothing else may lie there. Sometimes the next
command is killed as well, which must change nothing about that. SW_KILLS says how often, SW_SEED how by chance.

The writing is a small part of a run. So a third of the kills come at any moment of it, a third while the journal of the
change lies there, a third while the files become new one after the other."""
import collections
import os
import pathlib
import random
import shutil
import subprocess
import sys
import tempfile
import time

COMMAND = pathlib.Path(os.environ["SW_BUILD"], "stavewright")  # without the sanitizers: as a user runs it
KILLS = int(os.environ.get("SW_KILLS", 40))
SEED = int(os.environ.get("SW_SEED", random.randrange(10**6)))
JOURNAL = ".stavewright-unfinished"
# A cello part whose sections lie in files of their own.
SECTIONS = ["opening", "first reel/chase", "first reel/bridge", "second reel/lament", "second reel/dance", "second reel/end"]
CUES = {"score.ly": SECTIONS[:4], "finale.ly": SECTIONS[4:]}
chance = random.Random(SEED)


def make_film(folder):
    for number, section in enumerate(SECTIONS):
        path = folder / (section + ".ily")
        path.parent.mkdir(parents=True, exist_ok=True)
        end = "\r\n" if number == 2 else "\n"
        # A long remark makes the reading of a file before its turn take a while.
        remark = f"%{{{end}{('not for the players ' * 4 + end) * 8000}%}}{end}"
        bars = "".join(f"  c4 d8( e) f4\t g |  % {bar}{end}" for bar in range(1, 31))
        path.write_bytes(f"{remark}{path.stem} = \\fixed c {{{end}{bars}}}{'' if number == 3 else end}".encode())
        path.chmod(0o600 if number == 1 else 0o664)
    for cue, sections in CUES.items():
        includes = "".join(f'\\include "{section}.ily"\n' for section in sections)
        music = "".join(f" \\{pathlib.Path(section).name}" for section in sections)
        (folder / cue).write_text(f'\\version "2.24.0"\n{includes}\\new Staff = "cello" {{{music} }}\n')
    (folder / "up.yaml").write_text("steps:\n  - do: octave\n    staff: cello\n    by: 1\n")


def contents(folder):
    """The bytes and permissions of all that lies in a folder."""
    return {str(path.relative_to(folder)): (path.read_bytes(), path.stat().st_mode)
            for path in folder.rglob("*") if path.is_file() or path.is_symlink()}


def start(folder, *words):
    return subprocess.Popen([COMMAND, *words], cwd=folder, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE)


def change(folder):
    return start(folder, "run", "up.yaml", *CUES, "--write")


def look(folder):
    return start(folder, "outline", "finale.ly")


def kill_after(process, seconds):
    """True when the process was still there to be killed."""
    end = time.perf_counter() + seconds
    while time.perf_counter() < end:
        pass  # sleeping is too coarse
    process.kill()
    process.communicate()
    return process.returncode < 0


class Watch:
    """Sees from outside how far a change is."""

    def __init__(self, folder):
        self.files = [str(folder / (section + ".ily")) for section in SECTIONS]
        self.numbers = [os.stat(file).st_ino for file in self.files]
        self.journal = str(folder / "second reel" / JOURNAL)

    def begun(self):
        return True

    def journal_there(self):
        return os.path.lexists(self.journal)

    def first_new(self):
        return any(os.stat(file).st_ino != number for file, number in zip(self.files, self.numbers))

    def all_new(self):
        return all(os.stat(file).st_ino != number for file, number in zip(self.files, self.numbers))

    def journal_gone(self):
        return self.all_new() and not self.journal_there()


STAGES = [Watch.begun, Watch.journal_there, Watch.first_new, Watch.all_new, Watch.journal_gone]
# Kills come at any moment between two stages.
SPANS = [(Watch.begun, Watch.journal_gone), (Watch.journal_there, Watch.journal_gone), (Watch.first_new, Watch.all_new)]


def wait(process, watch, stage):
    """Until the change is so far, or the process has ended."""
    while not stage(watch) and process.poll() is None:
        pass


def measure(folder):
    """How many seconds each of the spans takes when nobody is killed."""
    watch = Watch(folder)
    process = change(folder)
    reached = {}
    for stage in STAGES:
        wait(process, watch, stage)
        reached[stage] = time.perf_counter()
    error = process.communicate()[1].decode()
    if process.returncode != 0:
        sys.exit(f"the change itself fails: status {process.returncode}: {error}")
    return [reached[end] - reached[begin] for begin, end in SPANS]


with tempfile.TemporaryDirectory(dir=os.environ["SW_TEMP"]) as name:
    temp = pathlib.Path(name)
    film = temp / "film"
    make_film(film)
    before = contents(film)
    times = []
    for number in range(5):
        folder = temp / f"measured-{number}"
        shutil.copytree(film, folder)
        times.append(measure(folder))
        after = contents(folder)
    # The shortest times: on a busy machine, a longer one is mostly waiting.
    seconds = [min(span) for span in zip(*times)]
    touched = [path for path in before if before[path] != after[path]]
    if set(before) != set(after) or len(touched) != len(SECTIONS):
        sys.exit(f"the change touches {touched}")

    came = collections.Counter()
    faults = []
    for number in range(KILLS):
        folder = temp / f"killed-{number}"
        shutil.copytree(film, folder)
        watch = Watch(folder)
        process = change(folder)
        wait(process, watch, SPANS[number % 3][0])
        killed = kill_after(process, chance.uniform(0, seconds[number % 3]))
        left = contents(folder)
        whole = all(left.get(path) in (before[path], after[path]) for path in before)
        new = sum(left.get(path) == after[path] for path in touched)
        unfinished = any(JOURNAL in path for path in left)

        recoveries = recoveries_killed = 0
        while unfinished and chance.random() < 0.4:
            recoveries += 1
            recoveries_killed += kill_after(look(folder), chance.uniform(0, seconds[0]))
        process = look(folder)
        said = process.communicate()[1].decode()
        found = contents(folder)
        if not whole or process.returncode != 0 or found not in (before, after) or (new == len(touched)) != (found == after):
            faults.append(f"kill {number}: {new} files new, {'whole' if whole else 'NOT WHOLE'}; then status "
                          f"{process.returncode}, {sum(found.get(p) == after[p] for p in touched)} files new, there are "
                          f"{sorted(found)}; said: {said}")
        if 0 < new < len(touched) and recoveries == 0 and "put back" not in said:
            faults.append(f"kill {number}: the next command put {new} files back and did not say so: {said}")
        came["killed"] += killed
        came["a journal left"] += unfinished
        came["a mix of old and new"] += 0 < new < len(touched)
        came["recoveries killed"] += recoveries_killed
        came["as before" if found == before else "as after"] += 1
        shutil.rmtree(folder)

print(f"# seed {SEED}, {KILLS} changes of {len(touched)} files: " + ", ".join(f"{came[k]} {k}" for k in (
    "killed", "a journal left", "a mix of old and new", "recoveries killed", "as before", "as after")))
for fault in faults:
    print(fault)
if came["a journal left"] * 10 < KILLS or (KILLS >= 40 and came["a mix of old and new"] == 0):
    sys.exit("the kills come at the wrong moments")
sys.exit(1 if faults else 0)

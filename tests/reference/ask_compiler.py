#!/usr/bin/env python3
"""Asks the compiler again for what the reading tests go by: reading/*.ly and the sample of the manual's examples. Says what has
changed; with --write stores the new answers.

usage: ask_compiler.py LILYPOND [--write]"""
import os
import pathlib
import subprocess
import sys
import tempfile

os.environ["SW_LILYPOND"] = sys.argv[1]
os.environ.setdefault("SW_BUILD", "build")
from compiler import LILYPOND, ORACLE, notes  # noqa: E402
import manual  # noqa: E402

READING = pathlib.Path(__file__).resolve().parent / "reading"
WRITE = "--write" in sys.argv


def ask(sources, folder):
    """The compiler's rows for each source, None where it gives none. Some examples have errors on purpose, and some errors end
    the compiler: so what has no answer yet is asked once more by itself."""
    answers = {}
    for group in [sources] + [[source] for source in sources]:
        if all(source in answers for source in group):
            continue
        subprocess.run([LILYPOND, "-s", f"-dinclude-settings={ORACLE}", "-dno-print-pages", *group], cwd=folder,
                       stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        for source in group:
            path = pathlib.Path(folder) / f"{source.stem}.truth.tsv"
            if path.exists():
                answers[source] = path.read_text(encoding="utf-8", errors="replace")
    return {source: answers.get(source) for source in sources}


def check_reading(folder):
    changed = 0
    answers = ask(sorted(READING.glob("*.ly")), folder)
    for source, answer in answers.items():
        truth = source.with_suffix(".truth.tsv")
        kept = notes(truth.read_text().splitlines()) if truth.exists() else None
        if answer is None:
            print(f"{source.name}: the compiler gives no answer")
            changed += 1
        elif kept != notes(answer.splitlines()):
            print(f"{source.name}: the compiler's answer has changed")
            changed += 1
            if WRITE:
                truth.write_text(answer)
    print(f"# {len(answers) - changed} of {len(answers)} sources as stored")
    return changed


def check_sample(folder):
    rows = [row for row in manual.sample() if (manual.FOLDER / row["example"]).exists()]
    if not rows:
        print("# the manual's examples are not installed")
        return 0
    changed = 0
    for begin in range(0, len(rows), 20):
        part = rows[begin:begin + 20]
        answers = ask([manual.FOLDER / row["example"] for row in part], folder)
        for row in part:
            text = answers[manual.FOLDER / row["example"]]
            if text is None:
                print(f"{row['example']}: the compiler gives no answer")
                changed += 1
                continue
            answer = notes(text.splitlines())
            if manual.digest(answer) != row["digest"]:
                print(f"{row['example']}: the compiler's answer has changed")
                changed += 1
                row["digest"], row["notes"] = manual.digest(answer), str(answer.total())
    if WRITE and changed:
        manual.write(rows)
    print(f"# {len(rows) - changed} of {len(rows)} examples as stored")
    return changed


with tempfile.TemporaryDirectory() as temp:
    sys.exit(1 if check_reading(temp) + check_sample(temp) else 0)

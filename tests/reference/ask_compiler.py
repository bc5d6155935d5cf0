#!/usr/bin/env python3
"""Asks the compiler again for what the reading tests go by: reading/*.ly, bars/*.ly, moments/*.ly, lyrics/*.ly and the
sample of the manual's examples. Says what has changed; with --write stores the new answers.

With --scores FOLDER compares the bars and lyrics of the real scores listed there (see test_truth.py) with the compiler's
instead; it takes as long as the compiler needs for all of them. BUILD/tests/reference/test_bars and test_lyrics must have been
built.

usage: ask_compiler.py LILYPOND [--write | --scores FOLDER]"""
import csv
import os
import pathlib
import subprocess
import sys
import tempfile

os.environ["SW_LILYPOND"] = sys.argv[1]
os.environ.setdefault("SW_BUILD", "build")
from compiler import BARS, KEPT, LILYPOND, LYRICS, MOMENTS, ORACLE, notes  # noqa: E402
import manual  # noqa: E402

HERE = pathlib.Path(__file__).resolve().parent
WRITE = "--write" in sys.argv


KINDS = {ORACLE: "truth", BARS: "bars", MOMENTS: "moments", LYRICS: "lyrics"}  # NAME.kind.tsv is what the listener writes


def ask(sources, folder, listener=ORACLE):
    """The compiler's rows for each source, None where it gives none. Some examples have errors on purpose, and some errors end
    the compiler: so what has no answer yet is asked once more by itself."""
    answers = {}
    for group in [sources] + [[source] for source in sources]:
        if all(source in answers for source in group):
            continue
        subprocess.run([LILYPOND, "-s", f"-dinclude-settings={listener}", "-dno-print-pages", *group], cwd=folder,
                       stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        for source in group:
            path = pathlib.Path(folder) / f"{source.stem}.{KINDS[listener]}.tsv"
            if path.exists():
                answers[source] = path.read_text(encoding="utf-8", errors="replace")
    return {source: answers.get(source) for source in sources}


def check_stored(name, folder, listener, what):
    """The sources of a folder beside this script, each with the compiler's answer; `what` of its rows counts."""
    changed = 0
    answers = ask(sorted((HERE / name).glob("*.ly")), folder, listener)
    for source, answer in answers.items():
        stored = source.with_suffix(f".{KINDS[listener]}.tsv")
        kept = what(stored.read_text().splitlines()) if stored.exists() else None
        if answer is None:
            print(f"{source.name}: the compiler gives no answer")
            changed += 1
        elif kept != what(answer.splitlines()):
            print(f"{source.name}: the compiler's answer has changed")
            changed += 1
            if WRITE:
                stored.write_text(answer)
    print(f"# {name}: {len(answers) - changed} of {len(answers)} sources as stored")
    return changed


def compare_scores(scores, listener):
    """The bars or lyrics of real scores; what the compiler says is kept in BUILD for the next time."""
    kind = KINDS[listener]
    command = pathlib.Path(os.environ["SW_BUILD"]) / f"tests/reference/test_{kind}"
    equal = 0
    with open(scores / "LIST.tsv", newline="", encoding="utf-8") as listing:
        pieces = [row["main"] for row in csv.DictReader(listing, delimiter="\t")]
    KEPT.mkdir(parents=True, exist_ok=True)
    for piece in pieces:
        name = KEPT / piece.replace("/", "-")
        rows = KEPT / f"{name.name}.{kind}.tsv"
        if not rows.exists():
            subprocess.run([LILYPOND, "-s", f"-dinclude-settings={listener}", "-dno-print-pages", "-o", name, scores / piece],
                           stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        result = subprocess.run([command, scores / piece, rows], capture_output=True, text=True)
        equal += result.returncode == 0
        if result.returncode != 0:
            print(f"{piece}: {(result.stdout + result.stderr).splitlines()[0]}")
    print(f"# {kind}: {equal} of {len(pieces)} pieces equal")
    return len(pieces) - equal


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


if "--scores" in sys.argv:
    SCORES = pathlib.Path(sys.argv[sys.argv.index("--scores") + 1])
    sys.exit(1 if compare_scores(SCORES, BARS) + compare_scores(SCORES, LYRICS) else 0)
with tempfile.TemporaryDirectory() as temp:
    sys.exit(1 if check_stored("reading", temp, ORACLE, notes) + check_stored("bars", temp, BARS, list) +
             check_stored("moments", temp, MOMENTS, list) + check_stored("lyrics", temp, LYRICS, list) +
             check_sample(temp) else 0)

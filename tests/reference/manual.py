"""A random sample of the example sources of the language manual: manual-sample.tsv keeps for each what the compiler hears, as a
digest. The sources themselves come with the manual (Debian: lilypond-doc-html)."""
import csv
import hashlib
import os
import pathlib

FOLDER = pathlib.Path(os.environ.get("SW_MANUAL", "/usr/share/doc/lilypond/html"))
SAMPLE = pathlib.Path(__file__).resolve().parent / "manual-sample.tsv"
COLUMNS = ["example", "digest", "notes", "differs"]


def digest(notes):
    """Of a multiset of rows, as compiler.notes makes it."""
    text = "\n".join("\t".join(row) for row in sorted(notes.elements()))
    return hashlib.sha256(text.encode()).hexdigest()


def sample():
    with open(SAMPLE, newline="", encoding="utf-8") as file:
        return list(csv.DictReader(file, delimiter="\t"))


def write(rows):
    with open(SAMPLE, "w", newline="", encoding="utf-8") as file:
        writer = csv.DictWriter(file, COLUMNS, delimiter="\t", lineterminator="\n")
        writer.writeheader()
        writer.writerows(rows)

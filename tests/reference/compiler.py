"""What the compiler hears, for tests that compare with it."""
import collections
import os
import pathlib
import subprocess
import sys

LILYPOND = os.environ["SW_LILYPOND"]
ORACLE = pathlib.Path(__file__).resolve().parent / "oracle.ily"
BARS = ORACLE.with_name("bars.ily")
MOMENTS = ORACLE.with_name("moments.ily")
LYRICS = ORACLE.with_name("lyrics.ily")
KEPT = pathlib.Path(os.environ["SW_BUILD"]) / "truth"


def notes(lines, staves=False):
    """The multiset of note and drum rows, without staff and voice (columns 7 and 8); with `staves` the staff comes last."""
    rows = (line.rstrip("\n").split("\t") for line in lines)
    return collections.Counter(tuple(r[:6] + r[8:11] + (r[6:7] if staves else [])) for r in rows if len(r) > 4 and r[4] in ("note", "drum"))


def compile_piece(path, digest, keep=True, staves=False):
    """The compiler's reading of a source; with `keep` it is made once for each digest of the sources."""
    name = KEPT / f"{path.parent.name}-{path.stem}-{digest}"
    rows = name.with_name(name.name + ".truth.tsv")
    kept = name.with_name(name.name + ".kept.tsv")
    if not kept.exists():
        KEPT.mkdir(exist_ok=True)
        result = subprocess.run([LILYPOND, f"-dinclude-settings={ORACLE}", "-dno-print-pages", "-o", name, path],
                                capture_output=True, text=True)
        if result.returncode != 0:
            sys.exit(f"{path}: the compiler failed\n{result.stderr}")
        rows.rename(kept)
    with open(kept) as lines:
        heard = notes(lines, staves)
    if not keep:
        kept.unlink()
    return heard



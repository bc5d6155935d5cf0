#!/usr/bin/env python3
"""Worked examples from outside, done again by the program: worked.tsv holds short ones with the answer of a handbook, the language's
manual or a public-domain score; worked-scores.tsv names passages of real scores (when SW_SCORES is there) in which the composer has
done what a command does, and how much of it must come out alike."""
import collections
import concurrent.futures
import csv
import os
import pathlib
import shlex
import sys
from fractions import Fraction

import lines
from lines import height, run

HERE = pathlib.Path(__file__).resolve().parent
SCORES = pathlib.Path(os.environ["SW_SCORES"])
TEMP = pathlib.Path(os.environ["SW_TEMP"])


def table(name):
    with open(HERE / name, encoding="utf-8") as file:
        return list(csv.DictReader((line for line in file if not line.startswith("#")), delimiter="\t", quoting=csv.QUOTE_NONE))


def write(name, text):
    """A source in a folder of its own: a command reads what lies beside it, too."""
    path = TEMP / name / "score.ly"
    path.parent.mkdir(exist_ok=True)
    path.write_text(text, encoding="utf-8")
    return path


# ---- short examples -------------------------------------------------------------------------------------------------

def entries(text):
    """[(name, music)] of `name: music; name: music`."""
    return [(part.split(":", 1)[0].strip(), part.split(":", 1)[1].strip()) for part in text.split(";")]


def source(staves):
    return lines.score(*(lines.staff(name, music) for name, music in staves))


def try_example(number, row):
    """(what is wrong or None, the result's text, the answer's)."""
    path = write(f"example-{number}", source(entries(row["staves"])))
    answer = dict(entries(row["answer"]))
    command, *options = shlex.split(row["command"])
    result = run(command, path, *options, "--write")
    says = answer.pop("says", None)
    fault = None
    if says is None and result.returncode != 0:
        fault = f"status {result.returncode}: {result.stderr.strip()}"
    elif says is not None and says not in result.stderr:
        fault = f"does not say “{says}”: {result.stderr.strip()}"
    return fault, path.read_text(encoding="utf-8"), source(answer.items())


def staves_of(name, sources):
    """{staff: its notes} of each source; they are read as one, for there are many."""
    events = lines.read("events", write(name, "\n".join(sources)))
    found = []
    for number in range(1, len(sources) + 1):
        found.append(collections.defaultdict(list))
        for note in lines.notes(events, number):
            found[-1][note.staff].append((note.onset, note.duration, note.pitch))
    return found


def judge_examples(rows, pool):
    """For each row what is wrong, or None."""
    faults, results, answers = map(list, zip(*pool.map(try_example, range(len(rows)), rows)))
    compared = zip(rows, staves_of("results", results), staves_of("answers", answers))
    for i, (row, found, wanted) in enumerate(compared):
        for name in dict(entries(row["answer"])).keys() - {"says"}:
            if sorted(found[name]) != sorted(wanted[name]):
                faults[i] = faults[i] or f"{name} is {sorted(found[name])}, not {sorted(wanted[name])}"
    return faults


# ---- passages of real scores ----------------------------------------------------------------------------------------

class Piece:
    """A row's score, and the notes that it speaks of."""

    def __init__(self, number, row):
        self.name = f"passage-{number}"
        self.path = SCORES / row["score"]
        self.score = int(row["number"])
        if row["from"].startswith("\\"):
            self.path = self.of_variables([name.strip() for name in row["from"].split(",")])
        heard = lines.notes(lines.read_once("events", self.path), self.score)
        edges = row["passage"].split() or [0, max(note.onset + note.duration for note in heard)]
        self.begin, self.end = map(Fraction, edges)
        self.notes = [note for note in heard if self.begin <= note.onset < self.end]
        self.end = max(note.onset + note.duration for note in self.notes)
        self.outline = lines.read_once("outline", self.path)
        self.times = lines.metres(self.outline, self.score)

    def of_variables(self, names):
        """A score of variables that stand in an included file, each on a staff that is called so."""
        staves = " ".join(rf'\new Staff = "{name[1:]}" {{ {name} }}' for name in names)
        return write(f"{self.name}-parts", f'\\version "2.24.0"\n\\include "{self.path}"\n\\score {{ << {staves} >> }}\n')

    def line(self, part):
        """The notes of a staff, of one of its voices, or of a variable: `viola`, `viola:1`, `\\violaI`."""
        staff, _, voice = part.strip().lstrip("\\").partition(":")
        return [note for note in self.notes if note.staff == staff and voice in ("", note.voice)]

    def staff(self, name, line, before=""):
        return lines.staff(name, f"{before} {lines.music(line, self.times, self.begin, self.end)}")

    def changed(self, staves, *commands):
        """The notes after some commands, at their own times."""
        path = write(self.name, lines.score(*staves))
        for command, *options in commands:
            result = run(command, path, *options, "--write")
            if "changed\n" not in result.stderr:
                raise RuntimeError(f"{command}: {result.stderr.strip() or 'nothing is changed'}")
        return [note._replace(onset=note.onset + self.begin) for note in lines.notes(lines.read("events", path))]


def shared(composer, program):
    return len(composer & program), len(composer)


def transposition(piece, row):
    """`from` doubles at `to`, which rests: the very notes and values, none more."""
    source, name = row["from"].split("=")
    target, player = row["to"].split("=")
    player, _, octaves = player.partition("+")
    player, key = player.split("/")
    staves = [piece.staff(name, piece.line(source)), piece.staff(player, [], rf"\transposition {key}")]
    found = {(note.onset, note.duration, height(note.pitch) + 12 * int(octaves or 0), note.pitch[0])
             for note in piece.changed(staves, ["double", "--from", name, "--to", player]) if note.staff == player}
    wanted = {(note.onset, note.duration, height(note.pitch), note.pitch[0]) for note in piece.line(target)}
    return len(wanted & found), len(wanted | found)


def octave(piece, row):
    """What `from` has, brought into the compass of an instrument; `to` has it in the octaves that the composer gave it. Where both
    play at once."""
    source, name = row["from"].split("=")
    target, instrument = row["to"].split("=")
    line = piece.line(source)
    both = {note.onset for note in line}
    fold = ["octave", "--staff", name, "--into", instrument, "--fold"]
    found = {(note.onset, height(note.pitch)) for note in piece.changed([piece.staff(name, line)], fold)}
    wanted = {(note.onset, height(note.pitch)) for note in piece.line(target) if note.onset in both}
    return shared(wanted, found)


def divisi(piece, row):
    """The parts, where they have one rhythm, as chords that are divided again. Two parts become chords by `unite`."""
    parts = [collections.defaultdict(list) for _ in row["from"].split(",")]
    for by_onset, part in zip(parts, row["from"].split(",")):
        for note in piece.line(part):
            by_onset[note.onset].append(note)
    together = [onset for onset in parts[0]
                if all(len(part[onset]) == 1 and part[onset][0].duration == parts[0][onset][0].duration for part in parts)]
    played = [[part[onset][0] for onset in together] for part in parts]
    name = row["to"]
    divide = ["divisi", "--staff", name, "--parts", len(parts), "--way", "staves"]
    if len(parts) == 2:
        voices = lines.staff(name, lines.two_voices(*played, piece.times, piece.begin, piece.end))
        divided = piece.changed([voices], ["unite", "--staff", name], divide)
    else:
        divided = piece.changed([piece.staff(name, sum(played, []))], divide)
    order = list(dict.fromkeys(note.staff for note in divided))
    found = {(note.onset, order.index(note.staff), note.pitch) for note in divided}
    wanted = {(onset, i, part[onset][0].pitch) for onset in together for i, part in enumerate(parts)}
    return shared(wanted, found)


def hands(piece, row):
    """Both staves on one, in chords and voices that don't show the hands, split again."""
    right, left = (piece.line(part) for part in row["from"].split(","))
    name, *options = row["to"].split()
    both = piece.staff(name, right + left, lines.tempo(piece.outline, piece.score))
    split = piece.changed([both], ["hands", "--staff", name, *options])
    found = {(note.onset, note.pitch, note.staff.endswith("Right")) for note in split}
    wanted = {(note.onset, note.pitch, hand is right) for hand in (right, left) for note in hand}
    return shared(wanted, found)


SORTS = {"transposition": transposition, "octave": octave, "divisi": divisi, "hands": hands}


def passage(number, row):
    """(what is wrong or None, notes alike, notes)."""
    try:
        same, count = SORTS[row["sort"]](Piece(number, row), row)
    except RuntimeError as refused:
        return f"is refused: {refused}", 0, 0
    least = int(row["least"])
    wrong = 100 * same < least * count or count == 0
    return (f"only {same} of {count} notes as in the score, not {least} %" if wrong else None), same, count


# ---- all of it ------------------------------------------------------------------------------------------------------

examples = table("worked.tsv")
passages = table("worked-scores.tsv") if SCORES.exists() else []
with concurrent.futures.ThreadPoolExecutor(2) as pool:
    wrong = judge_examples(examples, pool)
    judged = list(pool.map(passage, range(len(passages)), passages))
if "SW_VERBOSE" in os.environ:
    for row, (_, same, count) in zip(passages, judged):
        print(f"{same:5} of {count:5}  {100 * same / max(count, 1):6.2f}  {row['least']:>3}  {row['sort']} {row['source']}")
faults = [f"{row['source']}\n    {row['command']}\n    {fault}" for row, fault in zip(examples, wrong) if fault]
faults += [f"{row['source']}\n    {fault}" for row, (fault, _, _) in zip(passages, judged) if fault]
for sort in SORTS:
    short = [fault for row, fault in zip(examples, wrong) if row["sort"] == sort]
    real = [result for row, result in zip(passages, judged) if row["sort"] == sort]
    same, count = (sum(result[i] for result in real) for i in (1, 2))
    share = f"; in {len(real)} passages of real scores {same} of {count} notes are as the composer has them" if real else ""
    print(f"# {sort}: {short.count(None)} of {len(short)} examples as published{share}")
print("\n".join(faults))
sys.exit(1 if faults else 0)

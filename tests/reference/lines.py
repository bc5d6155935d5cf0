"""Lines of real scores as small sources of their own, for tests that have the program do again what a composer did."""
import collections
import functools
import pathlib
import re
import sys
from fractions import Fraction

sys.path.insert(0, str(pathlib.Path(__file__).resolve().parent.parent / "property"))
from octave_trials import height, run  # noqa: E402

Note = collections.namedtuple("Note", "onset duration pitch staff voice")


def read(command, path):
    """What `events` or `outline` prints."""
    return run(command, path).stdout


@functools.cache
def read_once(command, path):
    """The same of a source that does not change."""
    return read(command, path)


def notes(events, score=1):
    """The notes of one score, without grace notes; a note that two voices share comes twice."""
    rows = (line.split("\t") for line in events.splitlines())
    return [Note(Fraction(r[1]), Fraction(r[3]), r[5], r[6], r[7]) for r in rows
            if r[0] == str(score) and r[4] == "note" and r[2] == "0"]


def of_score(outline, score):
    return outline.split(f"score {score}:")[1].split("\nscore ")[0]


def metres(outline, score=1):
    """[(onset, "3/4")] of one score; the first one may begin before the music, in whose first bar notes are missing."""
    found = []
    onset, bar, length = Fraction(0), 1, Fraction(1)
    for at, beat, beats, value in re.findall(r"\n  bar (\d+):(\S+)  time (\d+)/(\d+)", of_score(outline, score)):
        new = int(at)
        if not found and new > 1:
            found.append((onset, "4/4"))
        if found:
            onset += (new - bar) * length
        else:
            onset -= (Fraction(beat) - 1) / int(value)
        bar, length = new, Fraction(int(beats), int(value))
        found.append((onset, f"{beats}/{value}"))
    return found or [(onset, "4/4")]


def tempo(outline, score=1):
    """Its first tempo that has a figure, as it is written; else nothing."""
    match = re.search(r"  tempo (?:\".*\" )?(\S+ = \d+)", of_score(outline, score))
    return rf"\tempo {match[1]}" if match else ""


# ---- printing -------------------------------------------------------------------------------------------------------

def written(pitch):
    name, octave, quarter_tones = re.fullmatch(r"([a-g])(-?\d+)/(-?\d+)", pitch).groups()
    marks = int(octave) + 1
    sign = ("is" if int(quarter_tones) > 0 else "es") * (abs(int(quarter_tones)) // 2)
    return name + sign + ("'" * marks if marks > 0 else "," * -marks)


def values(length):
    """Note values that last so long together; what is no half of a half has a factor."""
    if length.denominator & (length.denominator - 1):
        odd = length.denominator // (length.denominator & -length.denominator)
        return [f"{value}*2/{odd}" for value in values(length * odd / 2)]
    found = [r"\breve"] * int(length // 2)
    length %= 2
    for power in range(8):
        value = Fraction(1, 2**power)
        if length >= value * 3 / 2:
            found.append(f"{2**power}.")
            length -= value * 3 / 2
        elif length >= value:
            found.append(str(2**power))
            length -= value
    return found if length == 0 else found + [f"128*{length * 128}"]


def chord(pitches, length):
    text = written(pitches[0]) if len(pitches) == 1 else "<" + " ".join(map(written, pitches)) + ">"
    return "~ ".join(text + value for value in values(length))


def rest(length):
    return " ".join("r" + value for value in values(length))


def voice(chords, begin, end):
    """The text of [(onset, length, pitches)], which don't overlap, with rests between them."""
    words = []
    now = begin
    for onset, length, pitches in chords:
        if onset > now:
            words.append(rest(onset - now))
        words.append(chord(pitches, length))
        now = onset + length
    if end > now:
        words.append(rest(end - now))
    return " ".join(words)


def chords_of(line):
    """Notes that begin and end together as chords, the higher ones last."""
    together = collections.defaultdict(set)
    for note in line:
        together[note.onset, note.duration].add(note.pitch)
    return [(*key, sorted(pitches, key=height)) for key, pitches in sorted(together.items())]


def voices(line):
    """As few voices as it takes, by length alone: who played what is not to be seen in them."""
    found = []
    for onset, length, pitches in sorted(chords_of(line), key=lambda c: (c[0], -c[1])):
        for chords in found:
            if chords[-1][0] + chords[-1][1] <= onset:
                chords.append((onset, length, pitches))
                break
        else:
            found.append([(onset, length, pitches)])
    return found


def bars(times, begin, end):
    """The metre from `begin` on, which may stand anywhere in a bar, as music of nothing but space."""
    words = []
    now = begin
    for i, (onset, metre) in enumerate(times):
        until = times[i + 1][0] if i + 1 < len(times) else end
        if until <= begin or onset >= end:
            continue
        if onset > now:
            words += ["s" + value for value in values(onset - now)]
            now = onset
        words.append(rf"\time {metre}")
        upbeat = (onset - now) % Fraction(metre)
        if upbeat:
            words.append(rf"\partial 128*{upbeat * 128}")
    return " ".join(words)


def music(line, times, begin, end):
    """A staff's music."""
    texts = [voice(chords, begin, end) for chords in voices(line)] or [rest(end - begin)]
    return "<< { " + bars(times, begin, end) + " } " + " ".join(rf"\new Voice {{ {text} }}" for text in texts) + " >>"


def two_voices(upper, lower, times, begin, end):
    """Two lines on a staff as two voices are written."""
    texts = [voice(chords_of(line), begin, end) for line in (upper, lower)]
    return "<< { " + bars(times, begin, end) + " } { << { " + texts[0] + r" } \\ { " + texts[1] + " } >> } >>"


def staff(name, inside):
    return rf'\new Staff = "{name}" \with {{ instrumentName = "{name}" }} {{ {inside} }}'


def score(*staves):
    return '\\version "2.24.0"\n\\score {\n  <<\n    ' + "\n    ".join(staves) + "\n  >>\n}\n"

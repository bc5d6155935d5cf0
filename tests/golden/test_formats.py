#!/usr/bin/env python3
"""The forms of `check` for programs, and accepted findings, on the demo film: what one form says the others say, too;
SARIF is valid against the schema of the standard; fingerprints stay when lines and bars move and change when the music
does."""
import json
import os
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile
import warnings

ROOT = pathlib.Path(__file__).resolve().parent.parent.parent
COMMAND = os.environ.get("SW_COMMAND", ROOT / "build/test/stavewright")
# From the crate serde-sarif 0.6.5 (MIT), which carries the schema that the OASIS committee publishes.
SCHEMA = ROOT / "tests/reference/sarif/sarif-2.1.0.json"
failures = []


def expect(good, what):
    if not good:
        failures.append(what)
        print(f"FAILED: {what}")


def check(folder, *words, status=(0, 1)):
    result = subprocess.run([COMMAND, "check", "--quiet", *words], cwd=folder, capture_output=True, timeout=300)
    expect(result.returncode in status, f"check {words}: status {result.returncode}: {result.stderr.decode()[:2000]}")
    return result


def findings(folder, *words):
    return json.loads(check(folder, "--format", "json", *words).stdout)["findings"]


def compare_forms(folder):
    lines = check(folder, "--format", "gcc", ".").stdout.decode().splitlines()
    expect(lines == check(folder, ".").stdout.decode().splitlines(), "gcc is text without colours")
    pattern = re.compile(r"(.*?):(\d+):(\d+): (note|warning|error): (.*) \[([a-z-]+)\]")
    wanted = [pattern.fullmatch(line).groups() for line in lines]
    expect(len(wanted) > 20, "the demo film has findings")
    objects = findings(folder, ".")
    found = [(f["file"], str(f["line"]), str(f["column"]), f["severity"], f["message"], f["rule"]) for f in objects]
    expect(found == wanted, "JSON says what the lines say")
    expect(any(f["staff"] == "Harp 1" and f["bar"] == 14 for f in objects), "JSON names staff and bar")

    notes = check(folder, "--format", "github", ".").stdout.decode().splitlines()
    pattern = re.compile(r"::(notice|warning|error) file=([^,]*),line=(\d+),(?:col=(\d+),endColumn=\d+|endLine=\d+),"
                         r"title=([a-z-]+)::(.*)")
    unescaped = lambda text: re.sub("%(25|0D|0A|3A|2C)", lambda m: chr(int(m[1], 16)), text)
    found = [pattern.fullmatch(line).groups() for line in notes]
    found = [(unescaped(f), line, col, {"notice": "note"}.get(s, s), unescaped(text), rule)
             for s, f, line, col, rule, text in found]
    expect([(f[0], f[1], f[3:]) for f in found] == [(w[0], w[1], w[3:]) for w in wanted], "annotations say the same")
    expect(all(f[2] in (None, w[2]) for f, w in zip(found, wanted)), "annotations have the columns")

    log = json.loads(check(folder, "--format", "sarif", ".").stdout)
    run = log["runs"][0]
    rules = run["tool"]["driver"]["rules"]
    found = []
    for result in run["results"]:
        place = result["locations"][0]["physicalLocation"]
        region = place["region"]
        expect(rules[result["ruleIndex"]]["id"] == result["ruleId"], "ruleIndex points to the rule")
        expect((region["startLine"], region["startColumn"]) <= (region["endLine"], region["endColumn"]), "regions")
        found.append((place["artifactLocation"]["uri"], str(region["startLine"]), str(region["startColumn"]),
                      result["level"], result["message"]["text"], result["ruleId"]))
    expect(found == wanted, "SARIF says what the lines say")
    expect(all(len(rule["help"]["text"]) > 40 for rule in rules), "each rule has a help text")
    prints = [result["partialFingerprints"]["stavewright/v1"] for result in run["results"]]
    expect(len(set(prints)) == len(prints), "no two findings have the same fingerprint")
    return log


def odd_names(folder):
    """Signs that mean something in URIs and annotations, and bytes that are no UTF-8."""
    odd = folder / "odd"
    odd.mkdir()
    (odd / "a:b, 50% #1.ly").write_text("\\score { \\new Staff { c'1 \\nothing } }\n")
    with open(os.fsencode(odd) + b"/\xe9t\xe9.ly", "w") as file:
        file.write("\\score { \\new Staff { c'1 \\nothing } }\n")
    logs = [json.loads(check(odd, "--format", "sarif", ".").stdout)]
    uris = [r["locations"][0]["physicalLocation"]["artifactLocation"]["uri"] for r in logs[0]["runs"][0]["results"]]
    expect(uris == ["./a%3Ab%2C%2050%25%20%231.ly", "%E9t%E9.ly"], f"names are escaped in URIs: {uris}")
    names = [f["file"] for f in findings(odd, ".")]
    expect(names == ["a:b, 50% #1.ly", "\ufffdt\ufffd.ly"], f"names in JSON: {names}")
    note = check(odd, "--format", "github", ".").stdout.split(b"\n")[0]
    expect(note.startswith(b"::warning file=a%3Ab%2C 50%25 #1.ly,line=1,"), f"names in annotations: {note}")
    return logs


def validate(logs):
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            import jsonschema
    except ImportError:
        return False
    validator = jsonschema.Draft7Validator(json.loads(SCHEMA.read_text()))
    for log in logs:
        for error in validator.iter_errors(log):
            expect(False, f"SARIF: {list(error.absolute_path)}: {error.message[:300]}")
    broken = json.loads(json.dumps(logs[0]))
    broken["runs"][0]["results"][0]["level"] = "grave"
    expect(not validator.is_valid(broken), "the schema refuses what is wrong")
    return True


def fingerprints(folder):
    """Of the findings of all files, with those of one kind as a list."""
    return sorted((f["file"], f["rule"], f["fingerprint"]) for f in findings(folder, "."))


def moved_lines(folder):
    before = fingerprints(folder)
    for path in sorted(folder.glob("*/*.ily")):
        text = path.read_text(encoding="utf-8")
        path.write_text("% a remark\n\n" + text.replace("  % -- A --", "  % -- A --\n  % more is said here"), encoding="utf-8")
    expect(fingerprints(folder) == before, "fingerprints stay when lines move")
    bars = [f["bar"] for f in findings(folder, ".")]
    for source in ("strings.ily", "woodwinds.ily"):  # bars that come in at the beginning of a staff
        path = folder / "1m1-first-light" / source
        text = path.read_text(encoding="utf-8")
        path.write_text(re.sub(r"(= \\(?:relative|fixed) [a-g',]+ \{\n)", r"\1  R1*2 |\n", text), encoding="utf-8")
    after = fingerprints(folder)
    kinds = ("range", "hand-span", "no-niente")  # those of time see other tempos now
    stayed = [p for p in before if p in after and p[1] in kinds]
    expect(stayed == [p for p in before if p[1] in kinds], "fingerprints stay when bars come in before")
    expect(bars != [f["bar"] for f in findings(folder, ".")], "bars have come in")


def accepted(folder):
    check(folder, "--baseline", "accepted.txt", ".", status=(2,))  # there is none yet
    all_found = findings(folder, ".")
    check(folder, "--baseline", "accepted.txt", "--baseline-write", ".", status=(0,))
    listed = (folder / "accepted.txt").read_text(encoding="utf-8")
    expect(sum(int(line.split("\t")[1]) for line in listed.splitlines()[1:]) == len(all_found), "all are listed")
    check(folder, "--baseline", "accepted.txt", "--baseline-write", ".", status=(0,))
    expect((folder / "accepted.txt").read_text(encoding="utf-8") == listed, "writing again changes nothing")
    result = check(folder, "--baseline", "accepted.txt", ".", status=(0,))
    expect(result.stdout == b"", "nothing is told when all is accepted")
    # From within a folder of the film the paths are the same ones.
    expect(check(folder / "1m1-first-light", "--baseline", "../accepted.txt", "score.ly", status=(0,)).stdout == b"",
           "paths are those from the list's own folder")
    # A new one is told, one that is like an accepted one as well.
    cue = folder / "1m1-first-light/woodwinds.ily"
    text = cue.read_text(encoding="utf-8")
    cue.write_text(text.replace("fluteOne =", "fluteExtra = { c,,1 }\nfluteOne =") , encoding="utf-8")
    (folder / "new.ly").write_text("\\score { \\new Staff \\with { instrumentName = \"Flute\" } { c,1 | c,1 | } }\n")
    told = findings(folder, "--baseline", "accepted.txt", ".")
    expect([f["file"] for f in told] == ["new.ly"] * 2, f"only what is new is told: {told}")
    expect([f["fingerprint"][-2:] for f in told] == [":1", ":2"], f"those alike are numbered: {told}")
    check(folder, "--baseline", "accepted.txt", "--baseline-write", "new.ly", status=(0,))
    more = (folder / "accepted.txt").read_text(encoding="utf-8")
    expect(set(listed.splitlines()) < set(more.splitlines()), "entries of files that were not checked stay")
    (folder / "new.ly").write_text("\\score { \\new Staff \\with { instrumentName = \"Flute\" } { c''1 | c,1 | } }\n")
    result = subprocess.run([COMMAND, "check", "--baseline", "accepted.txt", "."], cwd=folder, capture_output=True, text=True)
    expect(result.returncode == 0 and "accepted finding is no longer there" in result.stderr, f"mended: {result.stderr}")
    (folder / "new.ly").write_text("\\score { \\new Staff \\with { instrumentName = \"Flute\" } { c''1 | d,1 | } }\n")
    told = findings(folder, "--baseline", "accepted.txt", ".")
    expect([f["rule"] for f in told] == ["range"], f"another note is another finding: {told}")
    (folder / "accepted.txt").write_text("stavewright baseline 1\nrubbish\n")
    result = check(folder, "--baseline", "accepted.txt", ".", status=(2,))
    expect(b"accepted.txt:2:" in result.stderr, "a wrong line is named")


def order_of_threads(folder):
    """The same findings in the same order, on one processor and on all."""
    first = check(folder, "--format", "json", ".").stdout
    alone = subprocess.run(["taskset", "-c", "0", COMMAND, "check", "--quiet", "--format", "json", "."], cwd=folder,
                           capture_output=True)
    expect(alone.stdout == first, "one thread and several say the same")


with tempfile.TemporaryDirectory(dir=os.environ.get("SW_TEMP")) as temp:
    folder = pathlib.Path(temp) / "film"
    shutil.copytree(ROOT / "corpus", folder)
    order_of_threads(folder)
    logs = [compare_forms(folder)]
    logs += odd_names(folder)
    shutil.rmtree(folder / "odd")
    accepted(folder)
    (folder / "new.ly").unlink()
    (folder / "accepted.txt").unlink()
    moved_lines(folder)
validated = validate(logs)
print(f"# {len(logs)} SARIF logs {'valid against the schema' if validated else 'not validated: no python3-jsonschema'}")
sys.exit(1 if failures else 0 if validated else 77)

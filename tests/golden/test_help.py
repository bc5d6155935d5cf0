#!/usr/bin/env python3
"""What the command says about itself: the example of each help text works on the demo film, the manual page and the shells'
completions can be read by those that they are made for, colours and progress are for terminals only."""
import os
import pathlib
import pty
import re
import shutil
import subprocess
import sys
import tempfile
import time

ROOT = pathlib.Path(__file__).resolve().parent.parent.parent
COMMAND = str(pathlib.Path(os.environ.get("SW_COMMAND", ROOT / "build/test/stavewright")).resolve())
failures = []
left_out = []


def expect(good, what):
    if not good:
        failures.append(what)
        print(f"FAILED: {what}")


def run(*words, status=0, **more):
    result = subprocess.run([COMMAND, *words], cwd=ROOT, capture_output=True, text=True, timeout=300, **more)
    expect(result.returncode == status, f"{words}: status {result.returncode}, not {status}: {result.stderr[:500]}")
    return result.stdout


def commands():
    return [line.split()[0] for line in run("help").splitlines() if re.match(r"  [a-z]", line)]


def examples(text):
    """The lines behind "example: "."""
    found = []
    for line in text.splitlines():
        if match := re.match(r"examples?: (stavewright .*)", line) or (found and re.match(r" +(stavewright .*)", line)):
            found.append(match[1])
    return found


def try_examples(folder):
    """In a folder where `stavewright` and the demo film are."""
    shutil.copytree(ROOT / "corpus", folder / "corpus")
    (folder / "bin").mkdir()
    (folder / "bin/stavewright").symlink_to(COMMAND)
    environment = dict(os.environ, PATH=f"{folder / 'bin'}:{os.environ['PATH']}", GIT_CONFIG_GLOBAL=os.devnull)
    subprocess.run(["git", "init", "-q", folder], env=environment, check=True)  # for hook install
    count = 0
    for command in commands():
        for example in examples(run("help", command)) or [None]:
            expect(example, f"{command} has no example")
            if example:
                count += 1
                result = subprocess.run(["sh", "-c", example], cwd=folder, env=environment, capture_output=True, text=True)
                expect(result.returncode in (0, 1), f"{example}: {result.returncode}: {result.stderr[:500]}")
                expect(result.stdout, f"{example} prints nothing")
        expect(run(command, "--help") == run("help", command), f"{command} --help is help {command}")
    print(f"# {count} examples of help texts run")


def rules():
    table = [line.split(maxsplit=2) for line in run("rules").splitlines()]
    expect(len(table) > 10 and all(row[1] in ("note", "warning", "error") for row in table), "the table of rules")
    for name, severity, summary in table:
        first = run("explain", name).splitlines()[0]
        expect(first == f"{name}: {summary} ({severity})", f"explain {name}: {first}")
    return [row[0] for row in table]


def manual(folder):
    page = folder / "stavewright.1"
    page.write_text(run("manual"), encoding="utf-8")
    text = page.read_text(encoding="utf-8")
    for command in commands():
        expect(f"\n.SS {command}" in text, f"the manual page has {command}")
    for tool, words in (("groff", ["-man", "-ww", "-Tutf8", "-z"]), ("mandoc", ["-Tlint", "-Wwarning"])):
        if shutil.which(tool) is None:
            left_out.append(tool)
            continue
        result = subprocess.run([tool, *words, page], capture_output=True, text=True)
        said = [line for line in (result.stdout + result.stderr).splitlines() if "missing date" not in line]
        expect(not said, f"{tool}: {said[:5]}")


def bash_proposals(script, *words):
    """What bash proposes for the last word."""
    text = f"""compopt() {{ :; }}; . {script}; COMP_WORDS=("$@"); COMP_CWORD=$(($# - 1)); _stavewright; printf '%s\\n' "${{COMPREPLY[@]}}" """
    result = subprocess.run(["bash", "-c", text, "bash", "stavewright", *words], cwd=ROOT, capture_output=True, text=True)
    expect(result.returncode == 0 and not result.stderr, f"bash completion of {words}: {result.stderr}")
    return [line for line in result.stdout.splitlines() if line]


def completion(folder, rule_names):
    script = folder / "completion.bash"
    script.write_text(run("completion", "bash"))
    expect(bash_proposals(script, "oct") == ["octave"], "bash: a command")
    expect(set(commands()) < set(bash_proposals(script, "")), "bash: all commands")
    expect(bash_proposals(script, "check", "--form") == ["--format"], "bash: an option")
    expect(bash_proposals(script, "check", "--format", "") == ["text", "gcc", "json", "sarif", "github"], "bash: a value")
    expect(bash_proposals(script, "check", "--rules", "range,br") == ["range,breath"], "bash: the last of several rules")
    expect(sorted(bash_proposals(script, "explain", "")) == sorted(rule_names), "bash: rules")
    expect("corpus" in bash_proposals(script, "outline", "corp"), "bash: paths")
    expect(bash_proposals(script, "roster", "--to", "src/ap") == ["src/app"], "bash: folders")
    expect(bash_proposals(script, "check", "--format", "=", "s") == ["sarif"], "bash: a value behind =")
    expect("gcc" in bash_proposals(script, "check", "--format", "="), "bash: all values behind =")
    expect(bash_proposals(script, "hook", "") == ["install", "remove"], "bash: what a hook can be told")
    (folder / "first cue").mkdir()
    proposed = bash_proposals(script, "check", f"{folder}/first")
    expect(proposed == [f"{folder}/first cue"], f"bash: a path with a space: {proposed}")
    for command in commands():
        options = re.findall(r"^  (--[a-z-]+)", run("help", command), re.M)
        expect(set(options) <= set(bash_proposals(script, command, "--")), f"bash: the options of {command}")
    script = folder / "_stavewright"
    script.write_text(run("completion", "zsh"))
    if shutil.which("zsh") is None:
        left_out.append("zsh")
    else:
        expect(subprocess.run(["zsh", "-n", script]).returncode == 0, "zsh can read its script")
        loaded = subprocess.run(["zsh", "-fc", f"autoload -U compinit; compinit -D; . {script}; echo $_comps[stavewright]"],
                                capture_output=True, text=True)
        expect(loaded.stdout.strip() == "_stavewright", f"zsh: {loaded.stdout} {loaded.stderr}")
    run("completion", "fish", status=2)


def mistyped():
    for words, wanted in ((["chekc"], '"check"'), (["check", "--rulse", "range"], '"--rules"'), (["explain", "rnage"], '"range"'),
                          (["check", "--format", "jsno", "corpus"], "json")):
        result = subprocess.run([COMMAND, *words], cwd=ROOT, capture_output=True, text=True)
        expect(result.returncode == 2 and wanted in result.stderr, f"{words}: {result.stderr}")


def on_terminal(*words, **environment):
    """What comes on a terminal, on both streams."""
    leader, follower = pty.openpty()
    process = subprocess.Popen([COMMAND, *words], cwd=ROOT, stdin=subprocess.DEVNULL, stdout=follower, stderr=follower,
                               env=dict(os.environ, TERM="xterm", **environment))
    os.close(follower)
    text = b""
    try:
        while block := os.read(leader, 65536):
            text += block
    except OSError:  # the other end is closed
        pass
    process.wait()
    os.close(leader)
    return text.decode().replace("\r\n", "\n")


def terminals():
    plain = run("check", "--quiet", "corpus", status=1)
    coloured = on_terminal("check", "--quiet", "corpus")
    expect("\033[" in coloured, "colours on a terminal")
    expect(re.sub(r"\033\[[0-9;]*m", "", coloured) == plain, "without its colours the text is the same")
    expect(on_terminal("check", "--quiet", "corpus", NO_COLOR="1") == plain, "NO_COLOR")
    expect(on_terminal("check", "--quiet", "--format", "gcc", "corpus") == plain, "no colours for programs")
    result = subprocess.run([COMMAND, "check", "corpus"], cwd=ROOT, capture_output=True, text=True)
    expect("checking:" not in result.stderr, "no line of progress in a file")


def progress(folder):
    """A score that takes longer than half a second, on this machine and with this build."""
    score = folder / "long.ly"
    seconds, bars = 0, 4000
    while seconds < 1.5:
        bars *= 2
        score.write_text("\\score { \\new Staff { " + "c'4 d'8 e'16 f' g'4 a' |\n" * bars + "} }\n")
        began = time.monotonic()
        run("check", "--quiet", str(score))
        seconds = time.monotonic() - began
    told = on_terminal("check", str(score))
    expect("\rchecking: 0 of 1 files" in told and "\r\033[K" in told, f"progress is told and taken away: {told!r}")
    expect(on_terminal("check", "--quiet", str(score)) == "", "--quiet is quiet")


with tempfile.TemporaryDirectory(dir=os.environ.get("SW_TEMP")) as temp:
    folder = pathlib.Path(temp)
    try_examples(folder)
    names = rules()
    manual(folder)
    completion(folder, names)
    progress(folder)
mistyped()
terminals()
if left_out:
    print(f"# not there, so not asked: {', '.join(left_out)}")
sys.exit(1 if failures else 0)

#!/usr/bin/env python3
"""Runs the sessions in tests/golden/*/*.session and compares what the command prints with what they say.

A session is a text file of commands and what must come of them:

    Any line at the left margin is a remark.
    $ stavewright events nothing.ly
    | a line of standard output
    ! a line of standard error
    [2]

The last line is the exit status. Each session runs in a fresh copy of its folder, so commands may change files there.
`tests/golden/test_cli.py --update [SESSION...]` writes what the command prints now into the sessions; read the diff."""
import difflib
import os
import pathlib
import shutil
import subprocess
import sys
import tempfile

ROOT = pathlib.Path(__file__).resolve().parent.parent.parent
COMMAND = pathlib.Path(os.environ.get("SW_COMMAND", ROOT / "build/test/stavewright"))
NO_NEWLINE = "\\ no newline at the end"


def marked(sign, output):
    """Output as it stands in a session."""
    text = output.decode("utf-8", "backslashreplace")
    lines = [f"{sign} {line}" if line else sign for line in text.split("\n")]
    return lines[:-1] if text.endswith("\n") or text == "" else lines + [f"{sign} {NO_NEWLINE}"]


def run(session, folder):
    """The session as it comes out now."""
    environment = dict(os.environ, PATH=f"{folder / '.bin'}:{os.environ['PATH']}", LC_ALL="C.UTF-8",
                       GIT_CEILING_DIRECTORIES=str(folder.parent))  # not the repository around the tests
    lines = []
    for line in session.read_text(encoding="utf-8").splitlines():
        if line.startswith("$ "):
            result = subprocess.run(["sh", "-c", line[2:]], cwd=folder, env=environment, stdin=subprocess.DEVNULL,
                                    capture_output=True, timeout=120)
            lines += [line, *marked("|", result.stdout), *marked("!", result.stderr), f"[{result.returncode}]"]
        elif not line.startswith(("|", "!", "[")):
            lines.append(line)
    return "\n".join(lines) + "\n"


def run_in_copy(session):
    with tempfile.TemporaryDirectory(dir=os.environ.get("SW_TEMP")) as temp:
        folder = pathlib.Path(temp) / "session"
        shutil.copytree(session.parent, folder)
        (folder / ".bin").mkdir()
        (folder / ".bin/stavewright").symlink_to(COMMAND)
        return run(session, folder)


def main(arguments):
    update = arguments[:1] == ["--update"]
    named = [pathlib.Path(a).resolve() for a in arguments[1 if update else 0:]]
    sessions = named or sorted((ROOT / "tests/golden").glob("*/*.session"))
    failed = 0
    for session in sessions:
        wanted = session.read_text(encoding="utf-8")
        found = run_in_copy(session)
        if update:
            session.write_text(found, encoding="utf-8")
        elif found != wanted:
            failed += 1
            name = str(session.relative_to(ROOT))
            sys.stdout.writelines(difflib.unified_diff(wanted.splitlines(True), found.splitlines(True),
                                                       name, "what the command prints"))
    print(f"# {len(sessions) - failed} of {len(sessions)} sessions as expected")
    return 0 if failed == 0 and sessions else 1


sys.exit(main(sys.argv[1:]))

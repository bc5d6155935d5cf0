#!/usr/bin/env python3
"""check --staged, check --since, changed and hook in repositories made for the purpose. What is staged and what lies in the working
tree differ in each of them, so that reading the wrong one shows."""
import os
import pathlib
import subprocess
import sys
import tempfile

ROOT = pathlib.Path(__file__).resolve().parent.parent.parent
COMMAND = pathlib.Path(os.environ.get("SW_COMMAND", ROOT / "build/test/stavewright"))
GOOD = 'oboe = { c\'\'1 d\'\'1 }\n'
LOW = 'oboe = { c\'\'1 c1 }\n'  # the oboe has no C3
SCORE = '\\version "2.24.0"\n\\include "%s"\n\\score { \\new Staff \\with { instrumentName = "Oboe" } \\oboe }\n'
failed = 0


class Film:
    """A repository with two cues: the first one's oboe in parts/oboe.ily, the second one's in other.ily."""

    def __init__(self, folder):
        self.folder = pathlib.Path(folder).resolve() / "film"
        (self.folder / "cue/parts").mkdir(parents=True)
        self.environment = {key: value for key, value in os.environ.items() if not key.startswith("GIT_")}
        self.environment.update(GIT_CONFIG_GLOBAL="/dev/null", GIT_CONFIG_SYSTEM="/dev/null", LC_ALL="C.UTF-8",
                                GIT_CEILING_DIRECTORIES=str(self.folder.parent.resolve()),
                                PATH=f"{self.folder.parent / 'bin'}:{os.environ['PATH']}")
        for role in "AUTHOR", "COMMITTER":
            self.environment.update({f"GIT_{role}_NAME": "Copyist", f"GIT_{role}_EMAIL": "copyist@example.org"})
        (self.folder.parent / "bin").mkdir()
        (self.folder.parent / "bin/stavewright").symlink_to(COMMAND)
        self.write("cue/score.ly", SCORE % "parts/oboe.ily")
        self.write("cue/parts/oboe.ily", GOOD)
        self.write("other.ly", SCORE % "other.ily")
        self.write("other.ily", GOOD)
        self.git("init", "-q")
        self.git("add", ".")
        self.git("commit", "-qm", "first")

    def write(self, path, text):
        (self.folder / path).write_text(text, encoding="utf-8")

    def run(self, *words, below="."):
        return subprocess.run(words, cwd=self.folder / below, env=self.environment, stdin=subprocess.DEVNULL,
                              capture_output=True, text=True, timeout=120, check=False)

    def git(self, *words, below="."):
        result = self.run("git", *words, below=below)
        if result.returncode != 0:
            sys.exit(f"git {' '.join(words)}: {result.stderr}")
        return result.stdout

    def check(self, *words, below="."):
        """Exit status, places with a finding of the range, and the last line."""
        result = self.run("stavewright", "check", "--rules", "range,include", *words, below=below)
        places = [line.split(": ")[0] + " " + line.rsplit(" ", 1)[1] for line in result.stdout.splitlines()]
        return result.returncode, places, result.stderr.strip().rsplit("(", 1)[0].strip()


def expect(what, got, wanted):
    global failed
    if got != wanted:
        failed += 1
        print(f"# {what}: {got!r}, wanted {wanted!r}")


def staged(film):
    nothing = (0, [], "0 files, 0 scores: 0 errors, 0 warnings, 0 notes")
    low = (1, ["cue/parts/oboe.ily:1:15 [range]"], "2 files, 1 score: 1 error, 0 warnings, 0 notes")
    clean = (0, [], "2 files, 1 score: 0 errors, 0 warnings, 0 notes")
    expect("nothing changed", film.check("--staged"), nothing)
    film.write("cue/parts/oboe.ily", LOW)
    expect("not staged yet", film.check("--staged"), nothing)
    expect("working tree since HEAD", film.check("--since", "HEAD"), low)
    film.git("add", ".")
    film.write("cue/parts/oboe.ily", GOOD)
    expect("mended, but not staged", film.check("--staged"), low)
    expect("mended since HEAD", film.check("--since", "HEAD"), nothing)
    expect("the cue is named", film.check("--staged", "cue"), low)
    expect("another cue is named", film.check("--staged", "other.ly"), nothing)
    expect("a mistyped name", film.check("--staged", "othre.ly"),
           (2, [], "stavewright check: othre.ly is neither on the disk nor staged; look for a mistyped name"))
    expect("from a folder below", film.check("--staged", below="cue/parts")[1], ["../parts/oboe.ily:1:15 [range]"])
    (film.folder / "cue/parts/oboe.ily").unlink()
    (film.folder / "cue/parts").rmdir()
    expect("gone from disk, but staged", film.check("--staged"), low)
    film.git("commit", "-qm", "low")
    expect("committed", film.check("--staged"), nothing)
    expect("staged since the commit before", film.check("--staged", "--since", "HEAD~1"), low)
    film.git("checkout", "-q", ".")
    film.write("other.ily", GOOD + "% more\n")
    film.git("add", ".")
    expect("only the other cue", film.check("--staged"), clean)
    film.git("rm", "-q", "--cached", "other.ily")
    expect("an include that is not staged", film.check("--staged"),
           (1, ["other.ly:2:10 [include]"], "1 file, 1 score: 1 error, 0 warnings, 0 notes"))
    film.write(".gitignore", "other.ily\n")
    film.git("add", ".")
    expect("an include that git ignores", film.check("--staged"), clean)
    film.git("reset", "-q", "--hard")
    film.git("mv", "cue/parts/oboe.ily", "cue/parts/oboes.ily")
    expect("an include that was renamed", film.check("--staged")[:2], (1, ["cue/score.ly:2:10 [include]"]))


def changed(film):
    def rows(*words, below="."):
        """Exit status and rows, or the sentence that says what is wrong."""
        result = film.run("stavewright", "changed", "--format", "tsv", *words, below=below)
        return result.returncode, (result.stdout or result.stderr).splitlines()

    def whole(path, state):
        return f"{path}\t\t\t\t\t{state}"

    bar = "cue/score.ly\t1\tOboe\t2\t2\tnotes"
    gone = whole("other.ly", "gone")
    expect("nothing has changed", rows(), (0, []))
    film.write("cue/parts/oboe.ily", LOW)
    expect("the working tree", rows(), (1, [bar]))
    expect("from a folder below", rows(".", below="cue"), (1, [bar.replace("cue/", "")]))
    expect("a part alone", (rows("cue/parts/oboe.ily")[0], rows("other.ly")), (2, (0, [])))
    film.git("commit", "-qam", "low")
    (film.folder / "other.ly").unlink()
    expect("a cue that has gone", rows(), (1, [gone]))
    expect("a cue that has gone is named", rows("other.ly"), (1, [gone]))
    expect("more than the last commit", rows("HEAD~1", "."), (1, [bar, gone]))
    (film.folder / "new").mkdir()
    film.git("mv", "other.ily", "new/other.ily")
    film.write("new/new.ly", SCORE % "other.ily")
    expect("moved with what it includes", rows(), (1, [whole("new/new.ly", "new"), gone]))
    film.git("add", ".")
    film.git("commit", "-qm", "moved")
    film.git("rm", "-q", "-r", ".")
    expect("two revisions, whatever lies on the disk", rows("HEAD~2", "HEAD"), (1, [bar, whole("new/new.ly", "new"), gone]))
    expect("the other way", rows("HEAD", "HEAD~2"), (1, [bar, whole("new/new.ly", "gone"), whole("other.ly", "new")]))
    expect("one cue of two revisions", rows("HEAD~2", "HEAD", "other.ly"), (1, [gone]))
    expect("a folder that is no longer there", rows("HEAD", "new"),
           (1, [whole("new/new.ly", "gone")]))
    film.git("branch", "cue")
    film.git("reset", "-q", "--hard")
    expect("a folder and a branch of one name", (rows("cue", "--")[0], rows("cue")[0], rows("cue", "--", "cue")[0],
                                                 rows("HEAD~2", "--", "cue")), (0, 0, 0, (1, [bar])))
    expect("a range as git writes it", rows("HEAD~1..HEAD"),
           (2, ['stavewright changed: two revisions are two words: "HEAD~1 HEAD" in the place of "HEAD~1..HEAD"']))
    expect("neither nor", rows("HEAD", "cua"),
           (2, ['stavewright changed: "cua" is neither a file or folder nor a revision that git knows']))
    film.write("stavewright.yaml", "no-such-key: 1\n")
    film.git("add", ".")
    film.git("commit", "-qm", "a mistake")
    film.write("stavewright.yaml", "film: mended\n")
    result = film.run("stavewright", "changed")
    expect("a mistake in the film's old file", (result.returncode, "no-such-key" in result.stderr,
                                                'in the revision "HEAD"' in result.stderr), (2, True, True))
    film.write("other.ly", b"\xff\xfe\x00".decode("latin-1") * 100)
    expect("a cue that can't be read now", (rows("HEAD~3", ".")[0], "other.ly" in rows("HEAD~3", ".")[1][0]), (2, True))


def submodule(film):
    """A family's library of its own, which the film names by a commit."""
    library = film.folder / "library"
    # libgit2 1.5 loses what it matches the settings of submodules with
    (film.folder.parent / "known-leaks").write_text("leak:libpcre2\n", encoding="utf-8")
    film.environment["LSAN_OPTIONS"] = f"suppressions={film.folder.parent / 'known-leaks'}:print_suppressions=0"
    film.git("init", "-q", "../origin")
    (film.folder.parent / "origin/oboe.ily").write_text(GOOD, encoding="utf-8")
    film.git("add", ".", below="../origin")
    film.git("commit", "-qm", "library", below="../origin")
    film.git("-c", "protocol.file.allow=always", "submodule", "add", "-q", "../origin", "library")
    film.write("cue/score.ly", SCORE % "../library/oboe.ily")
    film.git("add", ".")
    film.git("commit", "-qm", "with a library")
    same = film.run("stavewright", "changed", "--format", "tsv")
    expect("nothing has changed", (same.returncode, same.stdout, same.stderr), (0, "", ""))
    (library / "oboe.ily").write_text(LOW, encoding="utf-8")
    film.git("commit", "-qam", "low", below="library")
    film.git("add", ".")
    expect("another commit of it is staged", film.check("--staged"),
           (1, ["library/oboe.ily:1:15 [range]"], "2 files, 1 score: 1 error, 0 warnings, 0 notes"))
    film.git("commit", "-qm", "low")
    bar = "cue/score.ly\t1\tOboe\t2\t2\tnotes\n"
    expect("two commits of it", film.run("stavewright", "changed", "--format", "tsv", "HEAD~1", "HEAD").stdout, bar)
    (library / "oboe.ily").write_text(GOOD, encoding="utf-8")
    expect("the disk", film.run("stavewright", "changed", "--format", "tsv").stdout, bar)


def textconv(film):
    def diff(*words):
        """What git shows of the music, without its first lines."""
        lines = film.git("diff", "-U0", *words).splitlines()
        return [line for line in lines if not line.startswith(("diff ", "index ", "--- ", "+++ "))]

    film.write(".gitattributes", "*.ly diff=music\n*.ily diff=music\n")
    film.git("config", "diff.music.textconv", "stavewright music")
    film.git("config", "diff.music.xfuncname", "^bar .*")
    film.git("add", ".")
    film.git("commit", "-qm", "attributes")
    film.write("cue/parts/oboe.ily", GOOD.replace("d''1", "<>\\p | r2 % a remark\n ees''2-. |"))
    expect("a part", diff(), ["@@ -2 +2 @@", "-oboe: d''1", "+oboe: <>\\p r2 eb''2\\staccato"])
    film.git("commit", "-qam", "a part")
    film.write("cue/parts/oboe.ily", "oboe = \\relative { c''1 | r2\\p   es2\\staccato | }\n")
    expect("a mark that hangs on the rest now", diff(), ["@@ -2 +2 @@", "-oboe: <>\\p r2 eb''2\\staccato",
                                                         "+oboe: r2\\p eb''2\\staccato"])
    film.git("commit", "-qam", "written otherwise")
    film.write("cue/parts/oboe.ily", "oboe = \\fixed c'' { c1 | <>\\p r2 es2-. }\n")
    film.git("commit", "-qam", "written as it was")
    expect("what only looks otherwise", diff("HEAD~2"), [])
    film.write("other.ly", SCORE.replace("\\oboe }", "{ c''1 d'' \\mark \\default e'' } }") % "no-such.ily")
    film.git("commit", "-qam", "a score")
    film.write("other.ly", SCORE.replace("\\oboe }", "{ c''1 d'' \\mark \\default e''2 f'' } }") % "no-such.ily")
    expect("a score, with its bar in front", diff(),
           ["@@ -9 +9 @@ bar 3", "-  Oboe: e''1", "+  Oboe: e''2 f''2"])
    (film.folder / "other.ly").unlink()
    film.write("new.ly", "nothing but words that nobody knows, for a diff of others must not fail for it\n" * 9)
    film.git("add", "-N", "new.ly")
    shown = diff()
    expect("a file that has gone, and one that is no source",
           ("-  Oboe: d''1" in shown, any(line.startswith("+no music: ") for line in shown)), (True, True))


def bad_use(film):
    expect("an unknown revision", film.check("--since", "no-such")[0], 2)
    expect("standard input", film.check("--staged", "-")[0], 2)
    result = film.run("stavewright", "check", "--staged", below="../bin")
    expect("no repository", (result.returncode, "no git repository" in result.stderr), (2, True))
    film.git("init", "-q", "../new")
    (film.folder.parent / "new/low.ly").write_text(LOW + SCORE % "x" + "\n", encoding="utf-8")
    film.git("add", ".", below="../new")
    expect("before the first commit", film.check("--staged", below="../new")[0], 1)


def hook(film):
    def commit(message, below="."):
        film.run("git", "add", ".", below=below)
        return film.run("git", "commit", "-qm", message, below=below).returncode

    path = film.folder / ".git/hooks/pre-commit"
    expect("install", film.run("stavewright", "hook", "install", below="cue").returncode, 0)
    expect("install twice", film.run("stavewright", "hook", "install").returncode, 0)
    expect("executable", path.stat().st_mode & 0o111, 0o111)
    film.write("cue/parts/oboe.ily", LOW)
    expect("a commit with an error", commit("low"), 1)
    film.write("cue/parts/oboe.ily", GOOD)
    film.write("other.ily", GOOD + "%\n")
    expect("a clean commit", commit("clean"), 0)
    # git gives the hook an index of its own when it commits only some files
    film.write("cue/parts/oboe.ily", LOW)
    film.write("other.ily", GOOD + "% again\n")
    expect("a part that is clean", film.run("git", "commit", "-qm", "part", "other.ily").returncode, 0)
    expect("a part that is not", film.run("git", "commit", "-qm", "part", "cue").returncode, 1)
    film.git("checkout", "-q", ".")
    film.git("worktree", "add", "-q", "../tree")
    (film.folder.parent / "tree/cue/parts/oboe.ily").write_text(LOW, encoding="utf-8")
    expect("a worktree's commit", commit("low", "../tree"), 1)
    expect("the hook of a worktree is there", "already" in film.run("stavewright", "hook", "install",
                                                                    below="../tree").stdout, True)
    expect("remove", (film.run("stavewright", "hook", "remove").returncode, path.exists()), (0, False))
    film.run("stavewright", "hook", "install")
    ours = path.read_text()
    path.write_text(ours.replace("#!/bin/sh\n", "#!/bin/sh\nmake parts || exit 1\n"), encoding="utf-8")
    result = film.run("stavewright", "hook", "remove")
    expect("an edited hook keeps what was added", (result.returncode, path.read_text(), path.stat().st_mode & 0o111),
           (0, "#!/bin/sh\nmake parts || exit 1\n", 0o111))
    path.chmod(0o644)
    path.write_text(ours, encoding="utf-8")
    expect("a hook that git would pass over", (film.run("stavewright", "hook", "install").returncode,
                                               path.stat().st_mode & 0o111), (0, 0o111))
    path.write_text("#!/bin/sh\nstavewright check --staged || exit 1\nmake parts\n", encoding="utf-8")
    result = film.run("stavewright", "hook", "install")
    expect("the line that was asked for is there", (result.returncode, "already" in result.stdout), (0, True))
    result = film.run("stavewright", "hook", "remove")
    expect("and is taken out", (result.returncode, path.read_text()), (0, "#!/bin/sh\nmake parts\n"))
    path.write_text(ours + "\n# nothing more\n", encoding="utf-8")
    expect("an edited hook that does nothing else", (film.run("stavewright", "hook", "remove").returncode, path.exists()),
           (0, False))
    path.write_text(ours + "make parts\n", encoding="utf-8")
    result = film.run("stavewright", "hook", "remove")
    expect("what would begin to run", (result.returncode, "pre-commit:4: " in result.stderr, path.read_text()),
           (2, True, ours + "make parts\n"))
    path.write_text("#!/bin/sh\nexit 0\n", encoding="utf-8")
    result = film.run("stavewright", "hook", "install")
    expect("another hook stays", (result.returncode, "check --staged" in result.stderr, path.read_text()),
           (2, True, "#!/bin/sh\nexit 0\n"))
    expect("and is not removed", (film.run("stavewright", "hook", "remove").returncode, path.exists()), (2, True))
    film.git("config", "core.hooksPath", "tools/hooks")
    expect("core.hooksPath", (film.run("stavewright", "hook", "install", below="cue").returncode,
                              (film.folder / "tools/hooks/pre-commit").exists()), (0, True))
    expect("bad word", film.run("stavewright", "hook", "instal").returncode, 2)


for test in staged, changed, submodule, textconv, bad_use, hook:
    with tempfile.TemporaryDirectory(dir=os.environ.get("SW_TEMP")) as temp:
        test(Film(temp))
print(f"# {failed} differ")
sys.exit(1 if failed else 0)

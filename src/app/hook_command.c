/* stavewright hook: the check before each commit, as git's pre-commit hook. */
#include <errno.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

#include "app/commands.h"
#include "app/words.h"
#include "stavewright/git.h"
#include "stavewright/source.h"

/* A file with exactly these bytes is ours, and may be removed; of others these lines. */
static const char hook_text[] = "#!/bin/sh\n"
                                "# From `stavewright hook install`; `stavewright hook remove` takes it out.\n"
                                "# `git commit --no-verify` commits without it.\n"
                                "exec stavewright check --staged\n";
/* What is to be added to another hook. */
static const char hook_line[] = "stavewright check --staged || exit 1";

static int say_failed(const char *what, const char *path)
{
    return sw_say_bad("hook", "%s can't be %s: %s", path, what, strerror(errno));
}

/* Another hook is never changed: what is to be added to it is told. */
static int say_other(const char *path, bool install)
{
    return install
               ? sw_say_bad("hook",
                            "%s is there and is not from stavewright, so it stays as it is; add this line to "
                            "it yourself: %s",
                            path, hook_line)
               : sw_say_bad("hook",
                            "%s has no line that hook install has written or asked for, so it stays as it "
                            "is; what else runs "
                            "stavewright in it is yours to take out",
                            path);
}

/* Makes the folder and those above it that are missing. */
static bool make_folders(const char *path)
{
    sw_buffer folder = {0};
    bool good = true;
    for (size_t length = 1; good && length <= strlen(path); length++) {
        if (path[length] == '/' || path[length] == '\0') {
            sw_buffer_clear(&folder);
            sw_buffer_append(&folder, (sw_slice){path, length});
            good = mkdir(sw_buffer_text(&folder), 0777) == 0 || errno == EEXIST;
        }
    }
    sw_buffer_free(&folder);
    return good;
}

/* ---- taking it out of a hook that somebody has changed ----------------------------------------------------
 */

static bool is_ours(sw_slice line)
{
    bool ours = sw_slice_is(line, hook_line);
    for (const char *at = strchr(hook_text, '\n') + 1; *at != '\0' && !ours;) { /* behind #!/bin/sh */
        size_t length = strcspn(at, "\n");
        ours = sw_slice_equal(line, (sw_slice){at, length});
        at += length + 1;
    }
    return ours;
}

static bool is_idle(sw_slice line)
{
    sw_slice words = sw_slice_trim(line);
    return words.length == 0 || words.data[0] == '#';
}

/* What is in a hook of which some lines are ours. */
typedef struct mixed {
    sw_buffer rest; /* the others */
    bool checks;    /* one of ours runs the check */
    bool runs;      /* one of the others does something */
    uint32_t end;   /* the number of the line that ends the hook, as exec does; 0: there is none */
} mixed;

static mixed take_apart(const sw_text *text)
{
    mixed found = {0};
    for (uint32_t n = 1; n <= text->line_count; n++) {
        sw_slice line = sw_text_line_slice(text, n);
        if (is_ours(line)) {
            found.checks = found.checks || !is_idle(line);
            found.end = is_idle(line) || sw_slice_is(line, hook_line) ? found.end : n;
        } else {
            found.runs = found.runs || !is_idle(line);
            sw_buffer_append(&found.rest, line);
            sw_buffer_string(&found.rest, n < text->line_count ? "\n" : "");
        }
    }
    return found;
}

static bool runs_behind(const sw_text *text, uint32_t line)
{
    for (uint32_t n = line + 1; n <= text->line_count; n++) {
        if (!is_idle(sw_text_line_slice(text, n))) {
            return true;
        }
    }
    return false;
}

/* Takes our lines out; the others stay, byte by byte. */
static int remove_lines(const char *path, const sw_text *text, const mixed *hook)
{
    char *error = NULL;
    int result = SW_EXIT_CLEAN;
    if (!hook->checks) {
        result = say_other(path, false);
    } else if (hook->end != 0 && runs_behind(text, hook->end)) {
        result =
            sw_say_bad("hook",
                       "%s:%u: what stands behind this line has never run and would run without it, so the "
                       "hook stays as it is; take out the line or what is behind it yourself",
                       path, (unsigned)hook->end);
    } else if (hook->runs) {
        sw_write file = {.before = text, .after = sw_buffer_slice(&hook->rest)};
        if (!sw_write_all(&file, 1, &error)) {
            result = sw_say_bad("hook", "%s", error);
            free(error);
        } else {
            printf("%s: the lines of stavewright are taken out, the others stay\n", path);
        }
    } else if (remove(path) != 0) {
        result = say_failed("removed", path);
    } else {
        printf("%s: removed\n", path);
    }
    return result;
}

/* A hook that is not ours alone; `text` NULL: it is no file. */
static int run_on_other(const char *path, const sw_text *text, bool install)
{
    mixed hook = text == NULL ? (mixed){0} : take_apart(text);
    int result = SW_EXIT_CLEAN;
    if (install && hook.checks) {
        printf("%s: is there already, in a hook of yours\n", path);
    } else {
        result = install || text == NULL ? say_other(path, install) : remove_lines(path, text, &hook);
    }
    sw_buffer_free(&hook.rest);
    return result;
}

/* ---- install and remove -----------------------------------------------------------------------------------
 */

/* git passes over a hook that is not. */
static int make_executable(const char *path)
{
    return chmod(path, 0755) == 0 ? SW_EXIT_CLEAN : say_failed("made executable", path);
}

static int write_hook(const char *folder, const char *path)
{
    if (!make_folders(folder)) {
        return say_failed("made", folder);
    }
    char *error = NULL;
    sw_text *before = sw_text_new(path);
    sw_write hook = {.before = before, .after = {hook_text, sizeof hook_text - 1}};
    bool written = sw_write_all(&hook, 1, &error);
    sw_text_free(before);
    if (!written) {
        sw_say_bad("hook", "%s", error);
        free(error);
        return SW_EXIT_BAD;
    }
    return make_executable(path);
}

static int run(const char *folder, bool install)
{
    sw_buffer name = {0};
    sw_buffer_format(&name, "%s/pre-commit", folder);
    char *path = sw_path_from_here(name.data);
    struct stat status;
    bool there = lstat(path, &status) == 0;
    char *error = NULL;
    sw_text *text = there && S_ISREG(status.st_mode) ? sw_text_read(path, &error) : NULL;
    bool ours = text != NULL && sw_slice_is((sw_slice){text->bytes, text->length}, hook_text);
    free(error);
    int result = SW_EXIT_CLEAN;
    if (there && !ours) {
        result = run_on_other(path, text, install);
        sw_text_free(text);
        free(path);
        return result;
    } else if (install) {
        result = there ? make_executable(path) : write_hook(folder, path);
    } else if (there) {
        result = remove(path) == 0 ? SW_EXIT_CLEAN : say_failed("removed", path);
    }
    if (result == SW_EXIT_CLEAN) {
        printf("%s: %s\n", path,
               install ? there ? "is there already" : "each commit is checked from now on"
               : there ? "removed"
                       : "there is no such hook");
    }
    sw_text_free(text);
    free(path);
    return result;
}

int sw_command_hook(int count, char **arguments)
{
    sw_words words = {.command = "hook", .items = arguments, .count = count};
    const char *verb = NULL;
    for (sw_word word = sw_words_next(&words); word != SW_WORD_END; word = sw_words_next(&words)) {
        if (word == SW_WORD_BAD) {
            return SW_EXIT_BAD;
        }
        if (verb != NULL) {
            return sw_say_bad("hook", "\"%s\" is one word too many", words.value);
        }
        verb = words.value;
    }
    bool install = verb != NULL && strcmp(verb, "install") == 0;
    if (!install && (verb == NULL || strcmp(verb, "remove") != 0)) {
        return sw_say_bad("hook", "say install or remove");
    }
    char *error = NULL;
    sw_git *git = sw_git_open(&error);
    if (git == NULL) {
        sw_say_bad("hook", "%s", error);
        free(error);
        return SW_EXIT_BAD;
    }
    int result = run(sw_git_hooks(git), install);
    sw_git_free(git);
    return result;
}

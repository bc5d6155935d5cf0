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

/* A file with exactly these bytes is ours, and may be removed. */
static const char hook_text[] = "#!/bin/sh\n"
                                "# From `stavewright hook install`; `stavewright hook remove` takes it out.\n"
                                "# `git commit --no-verify` commits without it.\n"
                                "exec stavewright check --staged\n";

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
                            "it yourself: stavewright check --staged || exit 1",
                            path)
               : sw_say_bad(
                     "hook",
                     "%s is not what stavewright has written, so it stays as it is; take the line with "
                     "stavewright out of it yourself",
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
    return chmod(path, 0755) == 0 ? SW_EXIT_CLEAN : say_failed("made executable", path);
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
    sw_text_free(text);
    free(error);
    int result = SW_EXIT_CLEAN;
    if (there && !ours) {
        result = say_other(path, install);
    } else if (install) {
        result = there ? SW_EXIT_CLEAN : write_hook(folder, path);
    } else if (there) {
        result = remove(path) == 0 ? SW_EXIT_CLEAN : say_failed("removed", path);
    }
    if (result == SW_EXIT_CLEAN) {
        printf("%s: %s\n", path,
               install ? there ? "is there already" : "each commit is checked from now on"
               : there ? "removed"
                       : "there is no such hook");
    }
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

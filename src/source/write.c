#include <errno.h>
#include <fcntl.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

#include "source/journal.h"
#include "source/recover.h"
#include "source/target.h"

enum { WRITER_ATTEMPTS = 1000 }; /* with a pause each: ten seconds */

/* All that belongs to one call. */
typedef struct work {
    sw_target *targets;
    size_t count;
    sw_journal journal;
    sw_held_signals signals;
} work;

static uint64_t digest_of(const sw_text *text)
{
    return sw_digest(SW_DIGEST_START, (sw_slice){text->bytes, text->length});
}

/* True when the target still holds the bytes that were read. A new file is checked when it is placed. */
static bool check_unchanged(const sw_target *t, char **error)
{
    const sw_text *before = t->write->before;
    if (!before->exists) {
        return true;
    }
    int fd = sw_system_calls()->open(t->path, O_RDONLY | O_NOFOLLOW | O_NONBLOCK | O_CLOEXEC, 0);
    sw_fingerprint found;
    struct stat opened;
    struct stat now;
    bool good = fd >= 0 && fstat(fd, &opened) == 0 && sw_fingerprint_read(fd, &found);
    int reason = errno;
    if (fd >= 0) {
        sw_system_close(fd);
    }
    if (!good) {
        errno = reason;
        return sw_target_fail(t, "cannot be read again", error);
    }
    if (lstat(t->path, &now) != 0) {
        return sw_target_fail(t, "cannot be found again", error);
    }
    bool same_file = now.st_dev == opened.st_dev && now.st_ino == opened.st_ino;
    if (!same_file || found.length != before->length || found.digest != digest_of(before)) {
        return sw_source_fail(error, "%s: was changed by somebody else meanwhile", before->path);
    }
    return true;
}

static bool move_fresh(sw_target *t, const char *failure, char **error)
{
    if (sw_system_calls()->rename(t->fresh, t->path) != 0) {
        return sw_target_fail(t, failure, error);
    }
    t->replaced = true;
    free(t->fresh);
    t->fresh = NULL;
    return true;
}

/* Puts a new file in place, never over one that has appeared meanwhile. */
static bool place_new(sw_target *t, char **error)
{
    if (sw_system_calls()->link(t->fresh, t->path) == 0) {
        t->replaced = true;
        (void)sw_system_calls()->unlink(t->fresh); /* one that stays goes with the others at the end */
        return true;
    }
    struct stat status;
    if (errno == EEXIST || lstat(t->path, &status) == 0) {
        return sw_source_fail(error, "%s: exists already", t->write->before->path);
    }
    return move_fresh(t, "cannot be created", error); /* a file system without hard links */
}

static bool replace(sw_target *t, char **error)
{
    return t->write->before->exists ? move_fresh(t, "cannot be replaced", error) : place_new(t, error);
}

/* The target that a message about a folder names. */
static const sw_target *target_in(const work *w, size_t folder)
{
    size_t i = 0;
    while (w->journal.files[i].folder != folder) {
        i++;
    }
    return &w->targets[i];
}

static bool sync_folders(const work *w, char **error)
{
    size_t folder;
    return sw_journal_sync_folders(&w->journal, &folder)
               ? true
               : sw_target_fail(target_in(w, folder), "the folder cannot be synced", error);
}

/* ---- the journal ---- */

static void describe(work *w)
{
    w->journal = sw_journal_new();
    for (size_t i = 0; i < w->count; i++) {
        const sw_text *before = w->targets[i].write->before;
        sw_slice after = w->targets[i].write->after;
        sw_journal_add(&w->journal, w->targets[i].path,
                       (sw_fingerprint){before->exists, before->length, digest_of(before)},
                       (sw_fingerprint){true, after.length, sw_digest(SW_DIGEST_START, after)});
    }
}

/* Creates the copy in a folder; first settles what was interrupted there, and waits for a running change. */
static bool acquire(work *w, size_t folder, char **error)
{
    const sw_target *t = target_in(w, folder);
    const char *path = w->journal.folders[folder].path;
    for (int n = 0; n < WRITER_ATTEMPTS; n++) {
        sw_take took = sw_journal_create(path, &w->journal.folders[folder].fd);
        if (took == SW_TAKE_HELD) {
            return true;
        }
        if (took == SW_TAKE_FAILED) {
            return sw_target_fail(t, "the journal of the change cannot be created beside it", error);
        }
        char *sentence = NULL;
        sw_recovery recovered = sw_recover_folder(path, &sentence);
        if (recovered == SW_RECOVERY_STUCK) {
            sw_source_fail(error, "%s: cannot be written while this is unsettled: %s", t->write->before->path,
                           sentence);
            free(sentence);
            return false;
        }
        if (recovered == SW_RECOVERY_DONE) {
            /* What was read, also of files that this change does not touch, may have been a mix. */
            sw_source_fail(error, "%s: not written, try again: %s", t->write->before->path, sentence);
            free(sentence);
            return false;
        }
        if (sw_signals_pending(&w->signals)) {
            return sw_source_fail(error, "interrupted; nothing was written");
        }
        sw_recover_pause();
    }
    return sw_source_fail(error,
                          "%s: another stavewright is writing in its folder; try again when it is done",
                          t->write->before->path);
}

/* Writes to each copy: its list, or, when there is a line, the line. */
static bool write_copies(const work *w, const char *line, char **error)
{
    for (size_t i = 0; i < w->journal.folder_count; i++) {
        sw_buffer text = {0};
        if (line == NULL) {
            sw_journal_print(&w->journal, i, &text);
        } else {
            sw_buffer_string(&text, line);
        }
        int fd = w->journal.folders[i].fd;
        bool good = sw_system_write_all(fd, sw_buffer_slice(&text)) && sw_system_sync(fd);
        int reason = errno;
        sw_buffer_free(&text);
        errno = reason;
        if (!good) {
            return sw_target_fail(target_in(w, i), "the journal of the change cannot be written beside it",
                                  error);
        }
    }
    return true;
}

/* ---- all files ---- */

/* Puts the originals back. False when one cannot be: that is added to *error. */
static bool put_back(sw_target *targets, size_t count, char **error)
{
    const sw_system *system = sw_system_calls();
    bool good = true;
    for (size_t i = 0; i < count; i++) {
        sw_target *t = &targets[i];
        if (!t->replaced) {
            continue;
        }
        bool existed = t->write->before->exists;
        if ((existed ? system->rename(t->kept, t->path) : system->unlink(t->path)) != 0) {
            char *sentence = *error;
            if (existed) {
                *error = sw_source_format("%s; %s cannot be put back: %s; its original is kept as %s",
                                          sentence, t->write->before->path, strerror(errno), t->kept);
            } else {
                *error = sw_source_format("%s; %s was created and cannot be removed: %s", sentence,
                                          t->write->before->path, strerror(errno));
            }
            free(sentence);
            good = false;
        }
    }
    return good;
}

static bool write_targets(work *w, char **error)
{
    if (!sw_targets_find(w->targets, w->count, error)) {
        return false;
    }
    describe(w);
    for (size_t i = 0; i < w->journal.folder_count; i++) {
        if (!acquire(w, i, error)) {
            return false;
        }
    }
    for (size_t i = 0; i < w->count; i++) {
        if (!sw_target_inspect(&w->targets[i], error)) {
            return false;
        }
    }
    if (!write_copies(w, NULL, error) || !sync_folders(w, error)) {
        return false;
    }
    for (size_t i = 0; i < w->count; i++) {
        if (!sw_target_prepare(&w->targets[i], sw_journal_temporary(&w->journal, i, "new"),
                               sw_journal_temporary(&w->journal, i, "old"), error)) {
            return false;
        }
    }
    if (!sync_folders(w, error)) {
        return false;
    }
    for (size_t i = 0; i < w->count; i++) {
        if (!check_unchanged(&w->targets[i], error)) {
            return false;
        }
    }
    if (!write_copies(w, "ready\n", error)) {
        return false;
    }
    if (sw_signals_pending(&w->signals)) {
        return sw_source_fail(error, "interrupted; nothing was written");
    }
    for (size_t i = 0; i < w->count; i++) {
        /* Once more, so that nobody's change is lost that came while the other files were dealt with. */
        if (!check_unchanged(&w->targets[i], error) || !replace(&w->targets[i], error)) {
            return false;
        }
    }
    return sync_folders(w, error);
}

/* What has failed is put back. What cannot be stays in the journal, and the next command tries again. */
static void undo(work *w, char **error)
{
    if (!put_back(w->targets, w->count, error)) {
        return;
    }
    size_t folder;
    (void)sw_journal_sync_folders(&w->journal, &folder); /* nothing more can be done when this fails, too */
    (void)sw_journal_clear(&w->journal);
}

static bool changes(const sw_write *write)
{
    const sw_text *before = write->before;
    return !before->exists || !sw_slice_equal(write->after, (sw_slice){before->bytes, before->length});
}

bool sw_write_all(const sw_write *writes, size_t count, char **error)
{
    work w = {.targets = sw_alloc_zero(count + 1, sizeof *w.targets)}; /* one more: none is no special case */
    for (size_t i = 0; i < count; i++) {
        if (changes(&writes[i])) {
            w.targets[w.count++].write = &writes[i];
        }
    }
    w.signals = sw_signals_hold();
    bool good = write_targets(&w, error);
    if (good) {
        (void)sw_journal_clear(&w.journal); /* what stays is cleared by the next command */
    } else {
        undo(&w, error);
    }
    sw_journal_close(&w.journal);
    for (size_t i = 0; i < w.count; i++) {
        sw_target_close(&w.targets[i]);
    }
    free(w.targets);
    sw_signals_release(&w.signals);
    return good;
}

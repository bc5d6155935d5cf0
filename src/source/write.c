#include <errno.h>
#include <fcntl.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

#include "source/target.h"

static bool digest_file(int fd, uint64_t *digest, uint64_t *length)
{
    char block[16384];
    long got;
    *digest = SW_DIGEST_START;
    *length = 0;
    while ((got = sw_system_read(fd, block, sizeof block)) > 0) {
        *digest = sw_digest(*digest, (sw_slice){block, (size_t)got});
        *length += (uint64_t)got;
    }
    return got == 0;
}

/* True when the target still holds the bytes that were read. A new file is checked when it is placed. */
static bool check_unchanged(const sw_target *t, char **error)
{
    const sw_text *before = t->write->before;
    if (!before->exists) {
        return true;
    }
    int fd = sw_system_calls()->open(t->path, O_RDONLY | O_NOFOLLOW | O_NONBLOCK | O_CLOEXEC, 0);
    uint64_t digest = 0;
    uint64_t length = 0;
    struct stat opened;
    struct stat now;
    bool good = fd >= 0 && fstat(fd, &opened) == 0 && digest_file(fd, &digest, &length);
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
    if (!same_file || length != before->length || digest != before->digest) {
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
        t->replaced = true; /* the temporary name goes with the others at the end */
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

/* Makes the renames in a folder durable, as far as the folder allows it: one that may not be read cannot be
 * opened, and some file systems do not sync folders. */
static bool sync_folder(const sw_target *t, char **error)
{
    int fd = sw_system_calls()->open(t->folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC, 0);
    if (fd < 0) {
        return errno == EACCES ? true : sw_target_fail(t, "the folder cannot be opened", error);
    }
    bool good = sw_system_sync(fd) || errno == EINVAL || errno == ENOTSUP;
    int reason = errno;
    sw_system_close(fd);
    errno = reason;
    return good ? true : sw_target_fail(t, "the folder cannot be synced", error);
}

static bool sync_folders(const sw_target *targets, size_t count, char **error)
{
    for (size_t i = 0; i < count; i++) {
        bool synced = i > 0 && strcmp(targets[i - 1].folder, targets[i].folder) == 0;
        if (!synced && !sync_folder(&targets[i], error)) {
            return false;
        }
    }
    return true;
}

/* Puts the originals back. What cannot be put back is added to *error, and its original stays. */
static void put_back(sw_target *targets, size_t count, char **error)
{
    const sw_system *system = sw_system_calls();
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
        }
        free(t->kept); /* renamed, or to stay */
        t->kept = NULL;
    }
}

static bool write_targets(sw_target *targets, size_t count, const sw_held_signals *signals, char **error)
{
    if (!sw_targets_find(targets, count, error)) {
        return false;
    }
    for (size_t i = 0; i < count; i++) {
        if (!sw_target_prepare(&targets[i], error)) {
            return false;
        }
    }
    for (size_t i = 0; i < count; i++) {
        if (!check_unchanged(&targets[i], error)) {
            return false;
        }
    }
    if (sw_signals_pending(signals)) {
        return sw_source_fail(error, "interrupted; nothing was written");
    }
    for (size_t i = 0; i < count; i++) {
        /* Once more, so that nobody's change is lost that came while the other files were dealt with. */
        if (!check_unchanged(&targets[i], error) || !replace(&targets[i], error)) {
            return false;
        }
    }
    return sync_folders(targets, count, error);
}

static bool changes(const sw_write *write)
{
    const sw_text *before = write->before;
    return !before->exists || !sw_slice_equal(write->after, (sw_slice){before->bytes, before->length});
}

bool sw_write_all(const sw_write *writes, size_t count, char **error)
{
    sw_target *targets = sw_alloc_zero(count + 1, sizeof *targets); /* one more: none is no special case */
    size_t used = 0;
    for (size_t i = 0; i < count; i++) {
        if (changes(&writes[i])) {
            targets[used++].write = &writes[i];
        }
    }
    sw_held_signals signals = sw_signals_hold();
    bool good = write_targets(targets, used, &signals, error);
    if (!good) {
        put_back(targets, used, error);
    }
    for (size_t i = 0; i < used; i++) {
        sw_target_close(&targets[i]);
    }
    free(targets);
    sw_signals_release(&signals);
    return good;
}

#include <errno.h>
#include <fcntl.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "source/target.h"

bool sw_target_fail(const sw_target *t, const char *what, char **error)
{
    return sw_source_fail(error, "%s: %s: %s", t->write->before->path, what, strerror(errno));
}

static bool find_existing(sw_target *t, char **error)
{
    t->path = realpath(t->write->before->path, NULL);
    return t->path != NULL ? true : sw_target_fail(t, "cannot be found again", error);
}

static bool find_new(sw_target *t, char **error)
{
    const char *name = t->write->before->path;
    char *folder = sw_folder_of(name);
    char *real = realpath(folder, NULL);
    free(folder);
    if (real == NULL) {
        return sw_target_fail(t, "the folder cannot be found", error);
    }
    t->path = sw_source_format("%s/%s", real, sw_base_name(name));
    free(real);
    return true;
}

static bool inspect_existing(sw_target *t, char **error)
{
    const char *name = t->write->before->path;
    struct stat status;
    if (lstat(t->path, &status) != 0) {
        return sw_target_fail(t, "cannot be found again", error);
    }
    if (!S_ISREG(status.st_mode)) {
        return sw_source_fail(error, "%s: is no regular file", name);
    }
    if (status.st_nlink > 1) {
        return sw_source_fail(error, "%s: the file has other names (hard links), and writing would part them",
                              name);
    }
    /* The folder's permissions would be enough for a rename, but a file set to read-only is meant to stay. */
    if (faccessat(AT_FDCWD, t->path, W_OK, AT_EACCESS) != 0) {
        return sw_target_fail(t, "may not be written", error);
    }
    t->mode = status.st_mode & 07777;
    t->owner = status.st_uid;
    t->group = status.st_gid;
    return true;
}

static bool inspect_new(sw_target *t, char **error)
{
    struct stat status;
    if (lstat(t->path, &status) == 0) {
        return sw_source_fail(error, "%s: exists already", t->write->before->path);
    }
    return errno == ENOENT ? true : sw_target_fail(t, "cannot be created", error);
}

bool sw_target_inspect(sw_target *t, char **error)
{
    return t->write->before->exists ? inspect_existing(t, error) : inspect_new(t, error);
}

bool sw_targets_find(sw_target *targets, size_t count, char **error)
{
    for (size_t i = 0; i < count; i++) {
        sw_target *t = &targets[i];
        if (strcmp(t->write->before->path, "-") == 0) {
            return sw_source_fail(error, "standard input cannot be written to");
        }
        if (!(t->write->before->exists ? find_existing(t, error) : find_new(t, error))) {
            return false;
        }
        for (size_t k = 0; k < i; k++) {
            if (strcmp(targets[k].path, t->path) == 0) {
                return sw_source_fail(error, "%s: the same file as %s", t->write->before->path,
                                      targets[k].write->before->path);
            }
        }
    }
    return true;
}

/* ---- temporary files ---- */

/* Gives the open file the owner and permissions of the target. */
static bool copy_permissions(const sw_target *t, int fd)
{
    struct stat status;
    if (fstat(fd, &status) != 0) {
        return false;
    }
    bool given = status.st_uid == t->owner && status.st_gid == t->group;
    if (!given) {
        /* Only the superuser may give a file away: where it is not allowed, the writer owns it. */
        (void)sw_system_calls()->fchown(fd, t->owner, t->group);
    }
    /* A file system without permissions refuses to change them, but there they are right already. */
    bool right = given && (status.st_mode & 07777) == t->mode;
    return right || sw_system_calls()->fchmod(fd, t->mode) == 0;
}

/* Creates a file that durably holds the bytes. *made is set to its name, which it takes over, as soon as it
 * exists. */
static bool create_beside(const sw_target *t, char *name, sw_slice bytes, char **made)
{
    const sw_system *system = sw_system_calls();
    unsigned mode = t->write->before->exists ? 0600 : 0666; /* the process's mask applies to new files */
    int fd = system->open(name, O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, mode);
    if (fd < 0) {
        int reason = errno;
        free(name);
        errno = reason;
        return false;
    }
    *made = name;
    bool good = sw_system_write_all(fd, bytes) && (!t->write->before->exists || copy_permissions(t, fd)) &&
                sw_system_sync(fd);
    int reason = errno;
    bool closed = sw_system_close(fd);
    if (!good) {
        errno = reason;
    }
    return good && closed;
}

bool sw_target_prepare(sw_target *t, char *fresh, char *kept, char **error)
{
    const sw_text *before = t->write->before;
    if (!create_beside(t, fresh, t->write->after, &t->fresh)) {
        free(kept);
        return sw_target_fail(t, "the new version cannot be written", error);
    }
    if (!before->exists) {
        free(kept);
        return true;
    }
    /* A second name keeps the original as it is. Not every file system knows hard links. */
    if (sw_system_calls()->link(t->path, kept) == 0) {
        t->kept = kept;
        return true;
    }
    if (!create_beside(t, kept, (sw_slice){before->bytes, before->length}, &t->kept)) {
        return sw_target_fail(t, "the original cannot be kept", error);
    }
    return true;
}

void sw_target_close(sw_target *t)
{
    free(t->fresh);
    free(t->kept);
    free(t->path);
}

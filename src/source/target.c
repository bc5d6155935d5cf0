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

static const char *base_name(const char *path)
{
    const char *slash = strrchr(path, '/');
    return slash == NULL ? path : slash + 1;
}

/* The folder part of a path: "." when it has none. */
static char *folder_of(const char *path)
{
    const char *base = base_name(path);
    if (base == path) {
        return sw_source_format(".");
    }
    int length = base - path > 1 ? (int)(base - path - 1) : 1;
    return sw_source_format("%.*s", length, path);
}

static bool find_existing(sw_target *t, char **error)
{
    const char *name = t->write->before->path;
    t->path = realpath(name, NULL);
    struct stat status;
    if (t->path == NULL || lstat(t->path, &status) != 0) {
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
    t->folder = folder_of(t->path);
    t->mode = status.st_mode & 07777;
    t->owner = status.st_uid;
    t->group = status.st_gid;
    return true;
}

static bool find_new(sw_target *t, char **error)
{
    const char *name = t->write->before->path;
    char *folder = folder_of(name);
    t->folder = realpath(folder, NULL);
    free(folder);
    if (t->folder == NULL) {
        return sw_target_fail(t, "the folder cannot be found", error);
    }
    t->path = sw_source_format("%s/%s", t->folder, base_name(name));
    struct stat status;
    if (lstat(t->path, &status) == 0) {
        return sw_source_fail(error, "%s: exists already", name);
    }
    return errno == ENOENT ? true : sw_target_fail(t, "cannot be created", error);
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

enum { NAME_PART = 180, ATTEMPTS = 1000 }; /* bytes of the name, so that the temporary one is not too long */

/* The n-th candidate for the name of a temporary file beside the target. */
static char *temporary_name(const sw_target *t, const char *ending, int n)
{
    const char *base = base_name(t->path);
    size_t length = strlen(base);
    if (length > NAME_PART) {
        length = NAME_PART;
        while (length > 0 && sw_is_continuation(base[length])) {
            length--;
        }
    }
    return sw_source_format("%s/.%.*s.stavewright-%ld-%d.%s", t->folder, (int)length, base, (long)getpid(), n,
                            ending);
}

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

/* Creates a file beside the target that durably holds the bytes. *name is set as soon as it exists. */
static bool create_beside(const sw_target *t, const char *ending, sw_slice bytes, char **name)
{
    const sw_system *system = sw_system_calls();
    unsigned mode = t->write->before->exists ? 0600 : 0666; /* the process's mask applies to new files */
    int fd = -1;
    for (int n = 0; fd < 0; n++) {
        char *candidate = temporary_name(t, ending, n);
        fd = system->open(candidate, O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, mode);
        if (fd >= 0) {
            *name = candidate;
        } else {
            free(candidate);
            if (errno != EEXIST || n >= ATTEMPTS) {
                return false;
            }
        }
    }
    bool good = sw_system_write_all(fd, bytes) && (!t->write->before->exists || copy_permissions(t, fd)) &&
                sw_system_sync(fd);
    int reason = errno;
    bool closed = sw_system_close(fd);
    if (!good) {
        errno = reason;
    }
    return good && closed;
}

/* Gives the original a second name, from which it can be put back as it is. */
static bool link_original(sw_target *t)
{
    for (int n = 0; n <= ATTEMPTS; n++) {
        char *candidate = temporary_name(t, "old", n);
        if (sw_system_calls()->link(t->path, candidate) == 0) {
            t->kept = candidate;
            return true;
        }
        free(candidate);
        if (errno != EEXIST) {
            return false;
        }
    }
    return false;
}

bool sw_target_prepare(sw_target *t, char **error)
{
    const sw_text *before = t->write->before;
    if (!create_beside(t, "new", t->write->after, &t->fresh)) {
        return sw_target_fail(t, "the new version cannot be written", error);
    }
    /* Not every file system knows hard links. */
    if (before->exists && !link_original(t) &&
        !create_beside(t, "old", (sw_slice){before->bytes, before->length}, &t->kept)) {
        return sw_target_fail(t, "the original cannot be kept", error);
    }
    return true;
}

static void remove_file(char **name)
{
    if (*name != NULL) {
        (void)sw_system_calls()->unlink(*name); /* nothing is lost when it stays */
        free(*name);
        *name = NULL;
    }
}

void sw_target_close(sw_target *t)
{
    remove_file(&t->fresh);
    remove_file(&t->kept);
    free(t->path);
    free(t->folder);
}

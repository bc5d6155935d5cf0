/* A change over several files is all or nothing, also when the program is killed or the power goes: the
 * design.
 *
 * No file system renames several files at once. So a change keeps, until it is over, a journal from which the
 * next run of any command that reads or writes one of the files can undo it.
 *
 * On disk. In each folder of the change lies a copy of the journal, ".stavewright-unfinished": plain text
 * that says to people, too, what happened and what to do by hand. It lies beside the files and not in the
 * user's home, so that it is found by whoever opens the files next, is moved and copied with them, and is
 * seen in git's list of unknown files. Folders are named relative to each other for the same reason. One
 * fixed name makes looking for it a single open(), and one change a folder at a time. Beside each file F lie,
 * as long as the journal does, ".F.stavewright-ID-N.new" (the new bytes) and ".F.stavewright-ID-N.old" (the
 * original: a second name of the file itself, with its owner and permissions; a copy where there are no hard
 * links).
 *
 * The order, each step durable before the next:
 *   1. the copies are created and locked, and list all files with digests of the old and the new bytes;
 *   2. the temporary files are written;
 *   3. each copy is marked "ready";
 *   4. the files are renamed into place (a new file is linked, so as never to replace one);
 *   5. the temporary files are removed;
 *   6. the copies are removed.
 * So temporary files exist only while every copy does, and a file can have changed only if every copy is
 * ready.
 *
 * Whose is it. The writer holds a lock (flock) on its copies, which the system takes back when it dies,
 * however it dies: no process number is guessed at. A copy that is locked is left alone. So is one of another
 * user, one that cannot be locked, and any text that is not ours. Files outside the folder of the copy are
 * touched only when their own folder holds a copy of the same journal: a text that came from elsewhere can't
 * lead astray.
 *
 * Which way. Back: the user's own files are put back as they were, because that is what a killed command has
 * promised, and running it again looks at the present state of everything. Only when every file is new
 * already is the change kept; then just the clearing up was missing. A file that somebody else has changed
 * since is never touched; see recover.c for when that stops the recovery.
 *
 * Who never runs a command again finds each file whole, old or new, and in each folder the journal's text. */
#include "source/journal.h"

#include <errno.h>
#include <fcntl.h>
#include <inttypes.h>
#include <stdatomic.h>
#include <stdlib.h>
#include <string.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <time.h>
#include <unistd.h>

#define COPY_NAME ".stavewright-unfinished"

enum { NAME_PART = 180 }; /* bytes of the name, so that the temporary one is not too long */

/* ---- building ---- */

sw_journal sw_journal_new(void)
{
    static atomic_uint_least64_t count;
    struct timespec now;
    clock_gettime(CLOCK_REALTIME, &now);
    uint64_t parts[] = {(uint64_t)getpid(), (uint64_t)now.tv_sec, (uint64_t)now.tv_nsec, count++};
    return (sw_journal){.id = sw_digest(SW_DIGEST_START, (sw_slice){(const char *)parts, sizeof parts})};
}

static size_t add_folder(sw_journal *journal, char *path)
{
    size_t at = 0;
    while (at < journal->folder_count && strcmp(journal->folders[at].path, path) < 0) {
        at++;
    }
    if (at < journal->folder_count && strcmp(journal->folders[at].path, path) == 0) {
        free(path);
        return at;
    }
    journal->folder_count++;
    journal->folders = sw_realloc(journal->folders, journal->folder_count * sizeof *journal->folders);
    memmove(&journal->folders[at + 1], &journal->folders[at],
            (journal->folder_count - 1 - at) * sizeof *journal->folders);
    journal->folders[at] = (sw_journal_folder){.path = path, .fd = -1};
    for (size_t i = 0; i < journal->file_count; i++) {
        journal->files[i].folder += journal->files[i].folder >= at ? 1 : 0;
    }
    return at;
}

void sw_journal_add_file(sw_journal *journal, sw_journal_file file)
{
    size_t size = (journal->file_count + 1) * sizeof *journal->files;
    journal->files = sw_realloc(journal->files, size);
    journal->files[journal->file_count++] = file;
}

void sw_journal_add(sw_journal *journal, const char *path, sw_fingerprint before, sw_fingerprint after)
{
    size_t folder = add_folder(journal, sw_folder_of(path));
    sw_journal_add_file(journal,
                        (sw_journal_file){folder, sw_source_format("%s", sw_base_name(path)), before, after});
}

/* ---- paths ---- */

char *sw_journal_path(const sw_journal *journal, size_t file)
{
    const sw_journal_file *f = &journal->files[file];
    return sw_source_format("%s/%s", journal->folders[f->folder].path, f->name);
}

char *sw_journal_temporary(const sw_journal *journal, size_t file, const char *ending)
{
    const sw_journal_file *f = &journal->files[file];
    size_t length = strlen(f->name);
    if (length > NAME_PART) {
        length = NAME_PART;
        while (length > 0 && sw_is_continuation(f->name[length])) {
            length--;
        }
    }
    return sw_source_format("%s/.%.*s.stavewright-%016" PRIx64 "-%zu.%s", journal->folders[f->folder].path,
                            (int)length, f->name, journal->id, file, ending);
}

char *sw_journal_copy(const char *folder)
{
    return sw_source_format("%s/" COPY_NAME, folder);
}

/* ---- copies on disk ---- */

/* Locks an open copy. It may have been removed before it was locked: then it counts as none. */
static sw_take lock(int fd)
{
    int result;
    do {
        result = sw_system_calls()->flock(fd, LOCK_EX | LOCK_NB);
    } while (result != 0 && errno == EINTR);
    struct stat status;
    if (result != 0 || fstat(fd, &status) != 0) {
        return errno == EWOULDBLOCK ? SW_TAKE_BUSY : SW_TAKE_FAILED;
    }
    return status.st_nlink == 0 ? SW_TAKE_NONE : SW_TAKE_HELD;
}

static void drop(int *fd)
{
    if (*fd >= 0) {
        int reason = errno;
        sw_system_close(*fd);
        errno = reason;
        *fd = -1;
    }
}

sw_take sw_journal_take(const char *folder, int *fd, char **error)
{
    char *path = sw_journal_copy(folder);
    struct stat status;
    sw_take took = SW_TAKE_FAILED;
    *fd = sw_system_calls()->open(path, O_RDWR | O_NOFOLLOW | O_NONBLOCK | O_CLOEXEC, 0);
    int reason = errno;
    bool known = (*fd >= 0 ? fstat(*fd, &status) : lstat(path, &status)) == 0;
    if (*fd < 0 && reason == ENOENT) {
        took = SW_TAKE_NONE;
    } else if (known && status.st_uid != geteuid()) {
        sw_source_fail(error, "%s: a change of another user, who is at it or must end it", path);
    } else if (*fd < 0) {
        sw_source_fail(error, "%s: cannot be opened: %s", path, strerror(reason));
    } else if (!known || !S_ISREG(status.st_mode)) {
        sw_source_fail(error, "%s: is no journal of stavewright; give it another name", path);
    } else {
        took = lock(*fd);
        if (took == SW_TAKE_FAILED) {
            sw_source_fail(error,
                           "%s: cannot be locked, so nobody can tell whether its writer still runs: %s", path,
                           strerror(errno));
        }
    }
    free(path);
    if (took != SW_TAKE_HELD) {
        drop(fd);
    }
    return took;
}

/* Some file systems know no locks: there a killed change has to be put back by hand. */
static bool knows_no_locks(int reason)
{
    return reason == ENOLCK || reason == EOPNOTSUPP || reason == ENOSYS || reason == EINVAL;
}

sw_take sw_journal_create(const char *folder, int *fd)
{
    char *path = sw_journal_copy(folder);
    *fd = sw_system_calls()->open(path, O_RDWR | O_CREAT | O_EXCL | O_CLOEXEC, 0644);
    sw_take took = *fd < 0 && errno == EEXIST ? SW_TAKE_BUSY : SW_TAKE_FAILED;
    if (*fd >= 0) {
        took = lock(*fd);
        took = took == SW_TAKE_NONE                              ? SW_TAKE_BUSY
               : took == SW_TAKE_FAILED && knows_no_locks(errno) ? SW_TAKE_HELD
                                                                 : took;
    }
    if (took == SW_TAKE_FAILED && *fd >= 0) {
        int reason = errno;
        (void)sw_system_calls()->unlink(path); /* ours: it was created just now */
        errno = reason;
    }
    if (took != SW_TAKE_HELD) {
        drop(fd);
    }
    free(path);
    return took;
}

/* A folder that may not be read cannot be opened, and some file systems do not sync folders. */
static bool sync_folder(const char *path)
{
    int fd = sw_system_calls()->open(path, O_RDONLY | O_DIRECTORY | O_CLOEXEC, 0);
    if (fd < 0) {
        return errno == EACCES;
    }
    bool good = sw_system_sync(fd) || errno == EINVAL || errno == ENOTSUP;
    drop(&fd);
    return good;
}

bool sw_journal_sync_folders(const sw_journal *journal, size_t *folder)
{
    for (size_t i = 0; i < journal->folder_count; i++) {
        if (journal->folders[i].fd >= 0 && !sync_folder(journal->folders[i].path)) {
            *folder = i;
            return false;
        }
    }
    return true;
}

static bool remove_temporary(const sw_journal *journal, size_t file, const char *ending)
{
    char *path = sw_journal_temporary(journal, file, ending);
    bool gone = sw_system_calls()->unlink(path) == 0 || errno == ENOENT;
    int reason = errno;
    free(path);
    errno = reason;
    return gone;
}

bool sw_journal_clear(sw_journal *journal)
{
    int reason = 0;
    for (size_t i = 0; i < journal->file_count; i++) {
        /* The original first: recovery can tell from an original without a new version that a file was moved.
         */
        if (journal->folders[journal->files[i].folder].fd >= 0 &&
            (!remove_temporary(journal, i, "old") || !remove_temporary(journal, i, "new"))) {
            reason = errno;
        }
    }
    size_t folder;
    if (reason == 0 && !sw_journal_sync_folders(journal, &folder)) {
        reason = errno;
    }
    for (size_t i = 0; reason == 0 && i < journal->folder_count; i++) {
        if (journal->folders[i].fd >= 0) {
            char *path = sw_journal_copy(journal->folders[i].path);
            (void)sw_system_calls()->unlink(path); /* one that stays is removed by the next command */
            free(path);
            drop(&journal->folders[i].fd);
        }
    }
    errno = reason;
    return reason == 0;
}

void sw_journal_close(sw_journal *journal)
{
    for (size_t i = 0; i < journal->folder_count; i++) {
        drop(&journal->folders[i].fd);
        free(journal->folders[i].path);
    }
    for (size_t i = 0; i < journal->file_count; i++) {
        free(journal->files[i].name);
    }
    free(journal->folders);
    free(journal->files);
    *journal = (sw_journal){0};
}

/* ---- looking at files ---- */

bool sw_fingerprint_read(int fd, sw_fingerprint *found)
{
    char block[16384];
    long got;
    *found = (sw_fingerprint){.exists = true, .digest = SW_DIGEST_START};
    while ((got = sw_system_read(fd, block, sizeof block)) > 0) {
        found->digest = sw_digest(found->digest, (sw_slice){block, (size_t)got});
        found->length += (uint64_t)got;
    }
    return got == 0;
}

bool sw_fingerprint_equal(sw_fingerprint a, sw_fingerprint b)
{
    return a.exists == b.exists && (!a.exists || (a.length == b.length && a.digest == b.digest));
}

/* Settling an interrupted change: see journal.c for the design.
 *
 * When every copy of the journal is there and ready, files may have been moved. Each is then, by its bytes:
 *
 *   back      its old bytes; or others while its new version still lies beside it: somebody changed it
 *             before it was moved. Nothing is to be done for it.
 *   moved     its new bytes.
 *   edited    other bytes, the new version gone, the original still beside it: moved, then changed by
 *             somebody.
 *   unsure    other bytes, and neither beside it: changed by somebody while another recovery was at work.
 *
 * Some moved, some back (or unsure): the moved ones are put back. All moved (or edited): the change is
 * complete. None moved or edited: nothing has happened. What remains would cost somebody's bytes or leave a
 * mix, so it is left as it is and said. Every step may be interrupted itself and is then taken up again in
 * the same way. */
#include "source/recover.h"

#include <errno.h>
#include <fcntl.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <time.h>
#include <unistd.h>

enum { READER_ATTEMPTS = 100, PAUSE_MILLISECONDS = 10 };

typedef enum file_state { STATE_BACK, STATE_MOVED, STATE_EDITED, STATE_UNSURE, STATE_COUNT } file_state;

/* ---- finding all copies ---- */

static bool read_copy(int fd, sw_buffer *text)
{
    char block[4096];
    long got;
    sw_buffer_string(text, "");
    while ((got = sw_system_read(fd, block, sizeof block)) > 0) {
        sw_buffer_append(text, (sw_slice){block, (size_t)got});
    }
    return got == 0;
}

/* Takes the copy in a folder and reads it. *state is set after SW_TAKE_HELD. */
static sw_take take_and_read(const char *folder, int *fd, sw_journal *journal, bool *ready,
                             sw_journal_state *state, char **sentence)
{
    sw_take took = sw_journal_take(folder, fd, sentence);
    if (took != SW_TAKE_HELD) {
        return took;
    }
    sw_buffer text = {0};
    if (read_copy(*fd, &text)) {
        *state = sw_journal_parse(sw_buffer_slice(&text), folder, journal, ready);
    } else {
        sw_source_fail(sentence, "%s: the journal of an interrupted change cannot be read: %s", folder,
                       strerror(errno));
        sw_system_close(*fd);
        *fd = -1;
        took = SW_TAKE_FAILED;
    }
    sw_buffer_free(&text);
    return took;
}

/* Takes the copies of a journal in the order of its folders, so that no two programs wait for each other. A
 * folder without a copy of this journal stays at -1. */
static sw_take take_copies(sw_journal *journal, char **sentence)
{
    for (size_t i = 0; i < journal->folder_count; i++) {
        sw_journal_folder *folder = &journal->folders[i];
        struct stat status;
        if (stat(folder->path, &status) != 0 || !S_ISDIR(status.st_mode)) {
            continue;
        }
        sw_journal other = {0};
        sw_journal_state state = SW_JOURNAL_FOREIGN;
        sw_take took = take_and_read(folder->path, &folder->fd, &other, &folder->ready, &state, sentence);
        bool ours = took == SW_TAKE_HELD && state != SW_JOURNAL_FOREIGN &&
                    (state == SW_JOURNAL_TORN || other.id == journal->id);
        sw_journal_close(&other);
        if (took == SW_TAKE_BUSY || took == SW_TAKE_FAILED) {
            return took;
        }
        if (took == SW_TAKE_HELD && !ours) {
            sw_system_close(folder->fd);
            folder->fd = -1;
        }
    }
    return SW_TAKE_HELD;
}

/* ---- looking ---- */

static bool temporary_exists(const sw_journal *journal, size_t file, const char *ending)
{
    char *path = sw_journal_temporary(journal, file, ending);
    struct stat status;
    bool exists = lstat(path, &status) == 0;
    free(path);
    return exists;
}

/* The bytes of a path; a missing one is no failure. */
static bool look_at(const char *path, sw_fingerprint *found)
{
    *found = (sw_fingerprint){0};
    int fd = sw_system_calls()->open(path, O_RDONLY | O_NOFOLLOW | O_NONBLOCK | O_CLOEXEC, 0);
    if (fd < 0) {
        return errno == ENOENT;
    }
    bool good = sw_fingerprint_read(fd, found);
    int reason = errno;
    sw_system_close(fd);
    errno = reason;
    return good;
}

static bool find_state(const sw_journal *journal, size_t file, file_state *state)
{
    const sw_journal_file *f = &journal->files[file];
    char *path = sw_journal_path(journal, file);
    sw_fingerprint now;
    bool good = look_at(path, &now);
    int reason = errno;
    free(path);
    if (sw_fingerprint_equal(now, f->before) || temporary_exists(journal, file, "new")) {
        *state = sw_fingerprint_equal(now, f->after) ? STATE_MOVED : STATE_BACK;
    } else if (sw_fingerprint_equal(now, f->after)) {
        *state = STATE_MOVED;
    } else {
        *state = temporary_exists(journal, file, "old") ? STATE_EDITED : STATE_UNSURE;
    }
    errno = reason;
    return good;
}

static bool all_copies_held(const sw_journal *journal, bool *ready)
{
    bool held = true;
    *ready = true;
    for (size_t i = 0; i < journal->folder_count; i++) {
        held = held && journal->folders[i].fd >= 0;
        *ready = *ready && (journal->folders[i].fd < 0 || journal->folders[i].ready);
    }
    return held;
}

static bool any_copy_held(const sw_journal *journal)
{
    for (size_t i = 0; i < journal->folder_count; i++) {
        if (journal->folders[i].fd >= 0) {
            return true;
        }
    }
    return false;
}

static bool any_temporary(const sw_journal *journal)
{
    for (size_t i = 0; i < journal->file_count; i++) {
        if (temporary_exists(journal, i, "old") || temporary_exists(journal, i, "new")) {
            return true;
        }
    }
    return false;
}

/* ---- acting ---- */

/* "PATH and 2 other files" */
static void name_files(const sw_journal *journal, sw_buffer *result)
{
    char *path = sw_journal_path(journal, 0);
    sw_buffer_string(result, path);
    free(path);
    if (journal->file_count > 1) {
        sw_buffer_format(result, " and %zu other file%s", journal->file_count - 1,
                         journal->file_count == 2 ? "" : "s");
    }
}

static sw_recovery say(sw_recovery result, const sw_journal *journal, char **sentence, const char *what)
{
    sw_buffer files = {0};
    name_files(journal, &files);
    *sentence = sw_source_format("a change of %s was interrupted: %s", sw_buffer_text(&files), what);
    sw_buffer_free(&files);
    return result;
}

/* Says which file is in the way, and how to get on. */
static sw_recovery say_stuck(const sw_journal *journal, size_t file, char **sentence, const char *what)
{
    char *path = sw_journal_path(journal, file);
    char *copy = sw_journal_copy(journal->folders[journal->files[file].folder].path);
    char *text = sw_source_format("%s %s; all is left as it is, see %s", path, what, copy);
    say(SW_RECOVERY_STUCK, journal, sentence, text);
    free(text);
    free(copy);
    free(path);
    return SW_RECOVERY_STUCK;
}

/* True when the original of a moved file is there, whole. */
static bool has_original(const sw_journal *journal, size_t file)
{
    const sw_journal_file *f = &journal->files[file];
    if (!f->before.exists) {
        return true;
    }
    char *kept = sw_journal_temporary(journal, file, "old");
    sw_fingerprint found;
    bool good = look_at(kept, &found) && sw_fingerprint_equal(found, f->before);
    free(kept);
    return good;
}

static bool put_file_back(const sw_journal *journal, size_t file)
{
    char *path = sw_journal_path(journal, file);
    char *kept = sw_journal_temporary(journal, file, "old");
    const sw_system *system = sw_system_calls();
    bool good = (journal->files[file].before.exists ? system->rename(kept, path) : system->unlink(path)) == 0;
    int reason = errno;
    free(kept);
    free(path);
    errno = reason;
    return good;
}

static sw_recovery put_back(sw_journal *journal, const file_state *states, char **sentence)
{
    for (size_t i = 0; i < journal->file_count; i++) {
        if (states[i] == STATE_MOVED && !has_original(journal, i)) {
            return say_stuck(journal, i, sentence, "is new, and its original is gone or changed");
        }
    }
    for (size_t i = 0; i < journal->file_count; i++) {
        if (states[i] == STATE_MOVED && !put_file_back(journal, i)) {
            char *what = sw_source_format("cannot be put back (%s)", strerror(errno));
            say_stuck(journal, i, sentence, what);
            free(what);
            return SW_RECOVERY_STUCK;
        }
    }
    size_t folder;
    if (!sw_journal_sync_folders(journal, &folder)) {
        char *what =
            sw_source_format("%s cannot be synced: %s", journal->folders[folder].path, strerror(errno));
        say(SW_RECOVERY_STUCK, journal, sentence, what);
        free(what);
        return SW_RECOVERY_STUCK;
    }
    return say(SW_RECOVERY_DONE, journal, sentence, "all are put back as they were before it");
}

/* All copies are held and ready. */
static sw_recovery settle_files(sw_journal *journal, char **sentence)
{
    file_state *states = sw_alloc_zero(journal->file_count + 1, sizeof *states);
    size_t first[STATE_COUNT] = {0};
    size_t count[STATE_COUNT] = {0};
    sw_recovery result = SW_RECOVERY_DONE;
    for (size_t i = journal->file_count; i > 0 && result == SW_RECOVERY_DONE; i--) {
        if (!find_state(journal, i - 1, &states[i - 1])) {
            char *what = sw_source_format("cannot be read (%s)", strerror(errno));
            result = say_stuck(journal, i - 1, sentence, what);
            free(what);
        }
        count[states[i - 1]]++;
        first[states[i - 1]] = i - 1;
    }
    static const char changed[] = "was changed since";
    if (result != SW_RECOVERY_DONE) {
        /* said already */
    } else if (count[STATE_EDITED] > 0 && count[STATE_BACK] + count[STATE_UNSURE] > 0) {
        result = say_stuck(journal, first[STATE_EDITED], sentence, changed);
    } else if (count[STATE_MOVED] > 0 && count[STATE_BACK] > 0) {
        result = put_back(journal, states, sentence);
    } else if (count[STATE_MOVED] > 0 && count[STATE_UNSURE] > 0) {
        result = say_stuck(journal, first[STATE_UNSURE], sentence, changed);
    } else if (count[STATE_MOVED] + count[STATE_EDITED] > 0) {
        say(SW_RECOVERY_DONE, journal, sentence, "it was complete, and only its temporary files were left");
    } else {
        say(SW_RECOVERY_DONE, journal, sentence,
            "nothing had changed, and only its temporary files were left");
    }
    free(states);
    return result;
}

/* The copies that exist are held. */
static sw_recovery settle(sw_journal *journal, char **sentence)
{
    bool ready;
    bool complete = all_copies_held(journal, &ready);
    if (!any_copy_held(journal)) {
        return SW_RECOVERY_NONE; /* another program has settled it meanwhile */
    }
    sw_recovery result;
    if (complete && ready) {
        result = settle_files(journal, sentence);
    } else if (ready && any_temporary(journal)) {
        return say(
            SW_RECOVERY_STUCK, journal, sentence,
            "one of its folders was moved or its journal (.stavewright-unfinished) removed; put it back, "
            "or compare the files beside the journal that is left, and remove them");
    } else {
        result = say(SW_RECOVERY_DONE, journal, sentence, "only temporary files were left");
    }
    if (result == SW_RECOVERY_DONE && !sw_journal_clear(journal)) {
        char *done = *sentence;
        *sentence = sw_source_format("%s; these cannot be removed: %s", done, strerror(errno));
        free(done);
        result = SW_RECOVERY_STUCK;
    }
    return result;
}

/* A copy that was not written to its end, or that its writer is about to lock: nothing is done yet that could
 * be settled, and a running writer creates it anew. So there is nothing to be said either. */
static sw_recovery remove_torn(const char *folder, char **sentence)
{
    char *path = sw_journal_copy(folder);
    bool gone = sw_system_calls()->unlink(path) == 0 || errno == ENOENT;
    if (!gone) {
        sw_source_fail(sentence, "%s: cannot be removed: %s", path, strerror(errno));
    }
    free(path);
    return gone ? SW_RECOVERY_NONE : SW_RECOVERY_STUCK;
}

sw_recovery sw_recover_folder(const char *folder, char **sentence)
{
    int fd = -1;
    bool ready;
    sw_journal journal = {0};
    sw_journal_state state = SW_JOURNAL_FOREIGN;
    *sentence = NULL;
    switch (take_and_read(folder, &fd, &journal, &ready, &state, sentence)) {
    case SW_TAKE_NONE:
        return SW_RECOVERY_NONE;
    case SW_TAKE_BUSY:
        return SW_RECOVERY_BUSY;
    case SW_TAKE_FAILED:
        return SW_RECOVERY_STUCK;
    case SW_TAKE_HELD:
        break;
    }
    sw_recovery result;
    if (state == SW_JOURNAL_TORN) {
        result = remove_torn(folder, sentence);
        sw_system_close(fd);
    } else if (state == SW_JOURNAL_FOREIGN || journal.file_count == 0) {
        char *path = sw_journal_copy(folder);
        sw_source_fail(sentence, "%s: is no journal of stavewright; give it another name", path);
        free(path);
        result = SW_RECOVERY_STUCK;
        sw_system_close(fd);
    } else {
        sw_system_close(fd); /* taken again, in the order of the folders */
        sw_take took = take_copies(&journal, sentence);
        result = took == SW_TAKE_BUSY     ? SW_RECOVERY_BUSY
                 : took == SW_TAKE_FAILED ? SW_RECOVERY_STUCK
                                          : settle(&journal, sentence);
    }
    sw_journal_close(&journal);
    return result;
}

/* ---- before reading ---- */

/* Set once, before anything is read; then several threads may read. They keep out of each other's way as
 * programs do: by locks on the copies of the journal. */
static sw_tell *listener;
static void *listener_context;

void sw_recovery_use(sw_tell *tell, void *context)
{
    listener = tell;
    listener_context = context;
}

void sw_recover_pause(void)
{
    nanosleep(&(struct timespec){.tv_nsec = PAUSE_MILLISECONDS * 1000000L}, NULL);
}

/* Most folders hold no unfinished change, and that is seen soon: unless a link leads to another folder. */
static bool is_finished(const char *path)
{
    struct stat status;
    if (lstat(path, &status) != 0 || S_ISLNK(status.st_mode)) {
        return false;
    }
    char *folder = sw_folder_of(path);
    char *journal = sw_journal_copy(folder);
    bool none = lstat(journal, &status) != 0 && errno == ENOENT;
    free(journal);
    free(folder);
    return none;
}

void sw_recover_before_reading(const char *path)
{
    if (listener == NULL || is_finished(path)) {
        return;
    }
    char *real = realpath(path, NULL);
    char *named = sw_folder_of(real == NULL ? path : real);
    char *folder = real == NULL ? realpath(named, NULL) : strdup(named);
    char *sentence = NULL;
    sw_recovery result = SW_RECOVERY_NONE;
    for (int n = 0; folder != NULL && n < READER_ATTEMPTS; n++) {
        result = sw_recover_folder(folder, &sentence);
        if (result != SW_RECOVERY_BUSY) {
            break;
        }
        sw_recover_pause();
    }
    if (result == SW_RECOVERY_BUSY) {
        sentence = sw_source_format("%s: read while another stavewright is writing here", folder);
    }
    if (sentence != NULL) {
        listener(listener_context, sentence);
    }
    free(sentence);
    free(folder);
    free(named);
    free(real);
}

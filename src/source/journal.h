/* The journal of a change over several files, so that one that is killed can be undone. The design stands in
 * journal.c. */
#ifndef STAVEWRIGHT_SOURCE_JOURNAL_H
#define STAVEWRIGHT_SOURCE_JOURNAL_H

#include "source/internal.h"

/* The bytes of a file, as far as they must be known again. */
typedef struct sw_fingerprint {
    bool exists;
    uint64_t length;
    uint64_t digest;
} sw_fingerprint;

/* A file of the change. */
typedef struct sw_journal_file {
    size_t folder; /* number of its folder */
    char *name;    /* in the folder */
    sw_fingerprint before;
    sw_fingerprint after;
} sw_journal_file;

/* A folder of the change. */
typedef struct sw_journal_folder {
    char *path; /* the real one, absolute */
    int fd;     /* its copy of the journal, open and locked; -1: not held */
    bool ready; /* as that copy says: every temporary file is complete, and renames may have begun */
} sw_journal_folder;

typedef struct sw_journal {
    uint64_t id;
    sw_journal_folder *folders; /* sorted by path */
    size_t folder_count;
    sw_journal_file *files;
    size_t file_count;
} sw_journal;

/* ---- building ---- */

/* An empty journal with a number of its own. */
sw_journal sw_journal_new(void);
/* Adds a file by its real path. Folders are numbered anew, so all files come before anything else. */
void sw_journal_add(sw_journal *journal, const char *path, sw_fingerprint before, sw_fingerprint after);
/* Adds a file of a folder that is there already. It owns the name. */
void sw_journal_add_file(sw_journal *journal, sw_journal_file file);

/* ---- the text of a copy (journal_text.c) ---- */

/* The text of the copy in a folder. */
void sw_journal_print(const sw_journal *journal, size_t folder, sw_buffer *result);

typedef enum sw_journal_state {
    SW_JOURNAL_FOREIGN, /* no text of ours */
    SW_JOURNAL_TORN,    /* not written to its end: no temporary file exists yet */
    SW_JOURNAL_COMPLETE
} sw_journal_state;
/* Reads a copy that lies in `folder`; *ready as in sw_journal_folder. Only a complete one leaves anything in
 * *journal to be freed. */
sw_journal_state sw_journal_parse(sw_slice text, const char *folder, sw_journal *journal, bool *ready);

/* ---- paths: all to be freed with free() ---- */

/* The path of a file of the change. */
char *sw_journal_path(const sw_journal *journal, size_t file);
/* The path of its temporary file; the ending is "new" or "old". */
char *sw_journal_temporary(const sw_journal *journal, size_t file, const char *ending);
/* The path of the copy in a folder. */
char *sw_journal_copy(const char *folder);

/* ---- copies on disk ---- */

typedef enum sw_take {
    SW_TAKE_HELD,
    SW_TAKE_NONE, /* there is no copy */
    SW_TAKE_BUSY, /* a running program holds it */
    SW_TAKE_FAILED
} sw_take;
/* Opens and locks the copy in a folder. After SW_TAKE_FAILED *error says why. */
sw_take sw_journal_take(const char *folder, int *fd, char **error);
/* Creates and locks a copy; SW_TAKE_BUSY when there is one already. After SW_TAKE_FAILED errno says why. */
sw_take sw_journal_create(const char *folder, int *fd);
/* Makes the names in the folders whose copies are held durable, as far as the folders allow it. On failure
 * errno is set, and *folder the number of the folder. */
bool sw_journal_sync_folders(const sw_journal *journal, size_t *folder);
/* Removes what is left of the change in the folders whose copies are held: first all temporary files, then
 * the copies. False when a temporary file stays, and with it all copies: errno is set. */
bool sw_journal_clear(sw_journal *journal);
/* Closes the copies, which unlocks them, and frees the memory. */
void sw_journal_close(sw_journal *journal);

/* ---- looking at files ---- */

/* Reads an open file to its end. */
bool sw_fingerprint_read(int fd, sw_fingerprint *found);
bool sw_fingerprint_equal(sw_fingerprint a, sw_fingerprint b);

#endif

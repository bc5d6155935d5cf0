/* Source files: bytes, lines and columns, text edits, unified diffs, safe writing. */
#ifndef STAVEWRIGHT_SOURCE_H
#define STAVEWRIGHT_SOURCE_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "stavewright/base.h"

/* ---- one file ---- */

/* The bytes of a file as they were read, never normalised.
 *
 * Lines end with \n or \r\n. A lone \r ends no line: so it is for the compiler, for diffs and for git, and
 * places must agree with theirs. The text behind the last line end is a line too, even an empty one. */
typedef struct sw_text {
    char *path;              /* as it was named; "-" for standard input */
    char *bytes;             /* `length` bytes and a NUL behind them */
    uint32_t length;         /* at most SW_TEXT_LIMIT */
    uint32_t *lines;         /* offset of the first byte of each line */
    uint32_t line_count;     /* at least 1 */
    uint32_t *continuations; /* for columns: UTF-8 continuation bytes before each block; NULL: all ASCII */
    bool exists;             /* false for a file that is to be created */
    char *real_path;         /* absolute and without links, of what was read from the disk; otherwise NULL */
    bool shared;             /* bytes, lines and columns belong to another text */
} sw_text;

/* The largest file that is read: larger ones are surely no scores, and offsets stay within 32 bits. */
enum { SW_TEXT_LIMIT = 1 << 30 };

typedef struct sw_place {
    uint32_t line;   /* from 1 */
    uint32_t column; /* from 0, in characters: UTF-8 continuation bytes are not counted; a tab, a \r and a
                      * byte order mark count as one, as they do for the compiler */
} sw_place;

/* Reads a file ("-": standard input). On failure returns NULL and sets *error to a sentence that names the
 * path and the reason (to be freed with free()). The caller owns the result. */
sw_text *sw_text_read(const char *path, char **error);
/* The text of an existing file from bytes in memory, which are copied. */
sw_text *sw_text_from_bytes(const char *path, sw_slice bytes);
/* The same file with other bytes, which are copied. */
sw_text *sw_text_changed(const sw_text *text, sw_slice bytes);
/* The same bytes under another path; the other text must live as long. */
sw_text *sw_text_share(const char *path, const sw_text *other);
/* The empty text of a file that is to be created. */
sw_text *sw_text_new(const char *path);
/* The folder in a path, with the separator behind it; empty when it names none. */
sw_slice sw_path_folder(const char *path);
/* Whether two paths lead to one file on disk; false when one of them leads nowhere. */
bool sw_same_path(const char *a, const char *b);
/* Whether two texts are of one file on disk, whatever their paths (links, "..") say. */
bool sw_text_same_file(const sw_text *a, const sw_text *b);
/* NULL is allowed. */
void sw_text_free(sw_text *text);
/* Where a byte offset lies (an offset behind the end: the end). */
sw_place sw_text_place(const sw_text *text, uint32_t offset);
/* The number of the line (from 1) that holds a byte offset. A line end belongs to the line that it ends. */
uint32_t sw_text_line(const sw_text *text, uint32_t offset);
/* The bytes from `start` up to `end`, both clipped to the text. */
sw_slice sw_text_slice(const sw_text *text, uint32_t start, uint32_t end);
/* A line (from 1) without its line end; empty when there is no such line. */
sw_slice sw_text_line_slice(const sw_text *text, uint32_t line);
/* The blanks at the beginning of the line that holds an offset. */
sw_slice sw_text_indent(const sw_text *text, uint32_t offset);
/* The line end to write in this file: the one used most, "\n", "\r\n" or "\r" ("\n" when there is none). */
const char *sw_text_newline(const sw_text *text);

/* ---- where files come from ---- */

typedef enum sw_file_origin {
    SW_FILE_ON_DISK, /* as the system has it */
    SW_FILE_GIVEN,   /* other bytes stand for it */
    SW_FILE_MISSING  /* it is not to be seen, whatever the disk has */
} sw_file_origin;

/* Says where a file comes from. With `bytes`, those of a given file are appended to it. */
typedef sw_file_origin sw_file_find(void *context, const char *path, sw_buffer *bytes);
/* From now on sw_text_read and sw_file_exists ask this function, in the whole process (see
 * sw_git_read_staged). NULL: all files come from the disk, as in the beginning. */
void sw_files_use(sw_file_find *find, void *context);
/* Whether there is such a file, wherever files come from. */
bool sw_file_exists(const char *path);

/* The absolute path, without "." and ".."; links are followed as far as the path is on disk. To be freed with
 * free(); NULL when the working folder is gone. */
char *sw_path_absolute(const char *path);
/* An absolute path as a person in the working folder would write it: "../stavewright.yaml". Takes over the
 * memory of `path`; the result is to be freed with free(). */
char *sw_path_from_here(char *path);

/* ---- edits ---- */

/* Replaces the bytes [start, end) of a text by `text`. */
typedef struct sw_edit {
    uint32_t start;
    uint32_t end;
    char *text;    /* owned by the list, NUL-terminated */
    size_t length; /* of `text`, which may hold NULs */
} sw_edit;

/* {0} is the empty list. */
typedef struct sw_edits {
    sw_edit *items; /* in the order in which they were added until sw_edits_finish sorts them */
    size_t count;
    size_t capacity;
} sw_edits;

/* Adds an edit; `text` is copied. */
void sw_edits_add(sw_edits *edits, uint32_t start, uint32_t end, sw_slice text);
/* Sorts by position (insertions at one place keep the order in which they were added and come before a
 * replacement that begins there), drops edits that change nothing, and shrinks each to the bytes that differ,
 * without splitting a UTF-8 character or a \r\n. False when two edits overlap or one does not lie within the
 * text: *where is then the offset of the offending (of two: the second) edit, and the list is as it was. */
bool sw_edits_finish(sw_edits *edits, const sw_text *text, uint32_t *where);
/* The bytes after finished edits, appended to `result`. */
void sw_edits_apply(const sw_edits *edits, const sw_text *text, sw_buffer *result);
/* Frees the memory and leaves an empty list. */
void sw_edits_free(sw_edits *edits);

/* ---- unified diff ---- */

/* Appends the unified diff (3 lines of context, a/ and b/ before the path) between the text and its bytes
 * after finished edits, as `patch -p1` and `git apply` read it in `folder`, which must hold the file. The
 * file is named from there by its real path, as neither follows symbolic links or "..". NULL: it is named as
 * text->path is. Appends nothing where nothing changes. A new file (text->exists false) is shown against
 * /dev/null, also when it is to be empty: it must then come
 * last, as patch takes what follows for a part of it. Handles missing final newlines and CRLF. The diff
 * follows the edits: no line that no edit touches is shown as changed, and time and memory are those of
 * reading both texts once. */
void sw_diff_print(const sw_edits *edits, const sw_text *text, const char *folder, sw_buffer *result);
/* The folder in which the diffs of all these texts apply together: the current one, or, when a file lies
 * outside of it, the nearest above that holds all. To be freed with free(); NULL when the current folder is
 * gone. */
char *sw_diff_folder(const sw_text *const *texts, size_t count);

/* ---- safe writing ---- */

/* One file of a change: what it was when it was read, and what it is to become. */
typedef struct sw_write {
    const sw_text *before; /* exists == false: the file is created, and must not exist yet */
    sw_slice after;
} sw_write;

/* Writes all files or none. For each: symbolic links are followed to the target, which must be a regular file
 * with one name that this process may write; a temporary file beside it is written, synced and given the
 * target's permissions (and owner where allowed). When all are ready and all targets still hold the bytes
 * that were read, they are renamed into place and the folders are synced. When a step fails, those already
 * done are put back. A file whose bytes do not change is not touched. Returns true on success; otherwise
 * false, and *error is a sentence with path and reason (to be freed with free()).
 *
 * After false nothing is changed, with one exception: when putting back fails as well (a failing disk),
 * *error says which files hold the new bytes and where the old ones are kept, and the next call tries again.
 *
 * SIGINT, SIGTERM, SIGHUP and SIGQUIT, unless ignored, are held back for the calling thread until the
 * function is done: one that arrives before the first rename stops the write, a later one waits until all
 * files are in place. Either way no temporary file stays behind. A program with several threads must let this
 * thread receive them.
 *
 * SIGKILL or loss of power: at every moment each file holds either all of its old or all of its new bytes.
 * What was done by then is written down beside the files (".stavewright-unfinished"), and the next call that
 * writes in one of the folders, or reads there (see sw_recovery_use), puts all files back as they were, or,
 * when all are new already, clears up. A file that somebody has changed since is never touched. The design
 * stands in src/source/journal.c. Two changes that share a folder wait for each other, up to ten seconds.
 *
 * Not kept: extended attributes and access control lists; the owner where the system does not allow it.
 * A program that changes a target between the last check and the rename, which follow each other at once,
 * goes unnoticed, as POSIX has no conditional rename. A file with several names (hard links) is refused. */
bool sw_write_all(const sw_write *writes, size_t count, char **error);

/* Takes a sentence without a newline at its end. */
typedef void sw_tell(void *context, const char *sentence);
/* From now on, sw_text_read first settles a change that was interrupted in the folder of the file, and the
 * listener is told what was done, or why nothing could be. NULL: reading changes nothing (so it begins).
 * sw_write_all settles in any case, and then writes nothing itself: what was read may have been a mix. */
void sw_recovery_use(sw_tell *tell, void *context);

/* The system calls that reading and writing make, replaceable so that tests can make the n-th one fail.
 * Arguments and results are those of the POSIX functions of the same name. All must be set. */
typedef struct sw_system {
    int (*open)(const char *path, int flags, unsigned mode);
    long (*read)(int fd, void *bytes, size_t count);
    long (*write)(int fd, const void *bytes, size_t count);
    int (*fchown)(int fd, unsigned owner, unsigned group);
    int (*fchmod)(int fd, unsigned mode);
    int (*fsync)(int fd);
    int (*flock)(int fd, int operation);
    int (*close)(int fd);
    int (*link)(const char *from, const char *to);
    int (*rename)(const char *from, const char *to);
    int (*unlink)(const char *path);
} sw_system;
/* Replaces them for the whole process; NULL restores the real ones. For tests only. */
void sw_system_use(const sw_system *system);

#endif

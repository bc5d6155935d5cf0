/* What the files of this layer share among themselves. */
#ifndef STAVEWRIGHT_SOURCE_INTERNAL_H
#define STAVEWRIGHT_SOURCE_INTERNAL_H

#include <signal.h>

#include "stavewright/source.h"

/* The system calls in force. */
const sw_system *sw_system_calls(void);
/* read() that starts again when a signal interrupts it. */
long sw_system_read(int fd, void *bytes, size_t count);
/* Writes all bytes, however many calls it takes; false with errno set. */
bool sw_system_write_all(int fd, sw_slice bytes);
/* fsync() that starts again when a signal interrupts it. */
bool sw_system_sync(int fd);
/* close(); an interrupted one has closed the file all the same. */
bool sw_system_close(int fd);

/* Sets *error to the formatted sentence and returns false. */
bool sw_source_fail(char **error, const char *format, ...) __attribute__((format(printf, 2, 3)));

/* Asks the function of sw_files_use where a file comes from, and for its bytes unless `bytes` is NULL. */
sw_file_origin sw_file_look(const char *path, sw_buffer *bytes);

/* The last part of a path. */
const char *sw_base_name(const char *path);
/* The folder part of a path, to be freed with free(): "." when it has none. */
char *sw_folder_of(const char *path);

/* A formatted string, to be freed with free(). */
char *sw_source_format(const char *format, ...) __attribute__((format(printf, 1, 2)));

/* Signals that end a program, held back for a while. */
typedef struct sw_held_signals {
    sigset_t mask_before;
    sigset_t held;
} sw_held_signals;
/* Holds them back in this thread until they are released. */
sw_held_signals sw_signals_hold(void);
/* True when one of them has arrived. */
bool sw_signals_pending(const sw_held_signals *signals);
/* Lets them come: one that has arrived meanwhile is delivered here. */
void sw_signals_release(const sw_held_signals *signals);

/* A digest of bytes that come in pieces: begin with SW_DIGEST_START, pass each result on. */
#define SW_DIGEST_START UINT64_C(14695981039346656037)
uint64_t sw_digest(uint64_t digest, sw_slice bytes);

/* Appends the way from one absolute folder to another file or folder: "." or "../..", "parts", "../parts". */
void sw_source_way(const char *from, const char *to, sw_buffer *way);

/* True for the second and later bytes of a UTF-8 character. */
static inline bool sw_is_continuation(char byte)
{
    return ((unsigned char)byte & 0xC0) == 0x80;
}

#endif

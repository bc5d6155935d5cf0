/* What is done about a change that was interrupted. */
#ifndef STAVEWRIGHT_SOURCE_RECOVER_H
#define STAVEWRIGHT_SOURCE_RECOVER_H

#include "source/journal.h"

typedef enum sw_recovery {
    SW_RECOVERY_NONE, /* nothing lies in the folder */
    SW_RECOVERY_DONE, /* the sentence says what was done */
    SW_RECOVERY_BUSY, /* a running program is at it */
    SW_RECOVERY_STUCK /* the sentence says why it is left as it is */
} sw_recovery;

/* Settles the interrupted change that a journal in a folder (a real, absolute path) tells of, in all of its
 * folders. *sentence is set after DONE and STUCK, to be freed with free(). */
sw_recovery sw_recover_folder(const char *folder, char **sentence);
/* Before a file is read: settles what lies in its folder, when a listener is there to be told. Waits a moment
 * for a program that is just writing there. */
void sw_recover_before_reading(const char *path);
/* Sleeps a moment before the next attempt. */
void sw_recover_pause(void);

#endif

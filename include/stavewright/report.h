/* What is printed: events, outlines, findings. Everything is appended to a buffer; nothing here writes files.
 */
#ifndef STAVEWRIGHT_REPORT_H
#define STAVEWRIGHT_REPORT_H

#include "stavewright/base.h"
#include "stavewright/check.h"
#include "stavewright/score.h"

/* One row a note, drum, rest or full-bar rest, tab-separated:
 * score onset grace duration kind pitch staff voice file line column (line from 1, column from 0 in
 * characters). */
void sw_report_events(const sw_reading *reading, sw_buffer *result);
/* One row a syllable, line by line, tab-separated:
 * score onset grace duration bar beat syllable staff voice verse line-id file line column; the verse counts
 * the lines of lyrics from 1, staff and voice are - for syllables with a length of their own. */
void sw_report_lyrics(const sw_reading *reading, sw_buffer *result);
/* Staves with instruments and voices, bars, metre, key and tempo changes, and the duration, for each score.
 */
void sw_report_outline(const sw_reading *reading, sw_buffer *result);
/* Whether a staff holds notes: lyrics, chord names and the like stand in a score like staves. */
bool sw_report_is_staff(const sw_reading *reading, const sw_staff *staff);
/* The music as text: one line a bar a staff, with what sounds and what is said of it, the same for all ways
 * to write it. Scores bar by bar; of sw_read_alone also variables, line by line without numbers. */
void sw_report_music(const sw_reading *reading, sw_buffer *result);
/* One line a finding: `file:line:column: error: message [rule]`. */
void sw_report_findings(const sw_reading *reading, const sw_findings *findings, sw_buffer *result);
/* How the findings of a check are written. */
typedef struct sw_report_form {
    const char *name;
    const char *summary; /* one line: for whom */
    void (*print)(const sw_check_result *checked, bool complete, sw_buffer *result);
} sw_report_form;

/* The forms: text, gcc, json, sarif, github. Their `print` appends what several main files have given, after
 * sw_check_finish; `complete`: every file named could be read. All but "text" are for programs and have no
 * colours.
 */
size_t sw_report_form_count(void);
const sw_report_form *sw_report_form_get(size_t i);
/* The form with exactly this name, or NULL. */
const sw_report_form *sw_report_form_find(const char *name);
/* As the form "text", with terminal colours: the words are the same. */
void sw_report_coloured(const sw_check_result *checked, sw_buffer *result);
/* "note", "warning", "error" */
const char *sw_severity_word(sw_severity severity);

/* ---- what each player has to play ---- */

typedef struct sw_players_table sw_players_table;

/* An empty table with the chairs of a film, which must outlive it; without a roster the names of the staves
 * make the rows. Free it with sw_players_table_free. */
sw_players_table *sw_players_table_new(const sw_film *film);
/* NULL is allowed. */
void sw_players_table_free(sw_players_table *table);
/* Adds the scores of a reading as a cue. False, and nothing is added, when it has none. See sw_cues_find. */
bool sw_players_table_add(sw_players_table *table, const sw_reading *reading);
/* A row a player: chair, instruments, cues with notes, bars and minutes with notes, lowest and highest
 * sounding note (where \transposition says how the source sounds; otherwise as it is written), shortest time
 * for each change of instrument, mutes and percussion to bring. As a page of aligned columns ... */
void sw_report_players(const sw_players_table *table, sw_buffer *result);
/* ... as tab-separated rows under a row of headings ... */
void sw_report_players_rows(const sw_players_table *table, sw_buffer *result);
/* ... and as one JSON object. */
void sw_report_players_json(const sw_players_table *table, sw_buffer *result);

#endif

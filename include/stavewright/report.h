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

#endif

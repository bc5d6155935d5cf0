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
/* The same for what checks of several main files have found. */
void sw_report_checked(const sw_check_result *checked, sw_buffer *result);

#endif

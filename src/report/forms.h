/* The forms of a report, one function each, and what those for programs share. Private to report/. */
#ifndef SW_REPORT_FORMS_H
#define SW_REPORT_FORMS_H

#include <jansson.h>

#include "stavewright/report.h"

/* `path:line:column: severity: message [rule]`, one line a finding. */
void sw_print_lines(const sw_check_result *checked, bool complete, sw_buffer *result);
void sw_print_json(const sw_check_result *checked, bool complete, sw_buffer *result);
void sw_print_sarif(const sw_check_result *checked, bool complete, sw_buffer *result);
void sw_print_github(const sw_check_result *checked, bool complete, sw_buffer *result);

/* A JSON string; bytes that are no UTF-8, as a path may have, become the replacement character. */
json_t *sw_json_text(const char *text);
/* Appends a value, indented and ended by a line feed, and frees it. */
void sw_json_print(json_t *value, sw_buffer *result);
/* Fingerprint of item i, and which one of those alike it is: "0123456789abcdef:1". */
json_t *sw_json_fingerprint(const sw_check_result *checked, size_t i);

#endif

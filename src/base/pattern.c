#include "base/pattern.h"

#define PCRE2_CODE_UNIT_WIDTH 8
#include <pcre2.h>
#include <stdio.h>
#include <stdlib.h>

struct sw_pattern {
    pcre2_code *code;
    pcre2_match_context *limits;
};

/* Steps of the search in one text: a pattern that needs more would take seconds a text. */
enum { MOST_STEPS = 200000 };

sw_pattern *sw_pattern_new(sw_slice text, char message[SW_PATTERN_MESSAGE])
{
    int number;
    PCRE2_SIZE offset;
    pcre2_code *code =
        pcre2_compile((PCRE2_SPTR)text.data, text.length, PCRE2_UTF | PCRE2_UCP, &number, &offset, NULL);
    if (code == NULL) {
        PCRE2_UCHAR reason[120];
        pcre2_get_error_message(number, reason, sizeof reason);
        snprintf(message, SW_PATTERN_MESSAGE, "%s (at character %zu)", (const char *)reason, offset + 1);
        return NULL;
    }
    sw_pattern *pattern = sw_alloc(sizeof *pattern);
    *pattern = (sw_pattern){.code = code, .limits = pcre2_match_context_create(NULL)};
    pcre2_set_match_limit(pattern->limits, MOST_STEPS);
    return pattern;
}

void sw_pattern_free(sw_pattern *pattern)
{
    if (pattern != NULL) {
        pcre2_match_context_free(pattern->limits);
        pcre2_code_free(pattern->code);
        free(pattern);
    }
}

bool sw_pattern_find(const sw_pattern *pattern, sw_slice text, size_t start, size_t *from, size_t *to)
{
    sw_slice whole = text.data == NULL ? (sw_slice){"", 0} : text;
    /* One a search: several threads may look with the same pattern. */
    pcre2_match_data *data = pcre2_match_data_create(1, NULL);
    int count =
        pcre2_match(pattern->code, (PCRE2_SPTR)whole.data, whole.length, start, 0, data, pattern->limits);
    const PCRE2_SIZE *place = pcre2_get_ovector_pointer(data);
    if (count >= 0 && from != NULL) {
        *from = place[0];
    }
    if (count >= 0 && to != NULL) {
        *to = place[1];
    }
    pcre2_match_data_free(data);
    return count >= 0;
}

#define PCRE2_CODE_UNIT_WIDTH 8
#include <pcre2.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <strings.h>

#include "stavewright/metre.h"
#include "stavewright/selection.h"

/* ---- bars ---- */

/* `12` or `12:3` or `12:5/2`; returns what is behind it, NULL when it is no place. */
static const char *parse_place(const char *text, int *bar, sw_rational *beat)
{
    char *end;
    long number = strtol(text, &end, 10);
    if (end == text || number < -100000 || number > 1000000) {
        return NULL;
    }
    *bar = (int)number;
    *beat = sw_rational_zero();
    if (*end == ':') {
        const char *start = end + 1;
        long num = strtol(start, &end, 10);
        long den = 1;
        if (end == start || num < 1 || num > 1000) {
            return NULL;
        }
        if (*end == '/') {
            start = end + 1;
            den = strtol(start, &end, 10);
            if (end == start || den < 1 || den > 1000) {
                return NULL;
            }
        }
        *beat = sw_rational_make(num, den);
    }
    return end;
}

bool sw_bar_range_parse(const char *text, sw_bar_range *range)
{
    *range = (sw_bar_range){.given = true};
    const char *rest = parse_place(text, &range->first_bar, &range->first_beat);
    if (rest == NULL) {
        return false;
    }
    range->last_bar = range->first_bar;
    range->last_beat = range->first_beat;
    if (*rest == '-') {
        rest = parse_place(rest + 1, &range->last_bar, &range->last_beat);
    }
    return rest != NULL && *rest == '\0' && range->last_bar >= range->first_bar;
}

static sw_rational beat_moment(const sw_bar *bar, sw_rational beat)
{
    sw_rational behind = sw_rational_sub(beat, sw_rational_make(1, 1));
    sw_metre metre = {bar->beats, bar->beat_value};
    return sw_rational_add(bar->start, sw_rational_mul(behind, sw_metre_beat(metre)));
}

bool sw_bar_range_moments(const sw_score *score, const sw_bar_range *range, sw_rational *from,
                          sw_rational *to)
{
    *from = sw_rational_zero();
    *to = score->length;
    if (!range->given) {
        return true;
    }
    uint32_t first = sw_score_bar_numbered(score, range->first_bar);
    uint32_t last = sw_score_bar_numbered(score, range->last_bar);
    if (first == SW_NO_INDEX || last == SW_NO_INDEX) {
        return false;
    }
    const sw_bar *a = &score->bars[first];
    const sw_bar *b = &score->bars[last];
    *from = range->first_beat.num == 0 ? a->start : beat_moment(a, range->first_beat);
    *to = sw_rational_add(b->start, b->length);
    if (range->last_beat.num != 0) { /* up to the next beat */
        sw_rational next = sw_rational_add(range->last_beat, sw_rational_make(1, 1));
        *to = sw_rational_min(*to, beat_moment(b, next));
    }
    return true;
}

/* ---- staves ---- */

typedef struct matcher {
    const char *name;
    pcre2_code *pattern; /* NULL: compare the text */
    bool any_case;
} matcher;

static bool matches_text(const matcher *m, const char *text)
{
    if (text[0] == '\0') {
        return false;
    }
    if (m->pattern == NULL) {
        return m->any_case ? strcasecmp(text, m->name) == 0 : strcmp(text, m->name) == 0;
    }
    pcre2_match_data *data = pcre2_match_data_create_from_pattern(m->pattern, NULL);
    int found = pcre2_match(m->pattern, (PCRE2_SPTR)text, strlen(text), 0, 0, data, NULL);
    pcre2_match_data_free(data);
    return found > 0;
}

static bool matches_staff(const matcher *m, const sw_reading *reading, const sw_score *score, uint32_t staff)
{
    const sw_staff *s = &score->staves[staff];
    const uint32_t names[] = {s->instrument, s->short_instrument, s->id, s->variable};
    for (size_t i = 0; i < 4; i++) {
        if (matches_text(m, sw_reading_name(reading, names[i]))) {
            return true;
        }
    }
    return false;
}

static char *list_staves(const sw_reading *reading, const char *name)
{
    sw_buffer text = {0};
    sw_buffer_format(&text, "no staff is called \"%s\"", name);
    const char *separator = "; there are: ";
    for (size_t s = 0; s < reading->score_count; s++) {
        for (uint32_t i = 0; i < reading->scores[s].staff_count; i++) {
            char label[32];
            const char *known = sw_staff_label(reading, &reading->scores[s], i, label);
            if (memmem(sw_buffer_text(&text), text.length, known, strlen(known)) == NULL) {
                sw_buffer_format(&text, "%s%s", separator, known);
                separator = ", ";
            }
        }
    }
    return text.data;
}

/* 1 found, 0 none, -1 several in one score. */
static int search(const sw_reading *reading, const matcher *m, uint32_t *score_index, uint32_t *staff)
{
    for (uint32_t s = 0; s < reading->score_count; s++) {
        uint32_t found = 0;
        for (uint32_t i = 0; i < reading->scores[s].staff_count; i++) {
            if (matches_staff(m, reading, &reading->scores[s], i)) {
                *score_index = s;
                *staff = i;
                found++;
            }
        }
        if (found > 0) {
            return found == 1 ? 1 : -1;
        }
    }
    return 0;
}

bool sw_staff_find(const sw_reading *reading, const char *name, uint32_t *score_index, uint32_t *staff,
                   char **error)
{
    matcher m = {.name = name};
    size_t length = strlen(name);
    if (length > 2 && name[0] == '/' && name[length - 1] == '/') {
        int number;
        PCRE2_SIZE where;
        m.pattern = pcre2_compile((PCRE2_SPTR)name + 1, length - 2, PCRE2_CASELESS | PCRE2_UTF, &number,
                                  &where, NULL);
        if (m.pattern == NULL) {
            PCRE2_UCHAR message[120];
            pcre2_get_error_message(number, message, sizeof message);
            if (asprintf(error, "the pattern %s can't be used: %s at character %zu", name, (char *)message,
                         where) < 0) {
                abort();
            }
            return false;
        }
    }
    int found = search(reading, &m, score_index, staff);
    if (found == 0 && m.pattern == NULL) {
        m.any_case = true;
        found = search(reading, &m, score_index, staff);
    }
    pcre2_code_free(m.pattern);
    if (found == 0) {
        *error = list_staves(reading, name);
    } else if (found < 0 &&
               asprintf(error,
                        "several staves are called \"%s\"; use the context id of the one that is meant",
                        name) < 0) {
        abort();
    }
    return found > 0;
}

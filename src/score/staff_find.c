#define PCRE2_CODE_UNIT_WIDTH 8
#include <pcre2.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <strings.h>

#include "base/nearest.h"
#include "stavewright/selection.h"

typedef struct matcher {
    sw_slice name;
    pcre2_code *pattern; /* NULL: compare the text */
    bool any_case;
} matcher;

static bool matches_text(const matcher *m, const char *text)
{
    sw_slice trimmed = sw_slice_trim(sw_slice_of(text));
    if (trimmed.length == 0) {
        return false;
    }
    if (m->pattern == NULL) {
        return trimmed.length == m->name.length &&
               (m->any_case ? strncasecmp(trimmed.data, m->name.data, trimmed.length)
                            : strncmp(trimmed.data, m->name.data, trimmed.length)) == 0;
    }
    pcre2_match_data *data = pcre2_match_data_create_from_pattern(m->pattern, NULL);
    int found = pcre2_match(m->pattern, (PCRE2_SPTR)trimmed.data, trimmed.length, 0, 0, data, NULL);
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

/* Whether the staff stands in a group, or in one within it. */
static bool is_in_group(const sw_score *score, uint32_t staff, uint32_t group)
{
    uint32_t g = score->staves[staff].group;
    while (g != SW_NO_INDEX && g != group) {
        g = score->groups[g].parent;
    }
    return g == group;
}

typedef struct found_staves {
    uint32_t score;
    uint32_t *staves;
    size_t count;
    size_t capacity;
} found_staves;

static void add_staff(found_staves *found, uint32_t staff)
{
    found->staves = sw_grow(found->staves, found->count, &found->capacity, sizeof *found->staves);
    found->staves[found->count++] = staff;
}

/* The staves with the name in the first score that has any; otherwise those of the first group with the name.
 */
static void search(const sw_reading *reading, const matcher *m, found_staves *found)
{
    for (uint32_t s = 0; s < reading->score_count && found->count == 0; s++) {
        found->score = s;
        for (uint32_t i = 0; i < reading->scores[s].staff_count; i++) {
            if (matches_staff(m, reading, &reading->scores[s], i)) {
                add_staff(found, i);
            }
        }
    }
    for (uint32_t s = 0; s < reading->score_count && found->count == 0; s++) {
        const sw_score *score = &reading->scores[s];
        found->score = s;
        for (uint32_t g = 0; g < score->group_count && found->count == 0; g++) {
            if (!matches_text(m, sw_reading_name(reading, score->groups[g].instrument)) &&
                !matches_text(m, sw_reading_name(reading, score->groups[g].id))) {
                continue;
            }
            for (uint32_t i = 0; i < score->staff_count; i++) {
                if (is_in_group(score, i, g)) {
                    add_staff(found, i);
                }
            }
        }
    }
}

/* The names by which people know the staves, each once. */
static void list_names(const sw_reading *reading, const char ***names, size_t *count)
{
    size_t capacity = 0;
    for (size_t s = 0; s < reading->score_count; s++) {
        for (uint32_t i = 0; i < reading->scores[s].staff_count; i++) {
            char label[32];
            const char *known = sw_staff_label(reading, &reading->scores[s], i, label);
            bool old = known == label; /* "staff 3" can't be asked for */
            for (size_t n = 0; n < *count && !old; n++) {
                old = strcmp((*names)[n], known) == 0;
            }
            if (!old) {
                *names = sw_grow(*names, *count, &capacity, sizeof **names);
                (*names)[(*count)++] = known;
            }
        }
    }
}

static char *say_unknown(const sw_reading *reading, sw_slice name)
{
    const char **names = NULL;
    size_t count = 0;
    list_names(reading, &names, &count);
    sw_buffer text = {0};
    sw_buffer_format(&text, "no staff is called \"%.*s\"", (int)name.length, name.data);
    const char *nearest = sw_nearest_word(name, names, count);
    if (nearest != NULL) {
        sw_buffer_format(&text, "; did you mean \"%s\"? There are", nearest);
    } else {
        sw_buffer_string(&text, count == 0 ? "" : "; there are");
    }
    for (size_t i = 0; i < count; i++) {
        sw_slice known = sw_slice_trim(sw_slice_of(names[i]));
        sw_buffer_format(&text, "%s %.*s", i == 0 ? "" : ",", (int)known.length, known.data);
    }
    free(names);
    return text.data;
}

/* The id of a staff, or else a name that tells it from others. */
static char *say_several(const sw_reading *reading, sw_slice name, const found_staves *found)
{
    const sw_score *score = &reading->scores[found->score];
    sw_buffer text = {0};
    sw_buffer_format(&text, "\"%.*s\" means %zu staves", (int)name.length, name.data, found->count);
    for (size_t i = 0; i < found->count; i++) {
        const sw_staff *staff = &score->staves[found->staves[i]];
        uint32_t word = staff->id != 0 ? staff->id : staff->variable;
        char label[32];
        const char *known = word != 0 ? sw_reading_name(reading, word)
                                      : sw_staff_label(reading, score, found->staves[i], label);
        sw_buffer_format(&text, "%s %s", i == 0 ? ":" : ",", known);
    }
    sw_buffer_string(&text, "; name one of them by its context id or variable");
    return text.data;
}

static pcre2_code *compile(sw_slice pattern, char **error)
{
    int number;
    PCRE2_SIZE where;
    pcre2_code *code = pcre2_compile((PCRE2_SPTR)pattern.data + 1, pattern.length - 2,
                                     PCRE2_CASELESS | PCRE2_UTF, &number, &where, NULL);
    if (code == NULL) {
        PCRE2_UCHAR message[120];
        pcre2_get_error_message(number, message, sizeof message);
        if (asprintf(error, "the pattern %.*s can't be used: %s at character %zu", (int)pattern.length,
                     pattern.data, (char *)message, where) < 0) {
            abort();
        }
    }
    return code;
}

static bool make_matcher(matcher *m, const char *name, char **error)
{
    *m = (matcher){.name = sw_slice_trim(sw_slice_of(name))};
    if (m->name.length > 1 && m->name.data[0] == '\\') { /* a variable as it is used */
        m->name = (sw_slice){m->name.data + 1, m->name.length - 1};
    }
    if (m->name.length > 2 && m->name.data[0] == '/' && m->name.data[m->name.length - 1] == '/') {
        m->pattern = compile(m->name, error);
        return m->pattern != NULL;
    }
    return true;
}

bool sw_staff_find(const sw_reading *reading, const char *name, uint32_t *score_index, uint32_t *staff,
                   char **error)
{
    matcher m;
    if (!make_matcher(&m, name, error)) {
        return false;
    }
    found_staves found = {0};
    search(reading, &m, &found);
    if (found.count == 0 && m.pattern == NULL) {
        m.any_case = true;
        search(reading, &m, &found);
    }
    pcre2_code_free(m.pattern);
    if (found.count == 1) {
        *score_index = found.score;
        *staff = found.staves[0];
    } else {
        *error = found.count == 0 ? say_unknown(reading, m.name) : say_several(reading, m.name, &found);
    }
    bool one = found.count == 1;
    free(found.staves);
    return one;
}

bool sw_staves_find(const sw_reading *reading, uint32_t score, const char *name, bool *found, char **error)
{
    matcher m;
    if (!make_matcher(&m, name, error)) {
        return false;
    }
    m.any_case = true;
    for (uint32_t i = 0; i < reading->scores[score].staff_count; i++) {
        found[i] = matches_staff(&m, reading, &reading->scores[score], i);
    }
    pcre2_code_free(m.pattern);
    return true;
}

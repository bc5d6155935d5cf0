#include <string.h>

#include "score/words.h"

static bool is_digit(char c)
{
    return c >= '0' && c <= '9';
}

static bool is_name_byte(char c)
{
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (unsigned char)c >= 0x80 || c == '-' ||
           c == '_';
}

/* A whole number; one that is too large for a duration is -1. */
static size_t read_number(sw_slice text, size_t at, int32_t *number)
{
    int64_t value = 0;
    while (at < text.length && is_digit(text.data[at])) {
        value = value > INT32_MAX ? value : value * 10 + (text.data[at] - '0');
        at++;
    }
    *number = value > INT32_MAX ? -1 : (int32_t)value;
    return at;
}

static int log_of(int32_t value)
{
    for (int log = 0; log < 30; log++) {
        if (value == (int32_t)1 << log) {
            return log;
        }
    }
    return -100; /* 3, 5, 12 ...: no note value */
}

static size_t read_value(sw_slice text, sw_word *word)
{
    static const struct {
        const char *text;
        int8_t log;
    } long_values[] = {{"\\breve", -1}, {"\\longa", -2}, {"\\maxima", -3}};
    size_t at = 0;
    if (text.length > 0 && text.data[0] == '\\') {
        for (size_t i = 0; i < 3; i++) {
            if (sw_slice_starts(text, long_values[i].text)) {
                word->duration.log = long_values[i].log;
                at = strlen(long_values[i].text);
            }
        }
    } else {
        int32_t value;
        at = read_number(text, 0, &value);
        int log = at == 0 ? -100 : log_of(value);
        if (log < -3) {
            return 0;
        }
        word->duration.log = (int8_t)log;
    }
    if (at == 0) {
        return 0;
    }
    word->has_value = true;
    for (; at < text.length && text.data[at] == '.'; at++) {
        word->too_large = word->duration.dots >= SW_MAX_DOTS;
        word->duration.dots = (uint8_t)(word->duration.dots + !word->too_large);
    }
    return at;
}

size_t sw_word_duration(sw_slice text, sw_word *word)
{
    size_t at = read_value(text, word);
    while (at + 1 < text.length && text.data[at] == '*' && is_digit(text.data[at + 1])) {
        int32_t num;
        int32_t den = 1;
        at = read_number(text, at + 1, &num);
        if (at + 1 < text.length && text.data[at] == '/' && is_digit(text.data[at + 1])) {
            at = read_number(text, at + 1, &den);
        }
        sw_rational factor =
            sw_rational_mul(sw_rational_make(word->duration.factor_num, word->duration.factor_den),
                            sw_rational_make(num, den));
        if (num < 0 || den < 0 || !sw_rational_valid(factor) || factor.num > INT32_MAX ||
            factor.den > INT32_MAX) {
            factor = sw_rational_make(1, 1);
            word->too_large = true;
        }
        word->duration.factor_num = (int32_t)factor.num;
        word->duration.factor_den = (int32_t)factor.den;
        word->has_factor = true;
    }
    return at;
}

static size_t read_marks(sw_slice text, size_t at, int *marks)
{
    while (at < text.length && (text.data[at] == '\'' || text.data[at] == ',')) {
        *marks += text.data[at] == '\'' ? 1 : -1;
        at++;
    }
    return at;
}

sw_word sw_word_decode(sw_slice text)
{
    sw_word word = {.duration = {.factor_num = 1, .factor_den = 1}};
    size_t at = 0;
    while (at < text.length) {
        if (!is_name_byte(text.data[at]) &&
            !(text.data[at] == '.' && at + 1 < text.length)) { /* a path: Staff.instrumentName */
            break;
        }
        at++;
    }
    word.name = (sw_slice){text.data, at};
    size_t behind = read_marks(text, at, &word.octave_marks);
    word.has_marks = behind > at;
    at = behind;
    while (at < text.length && (text.data[at] == '!' || text.data[at] == '?')) {
        word.reminder = word.reminder || text.data[at] == '!';
        word.cautionary = word.cautionary || text.data[at] == '?';
        at++;
    }
    if (at < text.length && text.data[at] == '=') {
        word.has_check = true;
        at = read_marks(text, at + 1, &word.check_marks);
    }
    sw_word_duration((sw_slice){text.data + at, text.length - at}, &word);
    return word;
}

static size_t slot_of(sw_slice name)
{
    uint32_t h = 2166136261u;
    for (size_t i = 0; i < name.length; i++) {
        h = (h ^ (unsigned char)name.data[i]) * 16777619u;
    }
    return (h ^ h >> 15) & 511;
}

void sw_note_table_fill(sw_note_table *table, const sw_language *language)
{
    memset(table, 0, sizeof *table);
    for (size_t i = 0; i < language->count; i++) {
        size_t slot = slot_of(sw_slice_of(language->notes[i].name));
        while (table->slots[slot] != NULL) {
            slot = (slot + 1) & 511;
        }
        table->slots[slot] = &language->notes[i];
    }
}

const sw_note_name *sw_note_table_find(const sw_note_table *table, sw_slice name)
{
    for (size_t slot = slot_of(name); table->slots[slot] != NULL; slot = (slot + 1) & 511) {
        if (sw_slice_is(name, table->slots[slot]->name)) {
            return table->slots[slot];
        }
    }
    return NULL;
}

const sw_language *sw_language_find(sw_slice name)
{
    for (size_t i = 0; i < sw_language_count; i++) {
        if (sw_slice_is(name, sw_languages[i].name)) {
            return &sw_languages[i];
        }
    }
    return NULL;
}

/* The text of bars that come in: what the neighbours' habits are, and what follows them. */
#include <ctype.h>
#include <stdlib.h>
#include <string.h>

#include "write/bars.h"
#include "write/division.h"

static const sw_music *at(const sw_bar_walk *w, uint32_t music)
{
    return &w->reading->music[music];
}

static const sw_text *text_of(const sw_bar_walk *w, uint32_t music)
{
    return w->reading->files[at(w, music)->file].text;
}

/* ---- what inherits ---- */

static void add_value(sw_bar_walk *w, uint32_t file, uint32_t offset, uint32_t item, sw_duration value)
{
    w->values = sw_grow(w->values, w->value_count, &w->value_capacity, sizeof *w->values);
    w->values[w->value_count++] = (sw_bar_value){file, offset, item, value};
}

/* The passage that takes an item out; NULL when it stays. */
static const sw_bar_gap *gap_of(const sw_bar_walk *w, uint32_t item)
{
    for (size_t i = 0; i < w->gap_count; i++) {
        const sw_bar_gap *gap = &w->gaps[i];
        if (gap->file == at(w, item)->file && gap->from <= at(w, item)->start &&
            at(w, item)->start < gap->to) {
            return gap;
        }
    }
    return NULL;
}

/* The item behind a place inherits another value now: it gets its own. */
static void mend_value(sw_bar_walk *w, uint32_t file, uint32_t offset, sw_duration value)
{
    uint32_t next = sw_item_order_behind(w->order, w->reading, file, offset);
    for (const sw_bar_gap *gap; next != SW_NO_INDEX && (gap = gap_of(w, next)) != NULL;) {
        next = sw_item_order_behind(w->order, w->reading, file, gap->to);
    }
    if (next == SW_NO_INDEX || (at(w, next)->flags & SW_MUSIC_WRITTEN_VALUE) != 0 ||
        sw_duration_equal(sw_music_duration(at(w, next)), value)) {
        return;
    }
    char text[SW_DURATION_TEXT];
    uint32_t body = sw_item_body_end(w->reading, next);
    sw_bar_edit_add(w, file, body, body,
                    sw_slice_of(sw_duration_print(sw_music_duration(at(w, next)), text)));
}

/* The value that is inherited across a passage that goes. */
static sw_duration value_before(const sw_bar_walk *w, const sw_bar_gap *gap)
{
    uint32_t item = sw_item_order_before(w->order, w->reading, gap->file, gap->from);
    for (const sw_bar_gap *other; item != SW_NO_INDEX && (other = gap_of(w, item)) != NULL;) {
        item = sw_item_order_before(w->order, w->reading, gap->file, other->from);
    }
    for (size_t i = 0; i < w->value_count; i++) {
        if (item != SW_NO_INDEX && w->values[i].item == item) {
            return w->values[i].value;
        }
    }
    return item == SW_NO_INDEX ? sw_duration_quarter() : sw_music_duration(at(w, item));
}

void sw_bar_mend_values(sw_bar_walk *w)
{
    for (size_t i = 0; i < w->value_count; i++) {
        mend_value(w, w->values[i].file, w->values[i].offset, w->values[i].value);
    }
    for (size_t i = 0; i < w->gap_count; i++) {
        mend_value(w, w->gaps[i].file, w->gaps[i].to, value_before(w, &w->gaps[i]));
    }
}

/* ---- silence that becomes longer ---- */

static bool is_blank(char c)
{
    return c == ' ' || c == '\t';
}

/* The digits of a last factor *4 in the text of an item; 0 digits when it has none. */
static size_t last_factor(sw_slice text, int64_t *factor)
{
    size_t digits = 0;
    *factor = 0;
    while (digits < text.length && digits < 6 &&
           isdigit((unsigned char)text.data[text.length - 1 - digits])) {
        digits++;
    }
    size_t star = text.length - digits;
    while (star > 0 && is_blank(text.data[star - 1])) {
        star--;
    }
    if (digits == 0 || star == 0 || text.data[star - 1] != '*') {
        return 0;
    }
    for (size_t i = text.length - digits; i < text.length; i++) {
        *factor = *factor * 10 + (text.data[i] - '0');
    }
    return digits;
}

static bool is_silence(const sw_bar_walk *w, uint32_t item)
{
    return at(w, item)->kind == SW_MUSIC_FULL_REST || at(w, item)->kind == SW_MUSIC_SKIP;
}

bool sw_bar_grow(sw_bar_walk *w, uint32_t item, sw_rational by)
{
    const sw_music *m = at(w, item);
    int64_t factor;
    size_t digits = is_silence(w, item) ? last_factor(sw_music_slice(w->reading, item), &factor) : 0;
    if (digits == 0 || factor == 0) {
        return false;
    }
    sw_rational unit = sw_rational_div(sw_duration_length(sw_music_duration(m)), sw_rational_make(factor, 1));
    sw_rational more = sw_rational_div(by, unit);
    if (more.den != 1 || factor + more.num < 1) {
        return false;
    }
    sw_duration value = sw_music_duration(m);
    sw_rational all = sw_rational_make(value.factor_num * (factor + more.num), value.factor_den * factor);
    value.factor_num = (int32_t)all.num;
    value.factor_den = (int32_t)all.den;
    const char *put = sw_arena_format(w->draft->arena, "%lld", (long long)(factor + more.num));
    sw_bar_edit_add(w, m->file, m->end - (uint32_t)digits, m->end, sw_slice_of(put));
    if (sw_music_slice(w->reading, item).data[0] != '\\') { /* nothing inherits from \skip 1*4 */
        add_value(w, m->file, m->end, item, value);
    }
    return true;
}

/* ---- where ---- */

/* What stands at the place where bars come in. */
typedef struct place {
    uint32_t file;
    uint32_t end; /* behind the music before */
    uint32_t
        offset;   /* where the new text goes: behind the bar check, and behind a comment at the line's end */
    bool checked; /* a bar check stands between */
    bool ends_line;  /* nothing follows on the line */
    bool one_a_line; /* the bar before has a line of its own */
    bool opens;      /* the music begins on this line, behind something else */
    uint32_t number; /* where the digits of a comment that is only a number stand; 0: there is none */
    uint32_t number_end;
} place;

static bool ends_line(const sw_text *text, uint32_t at)
{
    return at >= text->length || text->bytes[at] == '\n' || text->bytes[at] == '\r';
}

/* A comment up to the end of its line that is only a number: where the digits stand. */
static bool is_number(const sw_text *text, uint32_t from, uint32_t *digits, uint32_t *end)
{
    while (from < text->length && (is_blank(text->bytes[from]) || text->bytes[from] == '%')) {
        from++;
    }
    *digits = *end = from;
    while (*end < text->length && isdigit((unsigned char)text->bytes[*end]) && *end - from < 6) {
        (*end)++;
    }
    uint32_t rest = *end;
    while (rest < text->length && is_blank(text->bytes[rest])) {
        rest++;
    }
    return *end > from && ends_line(text, rest);
}

/* What follows on the line: blanks, perhaps a comment. */
static void look_behind(const sw_text *text, place *p)
{
    uint32_t at = p->offset;
    while (at < text->length && is_blank(text->bytes[at])) {
        at++;
    }
    bool comment =
        at < text->length && text->bytes[at] == '%' && !(at + 1 < text->length && text->bytes[at + 1] == '{');
    p->ends_line = comment || ends_line(text, at);
    if (comment) {
        uint32_t digits;
        uint32_t end;
        if (is_number(text, at, &digits, &end)) {
            p->number = digits;
            p->number_end = end;
        }
        while (!ends_line(text, at)) {
            at++;
        }
        p->offset = at;
    }
}

/* Commands that decide how long bars are: what comes in stands before them. */
static bool decides_bars(const sw_music *m)
{
    return m->kind == SW_MUSIC_TIME || m->kind == SW_MUSIC_PARTIAL || m->kind == SW_MUSIC_CADENZA;
}

static place find_place(const sw_bar_walk *w, uint32_t sequence, uint32_t child)
{
    const sw_text *text = text_of(w, child);
    place p = {.file = at(w, child)->file, .end = sw_node_end(w->reading, child)};
    p.offset = p.end;
    for (uint32_t c = at(w, child)->next; c != SW_NO_INDEX && at(w, c)->file == p.file; c = at(w, c)->next) {
        if (at(w, c)->kind == SW_MUSIC_BAR_CHECK) {
            p.checked = true;
            p.offset = at(w, c)->end;
        } else if (at(w, c)->kind <= SW_MUSIC_UNCERTAIN || decides_bars(at(w, c))) {
            break; /* music, or what belongs behind the new bars */
        }
    }
    /* One bar a line: the only bar check between the beginning of the line and here is the one found. */
    uint32_t line = p.offset;
    while (line > 0 && !ends_line(text, line - 1)) {
        line--;
    }
    size_t checks = 0;
    for (uint32_t c = at(w, sequence)->first; c != SW_NO_INDEX; c = at(w, c)->next) {
        const sw_music *m = at(w, c);
        checks +=
            m->kind == SW_MUSIC_BAR_CHECK && m->file == p.file && m->start >= line && m->end <= p.offset;
    }
    uint32_t begin = line;
    while (begin < text->length && is_blank(text->bytes[begin])) {
        begin++;
    }
    p.opens = begin <= at(w, sequence)->start;
    p.one_a_line = checks == (p.checked ? 1 : 0) && !p.opens;
    look_behind(text, &p);
    return p;
}

/* Whether the line has bar checks at all. */
static bool has_checks(const sw_bar_walk *w, uint32_t sequence)
{
    for (uint32_t c = at(w, sequence)->first; c != SW_NO_INDEX; c = at(w, c)->next) {
        if (at(w, c)->kind == SW_MUSIC_BAR_CHECK) {
            return true;
        }
    }
    return false;
}

/* ---- what is written ---- */

/* How silence is written beside some music: R, as skips in a line of skips, \skip among words and figures. */
static const char *silence_beside(const sw_bar_walk *w, uint32_t music)
{
    const sw_music *m = at(w, music);
    while (!sw_is_item(m) && m->first != SW_NO_INDEX) { /* the last item in it */
        uint32_t last = SW_NO_INDEX;
        for (uint32_t c = m->first; c != SW_NO_INDEX; c = at(w, c)->next) {
            bool music_itself = at(w, c)->kind <= SW_MUSIC_UNCERTAIN && at(w, c)->kind != SW_MUSIC_EMPTY;
            last = music_itself ? c : last;
        }
        if (last == SW_NO_INDEX) {
            break;
        }
        m = at(w, last);
    }
    if (m->kind == SW_MUSIC_LYRIC) {
        return "\\skip ";
    }
    if (m->kind == SW_MUSIC_SKIP) {
        sw_slice text = sw_music_slice(w->reading, (uint32_t)(m - w->reading->music));
        return text.length > 0 && text.data[0] == '\\' ? "\\skip " : "s";
    }
    return (m->flags & SW_MUSIC_CHORD_MODE) != 0 ? "s" : "R";
}

/* Comments that number the bars behind a place, to the end of the sequence, count on from a number. */
static void renumber(sw_bar_walk *w, uint32_t child, const place *p, long before, long by)
{
    const sw_text *text = w->reading->files[p->file].text;
    for (uint32_t c = at(w, child)->next; c != SW_NO_INDEX; c = at(w, c)->next) {
        const sw_music *m = at(w, c);
        uint32_t from = m->end;
        while (from < text->length && is_blank(text->bytes[from])) {
            from++;
        }
        uint32_t digits;
        uint32_t end;
        if (m->kind != SW_MUSIC_BAR_CHECK || m->file != p->file || m->end <= p->offset ||
            from >= text->length || text->bytes[from] != '%' || !is_number(text, from, &digits, &end)) {
            continue;
        }
        long number = strtol(text->bytes + digits, NULL, 10);
        if (number > before) { /* others don't count bars */
            const char *put = sw_arena_format(w->draft->arena, "%ld", number + by);
            sw_bar_edit_add(w, p->file, digits, end, sw_slice_of(put));
            before = number;
        }
    }
}

void sw_bar_put_behind(sw_bar_walk *w, uint32_t sequence, uint32_t child)
{
    uint32_t next = at(w, child)->next;
    while (next != SW_NO_INDEX && at(w, next)->kind == SW_MUSIC_BAR_CHECK) {
        next = at(w, next)->next;
    }
    bool marked = at(w, child)->first != SW_NO_INDEX; /* R1*4\fermataMarkup: whose bars would be marked? */
    place p = find_place(w, sequence, child);
    bool numbered = p.number != 0;
    sw_rational more = sw_rational_mul(w->bar, sw_rational_make(w->count, 1));
    if (!marked && !numbered && sw_bar_grow(w, child, more)) {
        return;
    }
    if (!numbered && next != SW_NO_INDEX && at(w, next)->first == SW_NO_INDEX &&
        at(w, next)->file == p.file && sw_bar_grow(w, next, more)) {
        return;
    }
    const sw_text *text = w->reading->files[p.file].text;
    const char *newline = sw_text_newline(text);
    bool next_line =
        p.opens && next != SW_NO_INDEX && at(w, next)->file == p.file; /* is indented as music is */
    sw_slice indent = sw_text_indent(text, next_line ? at(w, next)->start : p.offset);
    bool checks = p.checked || has_checks(w, sequence);
    bool lines = p.ends_line && p.one_a_line;
    const char *letter = silence_beside(w, child);
    sw_duration value = sw_duration_of(w->bar);
    int32_t rows = lines ? w->count : 1;
    value.factor_num *= lines ? 1 : w->count;
    char written[SW_DURATION_TEXT];
    sw_duration_print(sw_duration_of(w->bar), written);
    const char *bars = lines || w->count == 1 ? "" : sw_arena_format(w->draft->arena, "*%d", (int)w->count);
    sw_buffer out = {0};
    if (checks && !p.checked) {
        sw_bar_edit_add(w, p.file, p.end, p.end, sw_slice_of(" |"));
    }
    long number = numbered ? strtol(text->bytes + p.number, NULL, 10) : 0;
    for (int32_t i = 0; i < rows; i++) {
        if (p.ends_line) {
            sw_buffer_format(&out, "%s%.*s", newline, (int)indent.length, indent.data);
        } else {
            sw_buffer_char(&out, ' ');
        }
        bool check = checks && (p.checked || i + 1 < rows);
        sw_buffer_format(&out, "%s%s%s%s", letter, written, bars, check ? " |" : "");
        if (numbered && lines) {
            uint32_t from = p.number;
            while (from > 0 && (is_blank(text->bytes[from - 1]) || text->bytes[from - 1] == '%')) {
                from--;
            }
            sw_buffer_append(&out, sw_text_slice(text, from, p.number));
            sw_buffer_format(&out, "%ld", number + i + 1);
        }
    }
    sw_bar_edit_add(w, p.file, p.offset, p.offset, sw_buffer_slice(&out));
    sw_buffer_free(&out);
    if (numbered) {
        renumber(w, child, &p, number, w->count);
    }
    if (letter[0] != '\\') {
        add_value(w, p.file, p.offset, SW_NO_INDEX, value);
    }
}

/* ---- what goes ---- */

bool sw_bar_line_command(sw_slice text)
{
    static const char *const commands[] = {"\\bar ",      "\\bar\"",       "\\break",   "\\noBreak",
                                           "\\pageBreak", "\\noPageBreak", "\\pageTurn"};
    for (size_t i = 0; i < sizeof commands / sizeof commands[0]; i++) {
        if (sw_slice_starts(text, commands[i])) {
            return true;
        }
    }
    return false;
}

void sw_bar_take_out(sw_bar_walk *w, uint32_t first, uint32_t last)
{
    const sw_text *text = text_of(w, first);
    place p = {.file = at(w, first)->file, .end = sw_node_end(w->reading, last)};
    for (uint32_t c = at(w, last)->next; at(w, last)->kind == SW_MUSIC_LYRIC && c != SW_NO_INDEX;
         c = at(w, c)->next) {
        if (at(w, c)->kind == SW_MUSIC_LYRIC) { /* the next syllable has its length from those that go */
            char value[SW_DURATION_TEXT];
            if ((at(w, c)->flags & SW_MUSIC_WRITTEN_VALUE) == 0) {
                sw_duration_print(sw_music_duration(at(w, c)), value);
                sw_bar_edit_add(w, at(w, c)->file, at(w, c)->end, at(w, c)->end, sw_slice_of(value));
            }
            break;
        }
    }
    sw_bar_gap gap = {first, last, p.file, sw_run_begin(w->reading, first), p.end};
    w->gaps = sw_grow(w->gaps, w->gap_count, &w->gap_capacity, sizeof *w->gaps);
    w->gaps[w->gap_count++] = gap;
    p.offset = p.end;
    look_behind(text, &p);
    uint32_t from = gap.from;
    while (from > 0 && is_blank(text->bytes[from - 1])) {
        from--;
    }
    bool begins_line = from == 0 || ends_line(text, from - 1);
    uint32_t to = p.ends_line ? p.offset : p.end;
    if (p.ends_line && begins_line) { /* whole lines */
        to = to < text->length && text->bytes[to] == '\r' ? to + 1 : to;
        to = to < text->length && text->bytes[to] == '\n' ? to + 1 : to;
    } else if (!p.ends_line) { /* one blank of two stays */
        from = gap.from;
        while (to < text->length && is_blank(text->bytes[to])) {
            to++;
        }
    }
    sw_bar_edit_add(w, p.file, from, to, (sw_slice){"", 0});
    if (p.number != 0) {
        renumber(w, last, &p, strtol(text->bytes + p.number, NULL, 10), w->count);
    }
}

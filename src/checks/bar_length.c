/* Bar checks that do not stand on a bar line.
 *
 * The compiler's rule: at a bar check the position in the bar must be 0; where it is not, the compiler warns
 * and counts on as before. So one bar that does not add up puts every later bar check of its voice out of
 * step. Only the first of such a run is reported, with the bar that went wrong: what was written between it
 * and the bar check before it. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "checks/rules.h"
#include "checks/say.h"

/* How far a voice (a staff, where the voice was not asked for) is out of step. */
typedef struct line {
    uint32_t staff;
    uint32_t voice;
    uint32_t home;         /* of the latest bar check that was off: see home_of */
    sw_rational off;       /* by how much it was off; 0: the voice is in step */
    sw_rational off_metre; /* what a bar held there */
} line;

typedef struct lines {
    line *items;
    size_t count;
    size_t capacity;
} lines;

/* The variable in which something is written, as the frame of its use; SW_NO_INDEX: in none. */
static uint32_t home_of(const sw_check *check, const sw_score *score, const sw_setting *setting)
{
    uint32_t frame = setting->frame;
    while (frame != SW_NO_INDEX &&
           check->reading->music[score->frames[frame].music].kind != SW_MUSIC_REFERENCE) {
        frame = score->frames[frame].parent;
    }
    return frame;
}

static line *line_of(lines *list, const sw_setting *setting)
{
    for (size_t i = 0; i < list->count; i++) {
        if (list->items[i].staff == setting->staff && list->items[i].voice == setting->voice) {
            return &list->items[i];
        }
    }
    list->items = sw_grow(list->items, list->count, &list->capacity, sizeof *list->items);
    list->items[list->count] =
        (line){setting->staff, setting->voice, SW_NO_INDEX, sw_rational_zero(), {1, 1}};
    return &list->items[list->count++];
}

/* How far behind the last bar line: in a short first bar positions count up to 0. */
static sw_rational behind(sw_rational position, sw_rational metre)
{
    return position.num < 0 ? sw_rational_add(position, metre) : position;
}

/* The same amount behind a bar line, or the same amount before one. */
static bool same_amount(const line *l, sw_rational off, sw_rational metre)
{
    return sw_rational_equal(l->off, off) ||
           sw_rational_equal(sw_rational_sub(l->off_metre, l->off), sw_rational_sub(metre, off));
}

/* The bar check before one, if possible in the same variable: another line of the staff (a variable with the
 * metre, say) may have bar checks of its own. NULL: there is none. */
static const sw_setting *bar_check_before(const sw_check *check, const sw_score *score, size_t index)
{
    const sw_setting *setting = &score->settings[index];
    const sw_setting *other = NULL;
    uint32_t home = home_of(check, score, setting);
    for (size_t i = index; i-- > 0;) {
        const sw_setting *s = &score->settings[i];
        if (check->reading->music[s->music].kind != SW_MUSIC_BAR_CHECK || s->staff != setting->staff ||
            s->voice != setting->voice || sw_rational_compare(s->onset, setting->onset) >= 0) {
            continue;
        }
        if (home_of(check, score, s) == home) {
            return s;
        }
        other = other == NULL ? s : other;
    }
    return other;
}

/* The next bar check behind one in the same variable; NULL: none. */
static const sw_setting *bar_check_after(const sw_check *check, const sw_score *score, size_t index)
{
    const sw_setting *setting = &score->settings[index];
    uint32_t home = home_of(check, score, setting);
    for (size_t i = index + 1; i < score->setting_count; i++) {
        const sw_setting *s = &score->settings[i];
        if (check->reading->music[s->music].kind == SW_MUSIC_BAR_CHECK && s->staff == setting->staff &&
            s->voice == setting->voice && sw_rational_compare(s->onset, setting->onset) > 0 &&
            home_of(check, score, s) == home) {
            return s;
        }
    }
    return NULL;
}

/* The source line where the music between two bar checks begins; 0 when it is not before the second one in
 * its file. */
static uint32_t first_line(const sw_check *check, const sw_score *score, const sw_setting *setting,
                           const sw_setting *before)
{
    const sw_music *end = &check->reading->music[setting->music];
    const sw_music *begin = before == NULL ? NULL : &check->reading->music[before->music];
    uint32_t after = begin != NULL && begin->file == end->file && begin->start < end->start ? begin->end : 0;
    uint32_t first = UINT32_MAX;
    for (size_t i = 0; i < score->event_count; i++) {
        const sw_event *e = &score->events[i];
        const sw_music *m = sw_event_written(check->reading, e);
        bool here = m->file == end->file && m->start >= after && m->start < end->start &&
                    (setting->staff == SW_NO_INDEX || score->voices[e->voice].staff == setting->staff) &&
                    sw_rational_compare(e->onset, setting->onset) < 0 &&
                    (before == NULL || sw_rational_compare(e->onset, before->onset) >= 0);
        if (here && m->start < first) {
            first = m->start;
        }
    }
    return first == UINT32_MAX ? 0 : sw_text_line(check->reading->files[end->file].text, first);
}

/* What a run of bars should hold, and how many bars it is. */
typedef struct room {
    sw_rational length;
    int64_t bars;
} room;

static sw_rational distance(sw_rational a, sw_rational b)
{
    return sw_rational_compare(a, b) > 0 ? sw_rational_sub(a, b) : sw_rational_sub(b, a);
}

/* From a bar line to the one that is nearest to what was written. */
static room room_from_line(const sw_score *score, uint32_t first, sw_rational from, sw_rational held)
{
    room best = {sw_rational_zero(), 0};
    for (uint32_t i = first; i < score->bar_count; i++) {
        const sw_bar *b = &score->bars[i];
        bool last = i + 1 == score->bar_count;
        sw_rational end = sw_rational_add(b->start, last ? b->metre : b->length);
        room next = {sw_rational_sub(end, from), (int64_t)(i - first) + 1};
        if (best.bars > 0 &&
            sw_rational_compare(distance(next.length, held), distance(best.length, held)) >= 0) {
            break;
        }
        best = next;
    }
    return best;
}

/* Where the voice is out of step already: a bar of the usual length would have kept the amount. */
static room room_out_of_step(sw_rational metre, sw_rational held)
{
    sw_rational half = sw_rational_make(1, 2);
    int64_t bars = sw_rational_floor(sw_rational_add(sw_rational_div(held, metre), half));
    bars = bars < 1 ? 1 : bars;
    return (room){sw_rational_mul(metre, sw_rational_make(bars, 1)), bars};
}

/* "bar 3", "the pick-up", "the 4 bars from bar 3 on" */
static void say_bars(const sw_score *score, uint32_t first, int64_t bars, sw_buffer *text)
{
    int number = first == SW_NO_INDEX ? 1 : score->bars[first].number;
    if (bars > 1) {
        sw_buffer_format(text, "the %lld bars from bar %d on", (long long)bars, number);
    } else if (number == 0) {
        sw_buffer_string(text, "the pick-up");
    } else {
        sw_buffer_format(text, "bar %d", number);
    }
}

/* "4/4" for a bar of that metre, otherwise the plain length. */
static void say_room(const sw_score *score, uint32_t bar, const room *r, char text[SW_RATIONAL_TEXT])
{
    const sw_bar *b = bar == SW_NO_INDEX ? NULL : &score->bars[bar];
    if (b != NULL && r->bars == 1 &&
        sw_rational_equal(r->length, sw_rational_make(b->beats, b->beat_value))) {
        snprintf(text, SW_RATIONAL_TEXT, "%d/%d", b->beats, b->beat_value);
    } else {
        sw_rational_print(r->length, text);
    }
}

/* ---- a bar check at the wrong note -----------------------------------------------------------------------
 */

/* The first byte of the note or rest with which a bar begins, of those written in a stretch of a file; 0:
 * none, or with grace notes. */
static uint32_t first_byte(const sw_check *check, const sw_score *score, const sw_setting *setting,
                           uint32_t from, uint32_t to, sw_rational onset)
{
    uint32_t file = check->reading->music[setting->music].file;
    uint32_t found = 0;
    for (size_t i = 0; i < score->event_count; i++) {
        const sw_event *e = &score->events[i];
        const sw_music *m = sw_event_written(check->reading, e);
        bool here = m->file == file && m->start >= from && m->start < to &&
                    (setting->voice == SW_NO_INDEX || e->voice == setting->voice) &&
                    (setting->staff == SW_NO_INDEX || score->voices[e->voice].staff == setting->staff) &&
                    sw_rational_equal(e->onset, onset);
        if (here && (e->flags & SW_EVENT_GRACE) != 0) {
            return 0;
        }
        found = here && (found == 0 || m->start < found) ? m->start : found;
    }
    return found;
}

static bool is_blank(char byte)
{
    return byte == ' ' || byte == '\t' || byte == '\n' || byte == '\r';
}

/* Behind what is written before a byte, white space and remarks left out. */
static uint32_t end_before(const sw_syntax *syntax, uint32_t byte)
{
    while (byte > 0 && is_blank(syntax->text->bytes[byte - 1])) {
        byte--;
    }
    for (uint32_t i = 1; i < syntax->count && syntax->nodes[i].start < byte; i++) {
        if (syntax->nodes[i].kind == SW_NODE_COMMENT && syntax->nodes[i].end >= byte) {
            return end_before(syntax, syntax->nodes[i].start);
        }
    }
    return byte;
}

/* Moves a bar check in front of the note at `note`, on the line where the bar before it ends. */
static void offer_move(sw_check *check, const sw_syntax *syntax, const sw_music *m, uint32_t note)
{
    const sw_text *text = syntax->text;
    const char *bytes = text->bytes;
    sw_fix_edit edits[2] = {{m->start, m->end, ""}, {note, note, "| "}};
    while (edits[0].end < text->length && (bytes[edits[0].end] == ' ' || bytes[edits[0].end] == '\t')) {
        edits[0].end++;
    }
    bool line_end =
        edits[0].end == text->length || bytes[edits[0].end] == '\n' || bytes[edits[0].end] == '\r';
    while (line_end && (bytes[edits[0].start - 1] == ' ' || bytes[edits[0].start - 1] == '\t')) {
        edits[0].start--;
    }
    uint32_t end = end_before(syntax, note);
    if (sw_text_line(text, end) != sw_text_line(text, note)) {
        edits[1] = (sw_fix_edit){end, end, " |"};
    }
    if (edits[1].start < edits[0].start || edits[1].start > edits[0].end) {
        sw_fix_by_text(check, edits, 2, "the bar check goes to the bar line");
    }
}

/* Where the bars before and behind add up together, only the bar check stands at the wrong note. */
static void offer(sw_check *check, const sw_score *score, size_t index, const sw_setting *before)
{
    const sw_setting *setting = &score->settings[index];
    const sw_setting *behind_it = bar_check_after(check, score, index);
    uint32_t bar = sw_score_bar_at(score, before == NULL ? sw_rational_zero() : before->onset);
    bool in_step = before == NULL || (sw_rational_is_zero(before->position) &&
                                      home_of(check, score, before) == home_of(check, score, setting));
    if (behind_it == NULL || bar == SW_NO_INDEX || bar + 1 >= score->bar_count || !in_step ||
        !sw_rational_is_zero(behind_it->position)) {
        return;
    }
    const sw_bar *second = &score->bars[bar + 1];
    const sw_music *first = before == NULL ? NULL : &check->reading->music[before->music];
    const sw_music *m = &check->reading->music[setting->music];
    const sw_music *last = &check->reading->music[behind_it->music];
    if (!sw_rational_equal(behind_it->onset, sw_rational_add(second->start, second->length)) ||
        m->file != last->file || (first != NULL && first->file != m->file)) {
        return;
    }
    uint32_t note =
        first_byte(check, score, setting, first == NULL ? 0 : first->end, last->start, second->start);
    if (note != 0) {
        offer_move(check, check->reading->files[m->file].syntax, m, note);
    }
}

/* ---- telling ---------------------------------------------------------------------------------------------
 */

static void report(sw_check *check, const sw_score *score, size_t index)
{
    const sw_setting *setting = &score->settings[index];
    const sw_music *m = &check->reading->music[setting->music];
    const sw_setting *before = bar_check_before(check, score, index);
    bool in_step = before == NULL || sw_rational_is_zero(before->position);
    sw_rational from = before == NULL ? sw_rational_zero() : before->onset;
    sw_rational held = sw_rational_sub(setting->onset, from);
    uint32_t bar = sw_score_bar_at(score, from);
    room wanted = {sw_rational_make(1, 1), 1};
    if (bar != SW_NO_INDEX) {
        wanted =
            in_step ? room_from_line(score, bar, from, held) : room_out_of_step(score->bars[bar].metre, held);
    }
    bool too_long = sw_rational_compare(held, wanted.length) > 0;
    sw_buffer text = {0};
    char label[32];
    char fraction[SW_RATIONAL_TEXT];
    if (setting->staff != SW_NO_INDEX) {
        sw_buffer_format(&text, "%s: ", sw_staff_label(check->reading, score, setting->staff, label));
    }
    sw_buffer_format(&text, "bar check is %s %s the bar line; ",
                     sw_rational_print(distance(held, wanted.length), fraction),
                     too_long ? "behind" : "before");
    say_bars(score, bar, wanted.bars, &text);
    uint32_t begins = first_line(check, score, setting, before);
    if (begins > 0) {
        sw_buffer_format(&text, ", from line %u,", begins);
    }
    sw_buffer_format(&text, " %s %s of ", wanted.bars > 1 ? "hold" : "holds",
                     sw_rational_print(held, fraction));
    say_room(score, bar, &wanted, fraction);
    sw_buffer_format(&text, "%s: %s", fraction,
                     too_long ? "shorten it, or say \\time if it is meant to be longer"
                              : "lengthen it, or say \\partial or \\time if it is meant to be shorter");
    sw_findings_add(check->findings, SW_ERROR, "bar-length", m->file, m->start, m->end, "%s",
                    sw_buffer_text(&text));
    sw_buffer_free(&text);
    offer(check, score, index, before);
}

static bool ignores_bar_checks(const sw_reading *reading, const sw_music *m, bool before)
{
    const char *path = m->kind == SW_MUSIC_SET ? sw_reading_name(reading, m->name) : "";
    const char *dot = strrchr(path, '.');
    if (strcmp(dot == NULL ? path : dot + 1, "ignoreBarChecks") != 0) {
        return before;
    }
    sw_slice text = sw_text_slice(reading->files[m->file].text, m->start, m->end);
    return !sw_slice_ends(text, "f") && !sw_slice_ends(text, "false");
}

static sw_rational metre_at(const sw_score *score, sw_rational onset)
{
    uint32_t bar = sw_score_bar_at(score, onset);
    return bar == SW_NO_INDEX ? sw_rational_make(1, 1) : score->bars[bar].metre;
}

static void check_score(sw_check *check, const sw_score *score)
{
    lines list = {0};
    bool ignored = false;
    for (size_t i = 0; i < score->setting_count; i++) {
        const sw_setting *setting = &score->settings[i];
        const sw_music *m = &check->reading->music[setting->music];
        ignored = ignores_bar_checks(check->reading, m, ignored);
        if (m->kind != SW_MUSIC_BAR_CHECK || ignored || !sw_rational_valid(setting->position)) {
            continue;
        }
        line *l = line_of(&list, setting);
        if (sw_rational_is_zero(setting->position)) {
            if (l->home == home_of(check, score, setting)) {
                l->off = sw_rational_zero(); /* a second mistake has made good for the first */
            }
            continue;
        }
        sw_rational metre = metre_at(score, setting->onset);
        sw_rational off = behind(setting->position, metre);
        if (sw_rational_is_zero(l->off) || !same_amount(l, off, metre)) {
            report(check, score, i);
        }
        l->off = off;
        l->off_metre = metre;
        l->home = home_of(check, score, setting);
    }
    free(list.items);
}

static void run(sw_check *check)
{
    for (size_t s = 0; s < check->reading->score_count; s++) {
        if (!check->reading->scores[s].in_markup) {
            check_score(check, &check->reading->scores[s]);
        }
    }
}

const sw_rule sw_rule_bar_length = {
    .name = "bar-length",
    .summary = "a bar check that does not stand on a bar line",
    .severity = SW_ERROR,
    .explain =
        "A bar check | says: here a bar line is meant to be. Where the notes before it do not fill the bar, "
        "or "
        "overfill\nit, the player's bar lines come at the wrong places from there to the end of the part, "
        "and "
        "he is out of step\nwith everybody else.\n\n"
        "The figure: the position in the bar at the bar check, counted as the compiler counts (\\time, "
        "\\partial, cadenzas\nand \\set Timing.measureLength are followed). It must be 0. One wrong bar "
        "makes "
        "all later bar checks of its voice\nwrong by the same amount; only the first one is reported.\n\n"
        "To mend: correct the bar that is named (a note value, a missing dot, a tuplet), or say \\partial or "
        "\\time where\nthe bar is meant to be as it is. Where two bars add up together and only the bar "
        "check "
        "between them stands at the\nwrong note, check --fix moves it.\n",
    .run = run,
};

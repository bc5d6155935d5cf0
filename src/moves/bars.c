/* One bar a line: our own layout of the music.
 *
 * What is laid out: the file that is named, not what it includes. In it each sequence of music in braces
 * whose items fall into bars, also the voices in << >> and the bodies of repeats. A bar line falls before an
 * item when the bars of the score say so in every use of it, in all main files that include the file. Left
 * alone is everything else: lyrics, chord names, figures, markup, Scheme; the inside of tuplets, graces,
 * tremolos and calls; music that no score plays; and, with a note, a sequence that holds something that could
 * not be read.
 *
 * Where a bar line falls between two items, a bar check stands right behind the first (behind \bar and
 * \break, which stay with it), then the number of the bar, or of the bars ("12-15"), as a comment; then the
 * line ends. What has no length (\time, \key, \mark, grace notes) stands with the bar that it begins, unless
 * it is written before a bar check. A sequence that was written in one line of several bars is opened. The
 * last bar gets its check and number where the closing brace has a line of its own.
 *
 * A comment that is a number alone is a bar number; a wrong one is corrected, a right one keeps its blanks.
 * All other comments stay at the end of their lines, and no number is put there; one in the middle of a line
 * goes with the bar that it begins. Music that is used at
 * several bars gets no number, nor does an upbeat. No line is joined to another, but for a bar check that
 * began one. */
#include <stdlib.h>
#include <string.h>

#include "moves/linked.h"

/* What is known of the item that begins at a byte of the file. */
typedef struct moment {
    bool heard;
    bool grace;
    bool uncertain;
    bool begins;    /* a bar, in every use */
    bool ends;      /* on a bar line, in every use */
    bool numbered;  /* the numbers are the same in every use */
    int32_t number; /* of the bar in which it begins */
    int32_t before; /* of the bar before that one */
    int32_t last;   /* of the bar in which it ends */
} moment;

typedef struct layout {
    sw_move *move;
    const sw_reading *reading; /* the first main file that plays the text */
    uint32_t file;             /* the number of the text's file there */
    const sw_text *text;
    const sw_syntax *syntax;
    const sw_bars_options *options;
    moment *moments;  /* one a byte */
    bool *left_alone; /* one a music node */
    bool unknown;     /* the last sequence holds what could not be read */
} layout;

/* ---- where the bars are ---------------------------------------------------------------------------------
 */

static bool begins_bar(const sw_score *score, uint32_t bar, sw_rational onset)
{
    return bar != SW_NO_INDEX && sw_rational_equal(score->bars[bar].start, onset) &&
           sw_rational_is_zero(score->bars[bar].first);
}

static bool is_complete(const sw_bar *bar)
{
    return sw_rational_equal(sw_rational_add(bar->first, bar->length), bar->metre);
}

static void hear(layout *l, const sw_score *score, const sw_event *event, uint32_t start)
{
    uint32_t bar = sw_score_bar_at(score, event->onset);
    sw_rational end = sw_event_end(event);
    uint32_t behind = sw_score_bar_at(score, end);
    if (bar == SW_NO_INDEX) {
        return;
    }
    bool over = sw_rational_compare(end, score->length) >= 0;
    bool ends = over ? is_complete(&score->bars[behind]) : begins_bar(score, behind, end);
    uint32_t last = ends && !over && behind > bar ? behind - 1 : behind;
    moment m = {.heard = true,
                .begins = bar > 0 && begins_bar(score, bar, event->onset),
                .ends = ends,
                .numbered = true,
                .number = score->bars[bar].number,
                .before = bar == 0 ? 0 : score->bars[bar - 1].number,
                .last = score->bars[last].number};
    moment *known = &l->moments[start];
    if (!known->heard) {
        *known = m;
    }
    known->begins = known->begins && m.begins;
    known->ends = known->ends && m.ends;
    known->numbered =
        known->numbered && known->number == m.number && known->before == m.before && known->last == m.last;
    known->grace = known->grace || (event->flags & SW_EVENT_GRACE) != 0;
    known->uncertain = known->uncertain || (event->flags & SW_EVENT_UNCERTAIN) != 0;
}

static void hear_file(layout *l, const sw_reading *reading, uint32_t file)
{
    for (size_t s = 0; s < reading->score_count; s++) {
        const sw_score *score = &reading->scores[s];
        for (size_t i = 0; i < score->event_count; i++) {
            const sw_event *event = &score->events[i];
            const sw_music *node = &reading->music[event->chord];
            bool other = (event->flags & (SW_EVENT_CUE | SW_EVENT_HIDDEN)) != 0 ||
                         (reading->music[event->music].flags & SW_MUSIC_CHORD_MODE) != 0;
            if (node->file == file && !other && node->start < l->text->length) {
                hear(l, score, event, node->start);
            }
        }
    }
}

static void hear_all(layout *l)
{
    for (size_t i = 0; i < l->move->main_count; i++) {
        const sw_reading *reading = l->move->mains[i];
        for (uint32_t f = 0; f < reading->file_count; f++) {
            if (sw_text_same_file(reading->files[f].text, l->text)) {
                hear_file(l, reading, f);
            }
        }
    }
}

/* ---- what is left alone ---------------------------------------------------------------------------------
 */

static void leave_alone(layout *l, uint32_t music)
{
    const sw_music *node = &l->reading->music[music];
    if (l->left_alone[music] || node->kind == SW_MUSIC_REFERENCE) {
        return;
    }
    l->left_alone[music] = true;
    for (uint32_t c = node->first; c != SW_NO_INDEX; c = l->reading->music[c].next) {
        leave_alone(l, c);
    }
}

static bool has_own_time(const sw_reading *reading, const sw_music *node)
{
    switch ((sw_music_kind)node->kind) {
    case SW_MUSIC_SCALE:
    case SW_MUSIC_GRACE:
    case SW_MUSIC_AFTER_GRACE:
    case SW_MUSIC_UNCERTAIN:
    case SW_MUSIC_QUOTE:
    case SW_MUSIC_CUE:
        return true;
    case SW_MUSIC_REPEAT:
        return strcmp(sw_reading_name(reading, node->name), "tremolo") == 0;
    default:
        return false;
    }
}

/* Whether all of a sequence could be read. */
static bool is_known(const layout *l, const sw_music *sequence)
{
    for (size_t i = 0; i < l->reading->findings.count; i++) {
        const sw_finding *f = &l->reading->findings.items[i];
        if (f->file == l->file && f->start >= sequence->start && f->start < sequence->end &&
            strcmp(f->rule, "include") != 0) {
            return false;
        }
    }
    for (uint32_t at = sequence->start; at < sequence->end && at < l->text->length; at++) {
        if (l->moments[at].uncertain) {
            return false;
        }
    }
    return true;
}

/* ---- the text -------------------------------------------------------------------------------------------
 */

/* The end of an item with all that hangs on it. */
static uint32_t whole_end(const layout *l, uint32_t music)
{
    const sw_music *node = &l->reading->music[music];
    uint32_t end = node->end;
    for (uint32_t c = node->first; c != SW_NO_INDEX && node->kind != SW_MUSIC_REFERENCE;
         c = l->reading->music[c].next) {
        if (l->reading->music[c].file == node->file) {
            uint32_t other = whole_end(l, c);
            end = other > end ? other : end;
        }
    }
    return end;
}

/* The first syntax node that begins at or behind an offset. */
static uint32_t node_from(const layout *l, uint32_t offset)
{
    uint32_t low = 0;
    uint32_t high = l->syntax->count;
    while (low < high) {
        uint32_t middle = (low + high) / 2;
        if (l->syntax->nodes[middle].start < offset) {
            low = middle + 1;
        } else {
            high = middle;
        }
    }
    return low;
}

static uint32_t skip_blanks(const layout *l, uint32_t at)
{
    while (at < l->text->length && (l->text->bytes[at] == ' ' || l->text->bytes[at] == '\t')) {
        at++;
    }
    return at;
}

static bool is_line_end(const layout *l, uint32_t at)
{
    return at >= l->text->length || l->text->bytes[at] == '\n' || l->text->bytes[at] == '\r';
}

static uint32_t line_start(const layout *l, uint32_t at)
{
    while (at > 0 && l->text->bytes[at - 1] != '\n') {
        at--;
    }
    return at;
}

/* Whether only blanks stand before an offset on its line. */
static bool begins_line(const layout *l, uint32_t at)
{
    return skip_blanks(l, line_start(l, at)) >= at;
}

static bool has_line_end(const layout *l, uint32_t from, uint32_t to)
{
    return memchr(l->text->bytes + from, '\n', to - from) != NULL;
}

static void add_line_end(const layout *l, sw_buffer *text)
{
    sw_buffer_append(text, sw_slice_of(sw_text_newline(l->text)));
}

/* The blanks before the line on which something begins. */
static sw_slice outer_indentation(const layout *l, uint32_t at)
{
    uint32_t start = line_start(l, at);
    return sw_text_slice(l->text, start, skip_blanks(l, start));
}

/* The blanks with which a line of the sequence begins: as its first line that begins with an item. */
static void add_indentation(const layout *l, const sw_music *sequence, sw_buffer *text)
{
    const sw_music *music = l->reading->music;
    for (uint32_t c = sequence->first; c != SW_NO_INDEX; c = music[c].next) {
        uint32_t start = line_start(l, music[c].start);
        if (music[c].file == sequence->file && start > sequence->start && begins_line(l, music[c].start)) {
            sw_buffer_append(text, sw_text_slice(l->text, start, music[c].start));
            return;
        }
    }
    sw_slice outer = outer_indentation(l, sequence->start);
    sw_buffer_append(text, outer);
    sw_buffer_string(text, outer.length > 0 && outer.data[0] == '\t' ? "\t" : "  ");
}

static void replace(layout *l, uint32_t start, uint32_t end, const sw_buffer *by)
{
    if (!sw_slice_equal(sw_text_slice(l->text, start, end), sw_buffer_slice(by))) {
        sw_patch_add(&l->move->patch, l->text, start, end, sw_buffer_slice(by));
    }
}

/* ---- bar numbers ----------------------------------------------------------------------------------------
 */

static size_t span(sw_slice text, size_t at, const char *of)
{
    while (at < text.length && strchr(of, text.data[at]) != NULL) {
        at++;
    }
    return at;
}

/* Whether a comment is a bar number alone: "% 12", "%12", "% 12-15"; *first and *end are its digits then. */
static bool is_number(sw_slice comment, size_t *first, size_t *end)
{
    *first = span(comment, 0, "% \t");
    *end = span(comment, *first, "0123456789-");
    return *end > *first && comment.data[*first] != '-' && span(comment, *end, " \t\r\n") == comment.length;
}

/* "12" or "12-15"; nothing where there is no number to give. */
static void add_number(sw_buffer *text, bool numbered, int32_t first, int32_t last)
{
    if (!numbered || first < 1 || last < first) {
        return;
    }
    sw_buffer_format(text, first < last ? "%d-%d" : "%d", first, last);
}

/* ---- the end of a bar -----------------------------------------------------------------------------------
 */

static bool stays_with_bar(sw_slice command)
{
    static const char *const names[] = {"\\bar", "\\break", "\\pageBreak", "\\noBreak"};
    for (size_t i = 0; i < sizeof names / sizeof names[0]; i++) {
        if (sw_slice_is(command, names[i])) {
            return true;
        }
    }
    return false;
}

/* What stands between the last item of a bar and the next item. */
typedef struct gap {
    uint32_t start;  /* behind the item and what stays with it on its line */
    uint32_t check;  /* the bar check; UINT32_MAX: none */
    uint32_t behind; /* the end of the check, or `start` */
    bool adjacent;   /* nothing but white space stands before the check */
} gap;

/* False when something stands there that is not understood. */
static bool look_between(const layout *l, uint32_t from, uint32_t limit, gap *g)
{
    *g = (gap){.start = from, .check = UINT32_MAX, .behind = from};
    bool near = true; /* nothing but what stays has come so far */
    bool argument = false;
    bool comment = false;
    for (uint32_t n = node_from(l, from); n < l->syntax->count && l->syntax->nodes[n].start < limit;
         n = l->syntax->nodes[n].next) {
        const sw_node *node = &l->syntax->nodes[n];
        sw_slice text = sw_syntax_slice(l->syntax, n);
        if (node->kind == SW_NODE_POST_EVENT || node->kind == SW_NODE_PUNCTUATION || node->end > limit) {
            return false;
        }
        if (node->kind == SW_NODE_BAR_CHECK) {
            g->check = node->start;
            g->behind = node->end;
            g->adjacent = near;
            return true;
        }
        comment = comment || node->kind == SW_NODE_COMMENT;
        near = near && !comment &&
               ((argument && node->kind == SW_NODE_STRING) ||
                (node->kind == SW_NODE_COMMAND && stays_with_bar(text) &&
                 !has_line_end(l, g->start, node->start)));
        argument = near && sw_slice_is(text, "\\bar");
        g->start = near ? node->end : g->start;
        g->behind = g->start;
    }
    return true;
}

/* Whether a comment, %{ such a one %}, has music behind it on its line: it belongs to what follows. */
static bool leads_on(const layout *l, uint32_t comment)
{
    uint32_t at = comment;
    while (at + 1 < l->text->length && l->text->bytes[at] == '%' && l->text->bytes[at + 1] == '{') {
        uint32_t n = node_from(l, at);
        if (n == l->syntax->count || l->syntax->nodes[n].start != at) {
            return false;
        }
        at = skip_blanks(l, l->syntax->nodes[n].end);
    }
    return at > comment && !is_line_end(l, at) && l->text->bytes[at] != '%';
}

/* Writes what must stand at the end of a bar: the check, the number, the end of the line (where more follows
 * up to `limit`). */
static void end_bar(layout *l, const sw_music *sequence, const gap *g, uint32_t limit,
                    const sw_buffer *number)
{
    sw_buffer text = {0};
    uint32_t from = g->behind;
    if (g->check == UINT32_MAX) {
        sw_buffer_string(&text, " |");
    } else if (begins_line(l, g->check)) {
        if (!g->adjacent) {
            return; /* what stands before it stays before it */
        }
        from = g->start; /* the check goes up to its bar */
        sw_buffer_string(&text, " |");
    }
    uint32_t line = sw_text_line(l->text, g->start);
    bool wanted =
        l->options->last_line == 0 || (line >= l->options->first_line && line <= l->options->last_line);
    uint32_t behind = skip_blanks(l, g->behind);
    if (!wanted) {
        sw_buffer_free(&text);
        return;
    }
    if (behind < l->text->length && l->text->bytes[behind] == '%' && !leads_on(l, behind)) {
        uint32_t end = behind;
        while (!is_line_end(l, end)) {
            end++;
        }
        sw_slice comment = sw_text_slice(l->text, behind, end);
        size_t first;
        size_t last;
        replace(l, from, g->behind, &text);
        if (number->length > 0 && is_number(comment, &first, &last)) {
            replace(l, behind + (uint32_t)first, behind + (uint32_t)last, number);
        }
    } else {
        if (number->length > 0) {
            sw_buffer_format(&text, " %% %s", number->data);
        }
        bool more = !is_line_end(l, behind) && behind <= limit;
        if (more) {
            add_line_end(l, &text);
            add_indentation(l, sequence, &text);
        }
        replace(l, from, more ? behind : g->behind, &text);
    }
    sw_buffer_free(&text);
}

/* The opening brace of a sequence that was written in one line gets the line for itself. */
static void open_brace(layout *l, const sw_music *sequence)
{
    sw_buffer text = {0};
    uint32_t first = sequence->start + 1;
    add_line_end(l, &text);
    add_indentation(l, sequence, &text);
    replace(l, first, skip_blanks(l, first), &text);
    sw_buffer_free(&text);
}

/* ---- a sequence -----------------------------------------------------------------------------------------
 */

/* The first moment inside of an item's bytes; NULL when it has no length. */
static const moment *moment_of(const layout *l, uint32_t child)
{
    const sw_music *node = &l->reading->music[child];
    if (node->kind == SW_MUSIC_GRACE || node->file != l->file) {
        return NULL;
    }
    for (uint32_t at = node->start; at < node->end && at < l->text->length; at++) {
        if (l->moments[at].heard && !l->moments[at].grace) {
            return &l->moments[at];
        }
    }
    return NULL;
}

/* Whether music takes time, wherever it is written. */
static bool has_length(const layout *l, uint32_t music, int depth)
{
    const sw_music *node = &l->reading->music[music];
    if (node->kind > SW_MUSIC_EMPTY && node->kind < SW_MUSIC_SEQUENCE && node->kind != SW_MUSIC_CHORD) {
        return true; /* a chord is as long as its notes: <> is not */
    }
    bool group = node->kind < SW_MUSIC_BAR_CHECK && node->kind != SW_MUSIC_GRACE && depth < 100;
    for (uint32_t c = group ? node->first : SW_NO_INDEX; c != SW_NO_INDEX; c = l->reading->music[c].next) {
        if (has_length(l, c, depth + 1)) {
            return true;
        }
        if (node->kind == SW_MUSIC_REFERENCE) {
            break; /* what follows the variable's music in another list is none of it */
        }
    }
    return false;
}

/* A group of music that goes over a bar line inside of itself ends its bars by itself. */
static bool holds_bars(const layout *l, uint32_t item, const moment *first, const moment *next)
{
    uint8_t kind = l->reading->music[item].kind;
    bool group = kind >= SW_MUSIC_SEQUENCE && kind < SW_MUSIC_BAR_CHECK && kind != SW_MUSIC_SCALE &&
                 kind != SW_MUSIC_REFERENCE;
    int32_t end = next->begins ? next->before : next->number;
    return group && (first == NULL || !next->numbered || !first->numbered || first->number != end);
}

static bool is_wanted(layout *l, const sw_music *sequence, bool *asked)
{
    if (!*asked) {
        *asked = true;
        l->unknown = !is_known(l, sequence);
    }
    return !l->unknown;
}

/* The bar line between `item` and `next`. */
static bool end_inner_bar(layout *l, const sw_music *sequence, const moment *first, uint32_t item,
                          uint32_t next)
{
    gap g;
    const moment *then = moment_of(l, next);
    uint32_t from = whole_end(l, item);
    uint32_t limit = l->reading->music[next].start;
    if (from >= limit || !look_between(l, from, limit, &g)) {
        return false;
    }
    sw_buffer number = {0};
    if (!holds_bars(l, item, moment_of(l, item), then)) {
        bool numbered = first != NULL && first->numbered && then->numbered;
        add_number(&number, numbered, numbered ? first->number : 0, then->before);
    }
    if (holds_bars(l, item, moment_of(l, item), then) && g.check == UINT32_MAX) {
        sw_buffer_free(&number); /* its last bar has the check */
        return true;
    }
    end_bar(l, sequence, &g, limit, &number);
    sw_buffer_free(&number);
    return true;
}

/* Whether nothing but comments stands in a part of the text. */
static bool is_empty(const layout *l, uint32_t from, uint32_t to)
{
    for (uint32_t n = node_from(l, from); n < l->syntax->count && l->syntax->nodes[n].start < to; n++) {
        if (l->syntax->nodes[n].kind != SW_NODE_COMMENT) {
            return false;
        }
    }
    return true;
}

/* The end of the last bar, when it is complete: check and number. `opened`: the closing brace stands on the
 * line of the last bar and gets one of its own. */
static void end_last_bar(layout *l, const sw_music *sequence, const moment *first, uint32_t item, bool opened)
{
    gap g;
    const moment *own = moment_of(l, item);
    uint32_t limit = sequence->end - 1;
    uint32_t from = whole_end(l, item);
    if (first == NULL || own == NULL || from > limit || !look_between(l, from, limit, &g)) {
        return;
    }
    bool complete =
        l->reading->music[item].kind < SW_MUSIC_SEQUENCE && own->ends && is_empty(l, g.behind, limit);
    sw_buffer number = {0};
    if (complete) {
        add_number(&number, first->numbered && own->numbered, first->number, own->last);
    }
    if (!opened && complete && g.check == UINT32_MAX && has_line_end(l, from, limit)) {
        end_bar(l, sequence, &g, limit, &number);
    } else if (opened) {
        uint32_t end = limit;
        while (end > g.behind && strchr(" \t", l->text->bytes[end - 1]) != NULL) {
            end--;
        }
        sw_buffer text = {0};
        sw_buffer_string(&text, complete && g.check == UINT32_MAX ? " |" : "");
        if (complete && number.length > 0 && end == g.behind) {
            sw_buffer_format(&text, " %% %s", number.data);
        }
        add_line_end(l, &text);
        sw_buffer_append(&text, outer_indentation(l, sequence->start));
        replace(l, end, limit, &text);
        sw_buffer_free(&text);
    }
    sw_buffer_free(&number);
}

static void lay_out(layout *l, uint32_t index)
{
    const sw_music *music = l->reading->music;
    const sw_music *sequence = &music[index];
    uint32_t last = SW_NO_INDEX;
    const moment *first = NULL; /* the item that begins the bar; NULL: one that is written elsewhere */
    bool asked = false;
    size_t bars = 0;
    for (uint32_t c = sequence->first; c != SW_NO_INDEX; c = music[c].next) {
        const moment *m = moment_of(l, c);
        if (m == NULL) {
            if (has_length(l, c, 0)) {
                first = NULL;
                last = c;
            }
            continue;
        }
        if (last != SW_NO_INDEX && m->begins) {
            if (!is_wanted(l, sequence, &asked)) {
                return;
            }
            bars += end_inner_bar(l, sequence, first, last, c);
            first = m;
        } else if (last != SW_NO_INDEX && holds_bars(l, last, moment_of(l, last), m)) {
            first = m; /* the rest of a bar that began in there */
        }
        first = last == SW_NO_INDEX ? m : first;
        last = c;
    }
    if (bars > 0 && l->options->last_line == 0) {
        bool opened =
            !has_line_end(l, sequence->start, sequence->end) && l->text->bytes[sequence->start] == '{';
        if (opened) {
            open_brace(l, sequence);
        }
        end_last_bar(l, sequence, first, last, opened);
    }
}

/* ---- the whole ------------------------------------------------------------------------------------------
 */

static void lay_out_all(layout *l)
{
    const sw_reading *reading = l->reading;
    size_t unknown = 0;
    size_t unheard = 0;
    for (uint32_t i = 0; i < reading->music_count; i++) {
        const sw_music *node = &reading->music[i];
        if (has_own_time(reading, node)) {
            leave_alone(l, i);
        }
        /* The block of the alternatives of a repeat is no sequence: what stands in it are its alternatives.
         */
        for (uint32_t k = i; k-- > 0 && node->kind == SW_MUSIC_ALTERNATIVES;) {
            if (reading->music[k].kind == SW_MUSIC_SEQUENCE && reading->music[k].first == node->first) {
                l->left_alone[k] = true;
                break;
            }
        }
    }
    for (uint32_t i = 0; i < reading->music_count; i++) {
        if (reading->music[i].kind == SW_MUSIC_SEQUENCE && reading->music[i].file == l->file &&
            !l->left_alone[i]) {
            l->unknown = false;
            lay_out(l, i);
            if (l->unknown && unknown++ == 0) {
                sw_place place = sw_text_place(l->text, reading->music[i].start);
                sw_buffer_format(&l->move->notes,
                                 "%s:%u:%u: note: not all of this music is understood; it is left as it is\n",
                                 l->text->path, place.line, place.column + 1);
            }
        }
    }
    for (size_t v = 0; v < reading->variable_count; v++) {
        const sw_variable *variable = &reading->variables[v];
        if (variable->file == l->file && variable->music != SW_NO_INDEX &&
            moment_of(l, variable->music) == NULL && reading->music[variable->music].first != SW_NO_INDEX) {
            unheard++;
        }
    }
    if (unheard > 0 && l->move->patch.count == 0) {
        sw_buffer_format(
            &l->move->notes, "%s: note: %zu variable%s with music, which no score plays: left as %s\n",
            l->text->path, unheard, unheard == 1 ? "" : "s", unheard == 1 ? "it is" : "they are");
    }
}

static bool refuse(const sw_reading *reading, char **error)
{
    const sw_syntax *syntax = reading->files[0].syntax;
    sw_syntax_fault fault;
    *error = sw_syntax_refusal(syntax);
    if (*error == NULL && sw_syntax_find_fault(syntax, &fault)) {
        sw_place place = sw_text_place(reading->files[0].text, fault.start);
        sw_buffer text = {0};
        sw_buffer_format(&text, "%s:%u:%u: %s; nothing is changed", reading->files[0].text->path, place.line,
                         place.column + 1, fault.message);
        *error = text.data;
    }
    return *error != NULL;
}

/* What the text means, the first score that uses it knows: read by itself, it may lack what others define. */
static void find_reading(layout *l)
{
    const sw_text *named = l->move->mains[0]->files[0].text;
    l->reading = l->move->mains[0];
    l->file = 0;
    for (size_t i = l->move->main_count; i-- > 0;) {
        const sw_reading *reading = l->move->mains[i];
        for (uint32_t f = 0; f < reading->file_count && reading->score_count > 0; f++) {
            if (sw_text_same_file(reading->files[f].text, named)) {
                l->reading = reading;
                l->file = f;
                break;
            }
        }
    }
    l->text = l->reading->files[l->file].text;
    l->syntax = l->reading->files[l->file].syntax;
}

static bool run(sw_move *move, const sw_bars_options *options, const sw_read_options *reading_options,
                char **error)
{
    if (refuse(move->mains[0], error)) {
        return false;
    }
    layout l = {.move = move, .options = options};
    find_reading(&l);
    const sw_reading *reading = l.reading;
    l.moments = sw_alloc_zero(l.text->length + 1, sizeof *l.moments);
    l.left_alone = sw_alloc_zero(reading->music_count + 1, sizeof *l.left_alone);
    hear_all(&l);
    lay_out_all(&l);
    free(l.moments);
    free(l.left_alone);
    return sw_patch_finish(&move->patch, error) &&
           (move->patch.count == 0 ||
            sw_prove_layout(move->mains, move->main_count, &move->patch, reading_options, error));
}

sw_move *sw_move_bars(const char *path, const sw_bars_options *options,
                      const sw_read_options *reading_options, char **error)
{
    sw_move *move = sw_move_open(path, reading_options, error);
    return sw_move_close(move, move != NULL && run(move, options, reading_options, error));
}

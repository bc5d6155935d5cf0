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

#include "moves/bar_layout.h"

/* ---- what is left alone ---- */

static void leave_alone(sw_bar_layout *l, uint32_t music)
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
static bool is_known(const sw_bar_layout *l, const sw_music *sequence)
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

/* ---- a sequence ---- */

/* The first moment inside of an item's bytes; NULL when it has no length. */
static const sw_bar_moment *moment_of(const sw_bar_layout *l, uint32_t child)
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
static bool has_length(const sw_bar_layout *l, uint32_t music, int depth)
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
static bool holds_bars(const sw_bar_layout *l, uint32_t item, const sw_bar_moment *first,
                       const sw_bar_moment *next)
{
    uint8_t kind = l->reading->music[item].kind;
    bool group = kind >= SW_MUSIC_SEQUENCE && kind < SW_MUSIC_BAR_CHECK && kind != SW_MUSIC_SCALE &&
                 kind != SW_MUSIC_REFERENCE;
    int32_t end = next->begins ? next->before : next->number;
    return group && (first == NULL || !next->numbered || !first->numbered || first->number != end);
}

static bool is_wanted(sw_bar_layout *l, const sw_music *sequence, bool *asked)
{
    if (!*asked) {
        *asked = true;
        l->unknown = !is_known(l, sequence);
    }
    return !l->unknown;
}

/* The bar line between `item` and `next`. */
static bool end_inner_bar(sw_bar_layout *l, const sw_music *sequence, const sw_bar_moment *first,
                          uint32_t item, uint32_t next)
{
    sw_bar_gap g;
    const sw_bar_moment *then = moment_of(l, next);
    uint32_t from = sw_bar_whole_end(l, item);
    uint32_t limit = l->reading->music[next].start;
    if (from >= limit || !sw_bar_look_between(l, from, limit, &g)) {
        return false;
    }
    sw_buffer number = {0};
    if (!holds_bars(l, item, moment_of(l, item), then)) {
        bool numbered = first != NULL && first->numbered && then->numbered;
        sw_bar_add_number(&number, numbered, numbered ? first->number : 0, then->before);
    }
    if (holds_bars(l, item, moment_of(l, item), then) && g.check == UINT32_MAX) {
        sw_buffer_free(&number); /* its last bar has the check */
        return true;
    }
    sw_bar_end(l, sequence, &g, limit, &number);
    sw_buffer_free(&number);
    return true;
}

/* Whether nothing but comments stands in a part of the text. */
static bool is_empty(const sw_bar_layout *l, uint32_t from, uint32_t to)
{
    for (uint32_t n = sw_bar_node_from(l, from); n < l->syntax->count && l->syntax->nodes[n].start < to;
         n++) {
        if (l->syntax->nodes[n].kind != SW_NODE_COMMENT) {
            return false;
        }
    }
    return true;
}

/* The end of the last bar, when it is complete: check and number. `opened`: the closing brace stands on the
 * line of the last bar and gets one of its own. */
static void end_last_bar(sw_bar_layout *l, const sw_music *sequence, const sw_bar_moment *first,
                         uint32_t item, bool opened)
{
    sw_bar_gap g;
    const sw_bar_moment *own = moment_of(l, item);
    uint32_t limit = sequence->end - 1;
    uint32_t from = sw_bar_whole_end(l, item);
    if (first == NULL || own == NULL || from > limit || !sw_bar_look_between(l, from, limit, &g)) {
        return;
    }
    bool complete =
        l->reading->music[item].kind < SW_MUSIC_SEQUENCE && own->ends && is_empty(l, g.behind, limit);
    sw_buffer number = {0};
    if (complete) {
        sw_bar_add_number(&number, first->numbered && own->numbered, first->number, own->last);
    }
    if (!opened && complete && g.check == UINT32_MAX && sw_bar_has_line_end(l, from, limit)) {
        sw_bar_end(l, sequence, &g, limit, &number);
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
        sw_bar_add_line_end(l, &text);
        sw_buffer_append(&text, sw_bar_indentation(l, sequence->start));
        sw_bar_replace(l, end, limit, &text);
        sw_buffer_free(&text);
    }
    sw_buffer_free(&number);
}

static void lay_out(sw_bar_layout *l, uint32_t index)
{
    const sw_music *music = l->reading->music;
    const sw_music *sequence = &music[index];
    uint32_t last = SW_NO_INDEX;
    const sw_bar_moment *first = NULL; /* the item that begins the bar; NULL: one that is written elsewhere */
    bool asked = false;
    size_t bars = 0;
    for (uint32_t c = sequence->first; c != SW_NO_INDEX; c = music[c].next) {
        const sw_bar_moment *m = moment_of(l, c);
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
            !sw_bar_has_line_end(l, sequence->start, sequence->end) && l->text->bytes[sequence->start] == '{';
        if (opened) {
            sw_bar_open_brace(l, sequence);
        }
        end_last_bar(l, sequence, first, last, opened);
    }
}

/* ---- the whole ---- */

static void lay_out_all(sw_bar_layout *l)
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
static void find_reading(sw_bar_layout *l)
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
    sw_bar_layout l = {.move = move, .options = options};
    find_reading(&l);
    const sw_reading *reading = l.reading;
    l.moments = sw_alloc_zero(l.text->length + 1, sizeof *l.moments);
    l.left_alone = sw_alloc_zero(reading->music_count + 1, sizeof *l.left_alone);
    sw_bar_layout_hear(&l);
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
    sw_move *move = sw_move_open_alone(path, reading_options, error);
    return sw_move_close(move, move != NULL && run(move, options, reading_options, error));
}

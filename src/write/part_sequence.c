#include "write/part_sequence.h"

#include <stdlib.h>
#include <string.h>

#include "write/part_notes.h"
#include "write/part_time.h"
#include "write/part_tokens.h"

typedef struct token {
    uint32_t music;
    sw_token_kind kind;
    uint32_t start;
    uint32_t end;
} token;

static bool is_blank(sw_slice text)
{
    return sw_slice_trim(text).length == 0;
}

/* The clef of a staff that the music has come to. What the staff begins with stands in its own music. */
static void put_clef_there(sw_part_printer *p, const sw_event *event, uint32_t staff)
{
    const sw_division *division = p->plan->division;
    const char *clef = NULL;
    size_t *next = &p->clef_of_staff[staff];
    while (*next < division->clef_count &&
           sw_rational_compare(division->clefs[*next].onset, event->onset) <= 0) {
        const sw_part_clef *c = &division->clefs[(*next)++];
        if (c->part == staff && (staff == 0 || c->onset.num > 0)) {
            clef = c->clef;
        }
    }
    if (clef != NULL) {
        sw_buffer_format(p->out, "\\clef %s ", clef);
    }
}

/* The outermost step of the way to an event: which of the things in a staff it belongs to. */
static uint32_t root_of(const sw_score *score, const sw_event *event)
{
    uint32_t root = event->frame;
    while (root != SW_NO_INDEX && score->frames[root].parent != SW_NO_INDEX) {
        root = score->frames[root].parent;
    }
    return root;
}

/* Whether a voice that nobody has named begins with an event: skips beside it, as in << \global \music >>,
 * are no beginning. */
static bool begins_voice(const sw_part_printer *p, const sw_event *event)
{
    const sw_score *score = p->plan->division->score;
    const sw_event *before = &score->events[p->plan->voice_first[event->voice]];
    for (; before < event; before++) {
        if (before->voice == event->voice &&
            (before->kind != SW_EVENT_SKIP || root_of(score, before) == root_of(score, event))) {
            return false;
        }
    }
    return score->voices[event->voice].id == 0;
}

void sw_put_change(sw_part_printer *p, const sw_event *event)
{
    const sw_division *division = p->plan->division;
    if (p->voice_staff == NULL || p->part != 0 || event == NULL ||
        (event->kind != SW_EVENT_NOTE && event->kind != SW_EVENT_DRUM)) {
        return;
    }
    uint8_t staff = division->change_part[event - division->score->events];
    uint8_t *now = &p->voice_staff[event->voice];
    bool begins = begins_voice(p, event);
    if (begins) {
        *now = 0; /* where its staff is made */
    }
    if (*now != staff && (begins || event->onset.num <= 0)) {
        /* The compiler looks for the staff too early where \change is the very first of a voice: before the
         * other staff is made, or the voice that shall go there. */
        sw_buffer_string(p->out, "<> ");
    }
    if (*now != staff) {
        sw_buffer_format(p->out, "\\change Staff = \"%s%s\" ", division->change_id,
                         division->suffixes[staff]);
        *now = staff;
    }
    put_clef_there(p, event, staff);
}

/* The first note of what stands in one voice; where voices and repeats begin, they say themselves where they
 * stand. */
static const sw_event *first_note(const sw_part_printer *p, uint32_t music)
{
    const sw_music *m = sw_part_music(p, music);
    if (sw_is_item(m)) {
        return sw_part_first_event(p, music);
    }
    bool says_itself = m->kind == SW_MUSIC_REPEAT && !sw_part_is_tremolo(p, music) &&
                       m->first != SW_NO_INDEX && sw_part_music(p, m->first)->kind == SW_MUSIC_SEQUENCE;
    if (says_itself || m->kind == SW_MUSIC_SIMULTANEOUS || m->kind == SW_MUSIC_CONTEXT ||
        m->kind == SW_MUSIC_REFERENCE) {
        return NULL;
    }
    for (uint32_t c = m->first; c != SW_NO_INDEX; c = sw_part_music(p, c)->next) {
        if (sw_part_music(p, c)->kind != SW_MUSIC_MARK && sw_part_has_notes(p, c)) {
            return first_note(p, c);
        }
    }
    return NULL;
}

static void put_clef(sw_part_printer *p, const sw_event *event)
{
    const sw_division *division = p->plan->division;
    const char *clef = NULL;
    if (division->change_part != NULL && (p->part == 0 || (event != NULL && event->onset.num > 0))) {
        return; /* see sw_put_change */
    }
    while (event != NULL && p->next_clef < division->clef_count &&
           sw_rational_compare(division->clefs[p->next_clef].onset, event->onset) <= 0) {
        if (division->clefs[p->next_clef].part == p->part) {
            clef = division->clefs[p->next_clef].clef;
        }
        p->next_clef++;
    }
    if (clef != NULL) {
        sw_buffer_format(p->out, "\\clef %s ", clef);
    }
}

static bool same_bar(const sw_part_printer *p, sw_rational a, sw_rational b)
{
    return sw_score_bar_at(p->plan->division->score, a) == sw_score_bar_at(p->plan->division->score, b);
}

/* From token `from`, which is silent or a rest: how many tokens join into one silence, and its extent. 0 when
 * only rests of the source stand there, which stay as they are. */
static size_t join_rests(const sw_part_printer *p, const token *tokens, size_t from, size_t count,
                         uint32_t file, sw_rational *onset, sw_rational *end)
{
    const sw_event *first = sw_part_first_event(p, tokens[from].music);
    bool made = tokens[from].kind == SW_TOKEN_SILENT;
    if (first == NULL || !sw_part_end(p, tokens[from].music, end)) {
        return 0;
    }
    *onset = first->onset;
    size_t taken = 1;
    for (size_t i = from + 1; i < count && p->in_time; i++) {
        sw_slice gap = sw_text_slice(p->plan->reading->files[file].text, tokens[i - 1].end, tokens[i].start);
        if (!is_blank(gap)) {
            break;
        }
        if (tokens[i].kind == SW_TOKEN_DROP) {
            continue;
        }
        if ((tokens[i].kind != SW_TOKEN_SILENT && tokens[i].kind != SW_TOKEN_REST) ||
            sw_part_has_marks(p, tokens[i].music)) {
            break;
        }
        const sw_event *event = sw_part_first_event(p, tokens[i].music);
        sw_rational next_end;
        if (event == NULL || !sw_part_end(p, tokens[i].music, &next_end) ||
            !sw_rational_equal(event->onset, *end) || !same_bar(p, event->onset, *onset)) {
            break;
        }
        *end = next_end;
        made = made || tokens[i].kind == SW_TOKEN_SILENT;
        taken = i - from + 1;
    }
    return made ? taken : 0;
}

void sw_put_single_rest(sw_part_printer *p, uint32_t music)
{
    const sw_music *m = sw_part_music(p, music);
    if (sw_is_item(m)) {
        sw_put_rest(p, sw_part_rest_letter(p, sw_part_first_event(p, music)), sw_music_duration(m));
    } else {
        sw_print_part(p, music);
    }
}

static void print_token(sw_part_printer *p, const token *t, uint32_t file)
{
    if (sw_part_music(p, t->music)->kind == SW_MUSIC_CHANGE) {
        sw_part_fail(
            p, t->music,
            "the music changes staves here; a staff that shares its notes with another can't be divided");
        return;
    }
    if (t->kind == SW_TOKEN_VERBATIM) {
        sw_part_copy(p, file, t->start, t->end);
        return;
    }
    bool says_itself = sw_part_music(p, t->music)->kind == SW_MUSIC_SEQUENCE; /* maybe one of << { } { } >> */
    if (!says_itself) {
        sw_put_change(p, first_note(p, t->music));
    }
    put_clef(p, sw_is_item(sw_part_music(p, t->music)) ? sw_part_first_event(p, t->music) : NULL);
    p->among_items = true;
    if (t->start < sw_part_music(p, t->music)->start) {
        sw_part_copy(p, file, t->start,
                     sw_part_music(p, t->music)->start); /* `\tweak color #red` before its note */
    }
    sw_print_part(p, t->music);
}

/* `<c e><d f>` needs no space, but `c d` does: puts one at `place` where two words would grow together. */
static void separate(sw_part_printer *p, size_t place)
{
    static const char *const word = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789',.!?=";
    sw_buffer *out = p->out;
    if (place == 0 || place >= out->length || strchr(word, out->data[place - 1]) == NULL ||
        strchr(word, out->data[place]) == NULL) {
        return;
    }
    sw_buffer_char(out, ' ');
    memmove(out->data + place + 1, out->data + place, out->length - 1 - place);
    out->data[place] = ' ';
}

void sw_print_sequence(sw_part_printer *p, uint32_t first, uint32_t file, uint32_t from, uint32_t to)
{
    size_t count = 0;
    for (uint32_t c = first; c != SW_NO_INDEX; c = sw_part_music(p, c)->next) {
        count++;
    }
    token *tokens = sw_alloc((count + 1) * sizeof *tokens);
    count = 0;
    for (uint32_t c = first; c != SW_NO_INDEX; c = sw_part_music(p, c)->next) {
        if (sw_part_music(p, c)->file != file) {
            sw_part_fail(
                p, c, "this music stands inside a call or an included file, and can't be divided from here");
            continue;
        }
        tokens[count++] = (token){c, sw_part_classify(p, c), sw_node_begin(p->plan->reading, c),
                                  sw_node_end(p->plan->reading, c)};
    }
    uint32_t position = from;
    for (size_t i = 0; i < count; i++) {
        token *t = &tokens[i];
        sw_slice gap = sw_text_slice(p->plan->reading->files[file].text, position, t->start);
        if (t->kind == SW_TOKEN_DROP) {
            /* One of the two white spaces around it goes with it: the one before, unless that begins a line.
             */
            bool line_start = memchr(gap.data, '\n', gap.length) != NULL || position == from;
            const char behind = p->plan->reading->files[file].text->bytes[t->end];
            if (is_blank(gap) && gap.length > 0 && (behind == '\n' || behind == '\r')) {
                position = t->end; /* it had a line of its own */
            } else if (line_start || !is_blank(gap)) {
                sw_buffer_append(p->out, gap);
                position = t->end;
                const char *bytes = p->plan->reading->files[file].text->bytes;
                while (position < to && (bytes[position] == ' ' || bytes[position] == '\t')) {
                    position++;
                }
            } else {
                position = t->end;
            }
            continue;
        }
        sw_buffer_append(p->out, gap);
        size_t place = p->out->length;
        sw_rational onset;
        sw_rational end;
        size_t joined = t->kind == SW_TOKEN_SILENT || t->kind == SW_TOKEN_REST
                            ? join_rests(p, tokens, i, count, file, &onset, &end)
                            : 0;
        if (joined > 0 && p->in_time) {
            put_clef(p, sw_part_first_event(p, t->music));
            sw_put_silence(p, sw_part_first_event(p, t->music)->voice, onset, end, t->music);
            separate(p, place);
            position = tokens[i + joined - 1].end;
            i += joined - 1;
            continue;
        }
        if (t->kind == SW_TOKEN_SILENT) {
            sw_put_single_rest(p, t->music);
            sw_print_marks(p, t->music, false);
        } else {
            print_token(p, t, file);
        }
        separate(p, place);
        position = t->end;
    }
    sw_part_copy(p, file, position, to);
    free(tokens);
}

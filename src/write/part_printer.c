/* Writes the music of one part: blocks, sequences, rests. Single notes and chords are in part_notes.c. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "write/part_notes.h"
#include "write/part_time.h"

/* ---- small pieces ---- */

static const sw_music *at(const sw_part_printer *p, uint32_t music)
{
    return &p->plan->reading->music[music];
}

static void copy(sw_part_printer *p, uint32_t file, uint32_t from, uint32_t to)
{
    if (to > from) {
        sw_buffer_append(p->out, sw_text_slice(p->plan->reading->files[file].text, from, to));
    }
}

void sw_part_fail(sw_part_printer *p, uint32_t music, const char *what)
{
    if (p->error != NULL) {
        return;
    }
    const sw_music *m = at(p, music);
    const sw_text *text = p->plan->reading->files[m->file].text;
    sw_place place = sw_text_place(text, m->start);
    if (asprintf(&p->error, "%s:%u:%u: %s", text->path, place.line, place.column + 1, what) < 0) {
        abort();
    }
}

static bool is_item(uint8_t kind)
{
    return kind >= SW_MUSIC_NOTE && kind <= SW_MUSIC_BARE;
}

static bool is_blank(sw_slice text)
{
    for (size_t i = 0; i < text.length; i++) {
        if (strchr(" \t\r\n", text.data[i]) == NULL) {
            return false;
        }
    }
    return true;
}

/* ---- clefs ---- */

static void put_clef(sw_part_printer *p, const sw_event *event)
{
    const sw_division *division = p->plan->division;
    const char *clef = NULL;
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

/* ---- sequences ---- */

typedef enum token_kind {
    TOKEN_KEEP,     /* written note by note */
    TOKEN_VERBATIM, /* copied */
    TOKEN_REST,     /* a rest of the source */
    TOKEN_SILENT,   /* another part's notes: becomes a rest */
    TOKEN_DROP      /* left out */
} token_kind;

typedef struct token {
    uint32_t music;
    token_kind kind;
    uint32_t start;
    uint32_t end;
} token;

/* Commands that concern the whole score: one staff says them. */
static bool is_for_whole_score(const sw_part_printer *p, uint32_t music)
{
    static const char *const names[] = {"\\bar",      "\\break",    "\\pageBreak",   "\\noBreak",
                                        "\\mark",     "\\textMark", "\\textEndMark", "\\segnoMark",
                                        "\\codaMark", "\\jump",     "\\section",     "\\sectionLabel",
                                        "\\fine",     "\\pageTurn", "\\noPageBreak", "\\barNumberCheck"};
    const sw_music *m = at(p, music);
    if (m->kind == SW_MUSIC_TEMPO) {
        return true;
    }
    if (m->kind == SW_MUSIC_SET) {
        const char *path = sw_reading_name(p->plan->reading, m->name);
        return strncmp(path, "Score.", 6) == 0 || strncmp(path, "Timing.", 7) == 0;
    }
    if (m->kind != SW_MUSIC_SETTING) {
        return false;
    }
    sw_slice text = sw_music_slice(p->plan->reading, music);
    for (size_t i = 0; i < sizeof names / sizeof names[0]; i++) {
        size_t length = strlen(names[i]);
        if (sw_slice_starts(text, names[i]) &&
            (text.length == length || strchr(" \t\r\n\"#\\0123456789", text.data[length]) != NULL)) {
            return true;
        }
    }
    return false;
}

/* The name of the staff belongs to the group of its parts. */
static bool is_staff_name(const sw_part_printer *p, uint32_t music)
{
    const char *path = sw_reading_name(p->plan->reading, at(p, music)->name);
    return at(p, music)->kind == SW_MUSIC_SET && p->plan->division->group != NULL &&
           (strcmp(path, "Staff.instrumentName") == 0 || strcmp(path, "Staff.shortInstrumentName") == 0);
}

/* \ottava goes with the notes behind it. */
static bool is_for_other_part(const sw_part_printer *p, uint32_t music)
{
    if (at(p, music)->kind != SW_MUSIC_SETTING || p->plan->parts == NULL ||
        !sw_slice_starts(sw_music_slice(p->plan->reading, music), "\\ottava")) {
        return false;
    }
    for (uint32_t c = at(p, music)->next; c != SW_NO_INDEX; c = at(p, c)->next) {
        if (sw_part_has_notes(p, c)) {
            return !sw_part_plays(p, c);
        }
    }
    return p->part != 0;
}

/* Whether the music of another part in or below a node can become one silence: nothing in it is said that
 * this part needs too, and no bar check stands there. Around tuplets and tremolos only what the bars and the
 * key depend on counts. */
static bool can_be_silence(const sw_part_printer *p, uint32_t music, bool scaled)
{
    const sw_music *m = at(p, music);
    if (m->kind == SW_MUSIC_SETTING || m->kind == SW_MUSIC_SET || m->kind == SW_MUSIC_BAR_CHECK) {
        return scaled;
    }
    if (m->kind >= SW_MUSIC_BAR_CHECK) {
        return m->kind == SW_MUSIC_MARK || m->kind == SW_MUSIC_CLEF || m->kind == SW_MUSIC_OCTAVE_CHECK;
    }
    scaled = scaled || m->kind == SW_MUSIC_SCALE || m->kind == SW_MUSIC_GRACE;
    for (uint32_t c = is_item(m->kind) ? SW_NO_INDEX : m->first; c != SW_NO_INDEX; c = at(p, c)->next) {
        if (!can_be_silence(p, c, scaled)) {
            return false;
        }
    }
    return true;
}

/* A variable with notes that is not divided is not heard in this score; the upper part keeps it. */
static bool is_unheard_reference(const sw_part_printer *p, uint32_t music)
{
    return at(p, music)->kind == SW_MUSIC_REFERENCE && p->plan->parts != NULL &&
           sw_part_has_notes(p, music) && !sw_part_plays(p, music) && !sw_plan_uses_divided(p->plan, music);
}

static token_kind classify(const sw_part_printer *p, uint32_t music)
{
    const sw_music *m = at(p, music);
    if (m->kind == SW_MUSIC_CLEF && p->part == 0 && p->plan->clef_stays != NULL &&
        p->plan->clef_stays[music] != 0) {
        return TOKEN_VERBATIM;
    }
    if (m->kind == SW_MUSIC_CLEF || m->kind == SW_MUSIC_OCTAVE_CHECK) {
        return TOKEN_DROP; /* a part has its own clefs, and its own octaves from note to note */
    }
    if ((m->kind == SW_MUSIC_REST || (m->flags & SW_MUSIC_AS_REST) != 0) && p->plan->parts != NULL) {
        return sw_part_hides_rest(p, music) ? TOKEN_SILENT : TOKEN_REST;
    }
    if (m->kind == SW_MUSIC_FULL_REST && p->plan->parts != NULL && sw_part_hides_rest(p, music)) {
        return TOKEN_SILENT;
    }
    if (m->kind == SW_MUSIC_REFERENCE && p->plan->parts == NULL) {
        return sw_plan_divides(p->plan, p->plan->reading, m->name) ? TOKEN_KEEP : TOKEN_VERBATIM;
    }
    if (is_staff_name(p, music)) {
        return p->part == 0 ? TOKEN_KEEP : TOKEN_DROP;
    }
    if (p->plan->parts == NULL) { /* another main file: only the variables inside count */
        return m->first != SW_NO_INDEX && !is_item(m->kind) ? TOKEN_KEEP : TOKEN_VERBATIM;
    }
    if (sw_part_plays(p, music)) {
        return TOKEN_KEEP;
    }
    if (sw_part_has_notes(p, music)) {
        if (sw_plan_uses_divided(p->plan, music)) {
            return TOKEN_KEEP;
        }
        if (m->kind == SW_MUSIC_GRACE || is_unheard_reference(p, music)) {
            return TOKEN_DROP;
        }
        /* The structure of repeats stays, with rests inside. */
        return m->kind == SW_MUSIC_REPEAT || m->kind == SW_MUSIC_ALTERNATIVES || m->kind == SW_MUSIC_VOLTA ||
                       m->kind == SW_MUSIC_AFTER_GRACE || m->kind == SW_MUSIC_UNFOLD ||
                       !can_be_silence(p, music, false)
                   ? TOKEN_KEEP
                   : TOKEN_SILENT;
    }
    if (p->part > 0 && is_for_whole_score(p, music)) {
        return TOKEN_DROP;
    }
    if (is_for_other_part(p, music)) {
        return TOKEN_DROP;
    }
    return is_item(m->kind) ? TOKEN_KEEP : TOKEN_VERBATIM;
}

/* Whether this part has marks at an item, so that its rest can't be joined to the one before. */
static bool has_marks(const sw_part_printer *p, uint32_t music)
{
    for (uint32_t c = at(p, music)->first; c != SW_NO_INDEX; c = at(p, c)->next) {
        if (at(p, c)->kind == SW_MUSIC_MARK && (p->plan->mark_parts[c] & 1u << p->part) != 0) {
            return true;
        }
    }
    for (size_t i = 0; i < p->plan->added_count; i++) {
        if (p->plan->added[i].item == music && p->plan->added[i].part == p->part) {
            return true;
        }
    }
    return false;
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
    bool made = tokens[from].kind == TOKEN_SILENT;
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
        if (tokens[i].kind == TOKEN_DROP) {
            continue;
        }
        if ((tokens[i].kind != TOKEN_SILENT && tokens[i].kind != TOKEN_REST) ||
            has_marks(p, tokens[i].music)) {
            break;
        }
        const sw_event *event = sw_part_first_event(p, tokens[i].music);
        sw_rational next_end;
        if (event == NULL || !sw_part_end(p, tokens[i].music, &next_end) ||
            !sw_rational_equal(event->onset, *end) || !same_bar(p, event->onset, *onset)) {
            break;
        }
        *end = next_end;
        made = made || tokens[i].kind == TOKEN_SILENT;
        taken = i - from + 1;
    }
    return made ? taken : 0;
}

/* A silent item where rests can't be joined: it keeps its own value. */
static void put_single_rest(sw_part_printer *p, uint32_t music)
{
    const sw_music *m = at(p, music);
    if (is_item(m->kind)) {
        sw_put_rest(p, sw_part_rest_letter(p, sw_part_first_event(p, music)), sw_music_duration(m));
    } else {
        sw_print_part(p, music);
    }
}

static void print_token(sw_part_printer *p, const token *t, uint32_t file)
{
    if (at(p, t->music)->kind == SW_MUSIC_CHANGE) {
        sw_part_fail(
            p, t->music,
            "the music changes staves here; a staff that shares its notes with another can't be divided");
        return;
    }
    if (t->kind == TOKEN_VERBATIM) {
        copy(p, file, t->start, t->end);
        return;
    }
    put_clef(p, is_item(at(p, t->music)->kind) ? sw_part_first_event(p, t->music) : NULL);
    p->among_items = true;
    if (t->start < at(p, t->music)->start) {
        copy(p, file, t->start, at(p, t->music)->start); /* `\tweak color #red` before its note */
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

/* Writes the items from `first` on, whose text lies in [from, to). */
static void print_sequence(sw_part_printer *p, uint32_t first, uint32_t file, uint32_t from, uint32_t to)
{
    size_t count = 0;
    for (uint32_t c = first; c != SW_NO_INDEX; c = at(p, c)->next) {
        count++;
    }
    token *tokens = sw_alloc((count + 1) * sizeof *tokens);
    count = 0;
    for (uint32_t c = first; c != SW_NO_INDEX; c = at(p, c)->next) {
        if (at(p, c)->file != file) {
            sw_part_fail(
                p, c, "this music stands inside a call or an included file, and can't be divided from here");
            continue;
        }
        tokens[count++] =
            (token){c, classify(p, c), sw_node_begin(p->plan->reading, c), sw_node_end(p->plan->reading, c)};
    }
    uint32_t position = from;
    for (size_t i = 0; i < count; i++) {
        token *t = &tokens[i];
        sw_slice gap = sw_text_slice(p->plan->reading->files[file].text, position, t->start);
        if (t->kind == TOKEN_DROP) {
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
        size_t joined = t->kind == TOKEN_SILENT || t->kind == TOKEN_REST
                            ? join_rests(p, tokens, i, count, file, &onset, &end)
                            : 0;
        if (joined > 0 && p->in_time) {
            put_clef(p, sw_part_first_event(p, t->music));
            sw_put_silence(p, sw_part_first_event(p, t->music)->voice, onset, end);
            sw_print_marks(p, t->music, false);
            separate(p, place);
            position = tokens[i + joined - 1].end;
            i += joined - 1;
            continue;
        }
        if (t->kind == TOKEN_SILENT) {
            put_single_rest(p, t->music);
            sw_print_marks(p, t->music, false);
        } else {
            print_token(p, t, file);
        }
        separate(p, place);
        position = t->end;
    }
    copy(p, file, position, to);
    free(tokens);
}

/* ---- compounds ---- */

/* A child of a compound, in which this part may be silent. */
static void print_child(sw_part_printer *p, uint32_t music)
{
    bool silent = p->plan->parts != NULL && sw_part_has_notes(p, music) && !sw_part_plays(p, music);
    if (silent && is_item(at(p, music)->kind)) {
        put_single_rest(p, music);
        sw_print_marks(p, music, false);
    } else if (!is_unheard_reference(p, music)) {
        sw_print_part(p, music);
    }
}

/* A command with music as its last arguments: its own text as it is, the music through the printer. */
static void print_wrapped(sw_part_printer *p, uint32_t music)
{
    const sw_music *m = at(p, music);
    uint32_t position = m->start;
    for (uint32_t c = m->first; c != SW_NO_INDEX; c = at(p, c)->next) {
        if (at(p, c)->file != m->file) {
            sw_part_fail(p, c, "this music stands inside a call, and can't be divided");
            return;
        }
        uint32_t begin = sw_node_begin(p->plan->reading, c);
        copy(p, m->file, position, begin);
        if (!is_item(at(p, c)->kind) || !sw_part_has_notes(p, c) || sw_part_plays(p, c)) {
            copy(p, m->file, begin, at(p, c)->start);
        }
        print_child(p, c);
        position = sw_node_end(p->plan->reading, c);
    }
    copy(p, m->file, position, sw_node_end(p->plan->reading, music));
}

static void print_block(sw_part_printer *p, uint32_t music, uint32_t bracket)
{
    const sw_music *m = at(p, music);
    sw_slice text = sw_music_slice(p->plan->reading, music);
    if (text.length < 2 * bracket || (text.data[0] != '{' && text.data[0] != '<')) {
        print_wrapped(p, music);
        return;
    }
    copy(p, m->file, m->start, m->start + bracket);
    print_sequence(p, m->first, m->file, m->start + bracket, m->end - bracket);
    copy(p, m->file, m->end - bracket, m->end);
}

/* The items of a block without its brackets and the white space inside them. */
static void print_without_brackets(sw_part_printer *p, uint32_t music)
{
    const sw_music *block = at(p, music);
    uint32_t from = block->start + 1;
    uint32_t to = block->end - 1;
    const char *bytes = p->plan->reading->files[block->file].text->bytes;
    while (from < to && strchr(" \t\r\n", bytes[from]) != NULL) {
        from++;
    }
    uint32_t last = from;
    for (uint32_t c = block->first; c != SW_NO_INDEX; c = at(p, c)->next) {
        uint32_t end = sw_node_end(p->plan->reading, c);
        last = end > last ? end : last;
    }
    bool comment = last < to && memchr(bytes + last, '%', to - last) != NULL; /* it ends with its line */
    while (!comment && to > from && strchr(" \t\r\n", bytes[to - 1]) != NULL) {
        to--;
    }
    print_sequence(p, block->first, block->file, from, to);
}

/* The one voice of `<< a \\ b >>` that this part has, filled up with rests where another voice is longer. */
static void put_only_voice(sw_part_printer *p, uint32_t whole, uint32_t voice, bool bare)
{
    sw_rational voice_end;
    sw_rational whole_end;
    bool shorter = sw_part_end(p, voice, &voice_end) && sw_part_end(p, whole, &whole_end) &&
                   sw_rational_compare(voice_end, whole_end) < 0;
    if (shorter && !bare) {
        sw_buffer_string(p->out, "{ ");
    }
    if (bare && at(p, voice)->kind == SW_MUSIC_SEQUENCE &&
        sw_music_slice(p->plan->reading, voice).data[0] == '{') {
        print_without_brackets(p, voice);
    } else {
        print_child(p, voice);
    }
    if (shorter) {
        sw_buffer_char(p->out, ' ');
        sw_put_silence(p, sw_part_first_event(p, voice)->voice, voice_end, whole_end);
        sw_buffer_string(p->out, bare ? "" : " }");
    }
}

/* `<< a \\ b >>` where this part has notes in one of the voices only: that voice; `bare` among other items,
 * where it needs no brackets. */
static void print_simultaneous(sw_part_printer *p, uint32_t music, bool bare)
{
    const sw_music *m = at(p, music);
    const sw_reading *reading = p->plan->reading;
    uint32_t voices = 0;
    uint32_t kept = 0;
    uint32_t the_one = SW_NO_INDEX;
    uint32_t plain = 0; /* children without notes of this staff */
    for (uint32_t c = m->first; c != SW_NO_INDEX; c = at(p, c)->next) {
        if (!sw_part_has_notes(p, c)) {
            plain++;
            continue;
        }
        voices++;
        if (sw_plan_keeps(p->plan, p->part, music, c)) {
            kept++;
            the_one = c;
        }
    }
    bool separated = m->first != SW_NO_INDEX && at(p, m->first)->kind == SW_MUSIC_CONTEXT &&
                     strcmp(sw_reading_name(reading, at(p, m->first)->name), "Bottom") == 0;
    if (p->plan->parts == NULL || voices == 0 || kept == voices) {
        if (!separated) {
            print_block(p, music, 2);
            return;
        }
        the_one = SW_NO_INDEX;
    } else if (kept == 1 && plain == 0) {
        uint32_t inner = the_one;
        while (at(p, inner)->kind == SW_MUSIC_CONTEXT && at(p, inner)->first != SW_NO_INDEX &&
               strcmp(sw_reading_name(reading, at(p, inner)->name), "Bottom") == 0) {
            inner = at(p, inner)->first;
        }
        put_only_voice(p, music, inner, bare);
        return;
    }
    /* Voices without notes of this part are left out, with their separators. */
    sw_buffer_string(p->out, "<< ");
    bool first = true;
    for (uint32_t c = m->first; c != SW_NO_INDEX; c = at(p, c)->next) {
        if (!sw_plan_keeps(p->plan, p->part, music, c)) {
            continue;
        }
        if (!first) {
            sw_buffer_string(p->out, separated ? " \\\\ " : " ");
        }
        first = false;
        uint32_t inner = separated ? at(p, c)->first : c;
        if (inner != SW_NO_INDEX) {
            print_child(p, inner);
        }
    }
    sw_buffer_string(p->out, " >>");
}

/* \set Staff.instrumentName: the group gets it. */
static void print_setting(sw_part_printer *p, uint32_t music)
{
    const sw_music *m = at(p, music);
    uint32_t end = sw_node_end(p->plan->reading, music);
    sw_slice text = sw_text_slice(p->plan->reading->files[m->file].text, m->start, end);
    const char *staff = is_staff_name(p, music) ? memmem(text.data, text.length, "Staff.", 6) : NULL;
    size_t before = staff == NULL ? 0 : (size_t)(staff - text.data);
    if (staff != NULL) {
        sw_buffer_append(p->out, (sw_slice){text.data, before});
        sw_buffer_format(p->out, "%s.", p->plan->division->group);
        before += 6;
    }
    sw_buffer_append(p->out, (sw_slice){text.data + before, text.length - before});
}

static void print_reference(sw_part_printer *p, uint32_t music)
{
    const sw_music *m = at(p, music);
    copy(p, m->file, m->start, m->end);
    bool divided = sw_plan_divides(p->plan, p->plan->reading, m->name);
    if (divided && p->plan->parts != NULL && m->first != SW_NO_INDEX && at(p, m->first)->file == m->file &&
        p->relative &&
        (at(p, m->first)->kind != SW_MUSIC_RELATIVE && at(p, m->first)->kind != SW_MUSIC_FIXED)) {
        sw_part_fail(p, music,
                     "this variable takes its octaves from the \\relative around it; write \\relative inside "
                     "the variable "
                     "first");
    }
    if (divided) {
        sw_buffer_string(p->out, p->plan->division->suffixes[p->part]);
        p->has_duration = false; /* what follows must not depend on the variable's last duration */
    }
}

/* \relative c'': the start pitch moves by octaves to where this part begins, so that its first note needs no
 * marks. */
static void print_relative(sw_part_printer *p, uint32_t music)
{
    const sw_music *m = at(p, music);
    bool outer = p->relative;
    sw_pitch outer_last = p->last;
    p->relative = true;
    p->last = m->pitch;
    print_wrapped(p, music);
    p->relative = outer;
    p->last = outer_last;
}

static void print_absolute(sw_part_printer *p, uint32_t music)
{
    bool outer = p->relative;
    p->relative = false;
    print_wrapped(p, music);
    p->relative = outer;
}

/* Where values are scaled or grace notes are counted backwards, each note keeps its place. */
static void print_out_of_time(sw_part_printer *p, uint32_t music)
{
    bool in_time = p->in_time;
    bool among_graces = p->among_graces;
    p->in_time = false;
    p->among_graces = among_graces || at(p, music)->kind == SW_MUSIC_GRACE;
    print_wrapped(p, music);
    p->in_time = in_time;
    p->among_graces = among_graces;
}

void sw_print_part(sw_part_printer *p, uint32_t music)
{
    if (p->error != NULL) {
        return;
    }
    const sw_music *m = at(p, music);
    bool bare = p->among_items;
    p->among_items = false;
    switch ((sw_music_kind)m->kind) {
    case SW_MUSIC_NOTE:
    case SW_MUSIC_DRUM:
    case SW_MUSIC_CHORD:
    case SW_MUSIC_REPEAT_CHORD:
    case SW_MUSIC_BARE:
    case SW_MUSIC_REST:
    case SW_MUSIC_FULL_REST:
    case SW_MUSIC_SKIP:
        sw_print_item(p, music);
        break;
    case SW_MUSIC_SEQUENCE:
        print_block(p, music, 1);
        break;
    case SW_MUSIC_SIMULTANEOUS:
        print_simultaneous(p, music, bare);
        break;
    case SW_MUSIC_SET:
        print_setting(p, music);
        break;
    case SW_MUSIC_REFERENCE:
        print_reference(p, music);
        break;
    case SW_MUSIC_RELATIVE:
        print_relative(p, music);
        break;
    case SW_MUSIC_FIXED:
    case SW_MUSIC_TRANSPOSE:
        print_absolute(p, music);
        break;
    case SW_MUSIC_GRACE:
    case SW_MUSIC_SCALE:
        print_out_of_time(p, music);
        break;
    case SW_MUSIC_REPEAT: {
        const char *kind = sw_reading_name(p->plan->reading, m->name);
        if (strcmp(kind, "tremolo") == 0) {
            print_out_of_time(p, music);
        } else {
            print_wrapped(p, music);
        }
        break;
    }
    case SW_MUSIC_CHANGE:
        sw_part_fail(
            p, music,
            "the music changes staves here; a staff that shares notes with another can't be divided");
        break;
    case SW_MUSIC_PART_COMBINE:
        sw_part_fail(p, music, "two parts are combined here; divide one of them before they are combined");
        break;
    case SW_MUSIC_UNCERTAIN:
    case SW_MUSIC_QUOTE:
    case SW_MUSIC_CUE:
        sw_part_fail(p, music, "what this call does to the notes is not known, so they can't be divided");
        break;
    default:
        print_wrapped(p, music);
        break;
    }
}

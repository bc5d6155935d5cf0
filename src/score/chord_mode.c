/* Chord mode: the notes that a chord symbol such as `c:m7/g` stands for.
 *
 * A symbol is a root and a row of items behind it: steps (`7`, `5-`), modifiers (`m`, `sus`), and the signs
 * `:` (additions follow), `^` (removals follow), `/` (a note of the chord put at the bottom) and `/+` (a note
 * added at the bottom). The chord is first built as intervals above its root: thirds up to the first step,
 * then a leading modifier, then additions and removals. Only then it is moved to the root and turned over.
 *
 * All notes are heard at the place of the root, so each becomes a NOTE with the root's extent in a CHORD. */
#include <stdlib.h>

#include "score/reader.h"

enum { MAX_ITEMS = 64, MAX_NOTES = 64 };

typedef enum item_kind {
    ITEM_COLON,
    ITEM_CARET,
    ITEM_STEP,
    ITEM_MODIFIER,
    ITEM_INVERSION,
    ITEM_BASS
} item_kind;

typedef enum modifier {
    MOD_NONE,
    MOD_MINOR,
    MOD_AUGMENTED,
    MOD_DIMINISHED,
    MOD_MAJOR,
    MOD_SUSPENDED
} modifier;

typedef struct item {
    item_kind kind;
    modifier modifier;
    sw_pitch pitch; /* STEP: interval; INVERSION, BASS: as written */
} item;

typedef struct symbol {
    item items[MAX_ITEMS];
    size_t count;
} symbol;

/* Intervals above the root, or pitches. */
typedef struct pile {
    sw_pitch notes[MAX_NOTES];
    size_t count;
} pile;

/* ---- reading the symbol ---- */

static void add_item(symbol *s, item added)
{
    if (s->count < MAX_ITEMS) {
        s->items[s->count++] = added;
    }
}

static bool is_digit(char c)
{
    return c >= '0' && c <= '9';
}

static bool is_letter(char c)
{
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (unsigned char)c >= 0x80;
}

static sw_pitch interval(int step_from_one, int quarter_tones)
{
    int steps = step_from_one - 1;
    return (sw_pitch){(int8_t)(steps % 7), (int8_t)(steps / 7), (int8_t)quarter_tones};
}

/* `7`, `5-`, `11+`: sevenths are minor. */
static size_t read_step(sw_slice text, size_t at, symbol *s)
{
    int number = 0;
    for (; at < text.length && is_digit(text.data[at]); at++) {
        number = number < 50 ? number * 10 + (text.data[at] - '0') : number;
    }
    number = number < 1 ? 1 : number;
    int quarter_tones = number % 7 == 0 ? -2 : 0;
    if (at < text.length && (text.data[at] == '+' || text.data[at] == '-')) {
        quarter_tones += text.data[at++] == '+' ? 2 : -2;
    }
    add_item(s, (item){.kind = ITEM_STEP, .pitch = interval(number, quarter_tones)});
    return at;
}

static size_t read_modifier(sw_slice text, size_t at, symbol *s)
{
    static const struct {
        const char *name;
        modifier modifier;
    } names[] = {{"m", MOD_MINOR},        {"min", MOD_MINOR}, {"aug", MOD_AUGMENTED},
                 {"dim", MOD_DIMINISHED}, {"maj", MOD_MAJOR}, {"sus", MOD_SUSPENDED}};
    size_t end = at;
    while (end < text.length && is_letter(text.data[end])) {
        end++;
    }
    sw_slice word = {text.data + at, end - at};
    for (size_t i = 0; i < sizeof names / sizeof names[0]; i++) {
        if (sw_slice_is(word, names[i].name)) {
            add_item(s, (item){.kind = ITEM_MODIFIER, .modifier = names[i].modifier});
        }
    }
    return end;
}

/* `/a` or `/+es'`: at the sign. */
static size_t read_low_note(const sw_reader *reader, sw_slice text, size_t at, symbol *s)
{
    item_kind kind = ITEM_INVERSION;
    at++;
    if (at < text.length && text.data[at] == '+') {
        kind = ITEM_BASS;
        at++;
    }
    size_t end = at;
    while (end < text.length && is_letter(text.data[end])) {
        end++;
    }
    const sw_note_name *name = sw_note_table_find(&reader->notes, (sw_slice){text.data + at, end - at});
    if (name != NULL) { /* its octave does not matter: it goes below the root */
        add_item(s, (item){.kind = kind, .pitch = {name->step, -1, name->alter}});
    }
    return end;
}

static void read_symbol(const sw_reader *reader, sw_slice text, symbol *s)
{
    for (size_t at = 0; at < text.length;) {
        char c = text.data[at];
        if (is_digit(c)) {
            at = read_step(text, at, s);
        } else if (is_letter(c)) {
            at = read_modifier(text, at, s);
        } else if (c == '/') {
            at = read_low_note(reader, text, at, s);
        } else {
            if (c == ':' || c == '^') {
                add_item(s, (item){.kind = c == ':' ? ITEM_COLON : ITEM_CARET});
            }
            at++;
        }
    }
}

/* ---- piles of notes ---- */

static void put_on(pile *p, sw_pitch pitch)
{
    if (p->count < MAX_NOTES) {
        p->notes[p->count++] = pitch;
    }
}

static const sw_pitch *find_step(const pile *p, int step)
{
    for (size_t i = 0; i < p->count; i++) {
        if (sw_pitch_staff_steps(p->notes[i]) == step - 1) {
            return &p->notes[i];
        }
    }
    return NULL;
}

static void remove_step(pile *p, int step)
{
    size_t kept = 0;
    for (size_t i = 0; i < p->count; i++) {
        if (sw_pitch_staff_steps(p->notes[i]) != step - 1) {
            p->notes[kept++] = p->notes[i];
        }
    }
    p->count = kept;
}

static void replace_step(pile *p, int step, int quarter_tones)
{
    for (size_t i = 0; i < p->count; i++) {
        if (sw_pitch_staff_steps(p->notes[i]) == step - 1) {
            p->notes[i] = interval(step, quarter_tones);
        }
    }
}

/* The thirds of the root's dominant scale below a step, then the step itself. */
static void stack_thirds(pile *p, sw_pitch top)
{
    for (int step = 1; step <= 13; step += 2) {
        if (sw_pitch_staff_steps(top) <= step - 1) {
            put_on(p, top);
            return;
        }
        put_on(p, interval(step, step == 7 ? -2 : 0));
    }
}

static void apply_modifier(pile *p, modifier m)
{
    switch (m) {
    case MOD_MINOR:
        replace_step(p, 3, -2);
        break;
    case MOD_AUGMENTED:
        replace_step(p, 5, 2);
        replace_step(p, 3, 0);
        break;
    case MOD_DIMINISHED:
        replace_step(p, 3, -2);
        replace_step(p, 5, -2);
        replace_step(p, 7, -4);
        break;
    case MOD_MAJOR:
        remove_step(p, 7);
        put_on(p, interval(7, 0));
        break;
    case MOD_SUSPENDED:
        remove_step(p, 3);
        break;
    case MOD_NONE:
        break;
    }
}

/* By octave, name, alteration: the order of the language. */
static int compare(const void *a, const void *b)
{
    const sw_pitch *x = a;
    const sw_pitch *y = b;
    int order = sw_pitch_staff_steps(*x) - sw_pitch_staff_steps(*y);
    return order != 0 ? order : x->alter - y->alter;
}

/* ---- building ---- */

typedef struct low_notes {
    bool has_inversion;
    bool has_bass;
    sw_pitch inversion;
    sw_pitch bass;
} low_notes;

/* The chord as intervals above its root, lowest first. */
static void build(const symbol *s, pile *p, low_notes *low)
{
    size_t at = 0;
    bool additions = true;
    bool written_eleventh = false;
    bool written_suspension = false;
    bool no_third = false;
    modifier lead = MOD_NONE;
    sw_pitch top = interval(5, 0);
    if (s->count > 0) {
        additions = s->items[0].kind == ITEM_COLON;
        at += additions;
    }
    if (at < s->count && s->items[at].kind == ITEM_MODIFIER) {
        lead = s->items[at++].modifier;
    }
    if (at < s->count && s->items[at].kind == ITEM_STEP && lead != MOD_SUSPENDED) {
        top = s->items[at++].pitch;
        written_eleventh = sw_pitch_staff_steps(top) == 10;
        no_third = sw_pitch_equal(top, interval(5, 0)); /* c:5 is the bare fifth */
    }
    stack_thirds(p, top);
    apply_modifier(p, lead);
    for (; additions && at < s->count; at++) {
        if (s->items[at].kind == ITEM_STEP) {
            int step = sw_pitch_staff_steps(s->items[at].pitch) + 1;
            written_eleventh = written_eleventh || step == 11;
            written_suspension = written_suspension || step == 2 || step == 4;
            no_third = no_third && step != 3;
            remove_step(p, step);
            put_on(p, s->items[at].pitch);
        } else if (s->items[at].kind == ITEM_MODIFIER) {
            apply_modifier(p, s->items[at].modifier);
        } else {
            break;
        }
    }
    if (at < s->count && s->items[at].kind == ITEM_CARET) {
        for (at++; at < s->count && s->items[at].kind == ITEM_STEP; at++) {
            remove_step(p, sw_pitch_staff_steps(s->items[at].pitch) + 1);
        }
    }
    if (at < s->count && s->items[at].kind == ITEM_INVERSION) {
        low->has_inversion = true;
        low->inversion = s->items[at++].pitch;
    }
    if (at < s->count && s->items[at].kind == ITEM_BASS) {
        low->has_bass = true;
        low->bass = s->items[at].pitch;
    }
    if (lead == MOD_SUSPENDED && !written_suspension) {
        put_on(p, interval(4, 0));
    }
    qsort(p->notes, p->count, sizeof p->notes[0], compare);
    const sw_pitch *third = find_step(p, 3);
    const sw_pitch *eleventh = find_step(p, 11);
    if (!written_eleventh && third != NULL && eleventh != NULL && third->alter == 0 && eleventh->alter == 0) {
        remove_step(p, 11); /* it clashes with the major third */
    }
    if (no_third) {
        remove_step(p, 3);
    }
}

static sw_pitch just_below(sw_pitch pitch, sw_pitch root)
{
    return (sw_pitch){pitch.step, (int8_t)(root.octave - (root.step > pitch.step ? 0 : 1)), pitch.alter};
}

static sw_pitch octaves_down(sw_pitch pitch, int octaves)
{
    pitch.octave = (int8_t)(pitch.octave - octaves);
    return pitch;
}

/* Puts a note of the chord at the bottom, and the notes above it with it as long as they stay below the
 * lowest of the others. False when the chord has no such note. */
static bool turn_over(pile *p, sw_pitch inversion, sw_pitch root, const low_notes *low)
{
    pile others = {.count = 0};
    sw_pitch original = {0, 0, 0};
    bool found = false;
    for (size_t i = 0; i < p->count; i++) {
        if (p->notes[i].step == inversion.step && p->notes[i].alter == inversion.alter) {
            original = found ? original : p->notes[i];
            found = true;
        } else {
            put_on(&others, p->notes[i]);
        }
    }
    if (!found) {
        return false;
    }
    int octaves = original.octave - just_below(inversion, root).octave;
    p->count = 0;
    put_on(p, octaves_down(original, octaves));
    if (low->has_bass) {
        put_on(p, low->bass);
    }
    size_t high = 0;
    while (high < others.count && compare(&others.notes[high], &original) < 0) {
        high++;
    }
    for (size_t i = 0; i < others.count; i++) {
        sw_pitch down = octaves_down(others.notes[i], octaves);
        bool follows = high > 0 && i >= high && compare(&down, &others.notes[0]) < 0;
        put_on(p, follows ? down : others.notes[i]);
    }
    return true;
}

static void make_chord(const symbol *s, sw_pitch root, pile *p)
{
    low_notes low = {0};
    build(s, p, &low);
    for (size_t i = 0; i < p->count; i++) {
        p->notes[i] = sw_pitch_transpose(p->notes[i], root);
    }
    if (low.has_bass) {
        low.bass = just_below(low.bass, root);
    }
    if (low.has_inversion && p->count > 0) {
        if (turn_over(p, low.inversion, p->notes[0], &low)) {
            return;
        }
        low.has_bass = true; /* a note that is not in the chord becomes its bass */
        low.bass = just_below(low.inversion, root);
    }
    if (low.has_bass) {
        put_on(p, low.bass);
    }
}

uint32_t sw_read_chord_mode(sw_reader *reader, sw_cursor *cursor, uint32_t root)
{
    symbol s = {.count = 0};
    uint32_t end = sw_music_at(reader, root)->end;
    while (sw_cursor_more(cursor) && sw_cursor_kind(cursor) == SW_NODE_CHORD_MODIFIER) {
        read_symbol(reader, sw_cursor_text(cursor), &s);
        end = sw_cursor_node(cursor)->end;
        sw_cursor_next(cursor);
    }
    sw_music model = *sw_music_at(reader, root);
    model.pitch.octave++;
    pile p = {.count = 0};
    make_chord(&s, model.pitch, &p);
    uint32_t chord = sw_music_add(reader, SW_MUSIC_CHORD, model.file, model.start, end);
    sw_music *c = sw_music_at(reader, chord);
    c->flags = model.flags & SW_MUSIC_WRITTEN_VALUE;
    c->log = model.log;
    c->dots = model.dots;
    c->num = model.num;
    c->den = model.den;
    sw_children children = {.first = SW_NO_INDEX};
    for (size_t i = 0; i < p.count; i++) {
        uint32_t note =
            i == 0 ? root : sw_music_add(reader, SW_MUSIC_NOTE, model.file, model.start, model.end);
        sw_music *m = sw_music_at(reader, note);
        *m = model;
        m->pitch = p.notes[i];
        m->flags = SW_MUSIC_PITCHED | SW_MUSIC_CHORD_MODE;
        sw_children_add(reader, &children, note);
    }
    sw_music_at(reader, chord)->first = children.first;
    return chord;
}

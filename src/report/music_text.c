/* A file's music as text, for a diff: one line a bar a staff, without anything that is only looks. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "stavewright/meaning.h"
#include "stavewright/report.h"

/* What has a place in a voice: a note, chord or rest, or marks without one. */
typedef struct item {
    uint32_t voice;
    sw_rational onset;
    sw_rational grace;
    sw_rational end; /* of grace notes and marks alone: the onset */
    size_t order;
    sw_buffer text;
} item;

typedef struct items {
    item *list;
    size_t count;
    size_t capacity;
} items;

/* Where the lines of a score begin: its bars; of a variable that says no time signature, its bar checks. */
typedef struct lines {
    sw_rational *starts; /* and the end of the last one */
    size_t count;
    bool are_bars;
} lines;

typedef struct page {
    const sw_reading *reading;
    const sw_score *score;
    lines lines;
    sw_buffer *cells; /* [voice * lines + line]: what a voice has there */
    sw_buffer *keys;  /* [staff * lines + line] */
    sw_buffer *words; /* [verse * lines + line] */
    sw_buffer *all;   /* by line: what all staves have */
    sw_buffer *result;
} page;

/* ---- words for music ------------------------------------------------------------------------------------
 */

/* A length as note values are written: "4.", of a triplet "8*2/3". */
static void print_value(sw_rational length, sw_buffer *text)
{
    char value[SW_DURATION_TEXT];
    int64_t odd = length.den;
    while (odd > 0 && odd % 2 == 0) {
        odd /= 2;
    }
    int64_t shorter = 1;
    while (shorter * 2 < odd) {
        shorter *= 2;
    }
    sw_rational base = sw_rational_mul(length, sw_rational_make(odd, odd == 1 ? 1 : shorter));
    for (int dots = 0; odd > 0 && odd < 1000 && dots <= 3; dots++) {
        sw_rational plain =
            sw_rational_mul(base, sw_rational_make((int64_t)1 << dots, ((int64_t)2 << dots) - 1));
        for (int log = -3; log <= 10; log++) {
            sw_rational note =
                log < 0 ? sw_rational_make((int64_t)1 << -log, 1) : sw_rational_make(1, (int64_t)1 << log);
            if (sw_rational_equal(plain, note)) {
                sw_duration d = {(int8_t)log, (uint8_t)dots, odd == 1 ? 1 : (int32_t)shorter, (int32_t)odd};
                sw_buffer_string(text, sw_duration_print(d, value));
                return;
            }
        }
    }
    char fraction[SW_RATIONAL_TEXT];
    sw_buffer_format(text, "1*%s", sw_rational_print(length, fraction));
}

/* Letter, # or b, octave marks: whatever the note language of the source. */
static void print_pitch(sw_pitch pitch, sw_buffer *text)
{
    char name[SW_PITCH_TEXT];
    sw_pitch_print((sw_pitch){pitch.step, 0, pitch.alter}, name);
    sw_buffer_char(text, "cdefgab"[pitch.step]);
    sw_buffer_append(text, (sw_slice){name + 1, strlen(name) - 2}); /* without letter and octave */
    for (int octave = -1; octave < pitch.octave; octave++) {
        sw_buffer_char(text, '\'');
    }
    for (int octave = -1; octave > pitch.octave; octave--) {
        sw_buffer_char(text, ',');
    }
}

static int compare_texts(const void *a, const void *b)
{
    return strcmp(*(char *const *)a, *(char *const *)b);
}

/* The marks on some music, in an order of their own: how they are sorted in the source is no music. */
static void print_marks(const sw_reading *reading, uint32_t music, uint32_t more, sw_buffer *text)
{
    sw_arena *arena = sw_arena_new();
    const char **marks = NULL;
    size_t count = 0;
    size_t capacity = 0;
    for (int which = 0; which < (more == music ? 1 : 2); which++) {
        for (uint32_t m = reading->music[which == 0 ? music : more].first; m != SW_NO_INDEX;
             m = reading->music[m].next) {
            sw_mark_class class = SW_MARK_BEAM_START;
            if (reading->music[m].kind == SW_MUSIC_MARK) {
                class = sw_music_mark_class(reading, m);
            }
            if (class == SW_MARK_BEAM_START || class == SW_MARK_BEAM_END) {
                continue; /* looks, and the notes of a chord */
            }
            sw_buffer meaning = {0};
            sw_mark_meaning(reading, m, &meaning);
            marks = sw_grow(marks, count, &capacity, sizeof *marks);
            marks[count++] = sw_arena_format(arena,
                                             class == SW_MARK_TEXT        ? "\"%s\""
                                             : class == SW_MARK_FINGERING ? "-%s"
                                                                          : "%s",
                                             sw_buffer_text(&meaning));
            sw_buffer_free(&meaning);
        }
    }
    if (count > 1) {
        qsort(marks, count, sizeof *marks, compare_texts);
    }
    for (size_t i = 0; i < count; i++) {
        for (const char *c = marks[i]; *c != '\0'; c++) {
            sw_buffer_char(text, *c == '\n' || *c == '\t' ? ' ' : *c); /* one line a bar */
        }
    }
    free(marks);
    sw_arena_free(arena);
}

/* ---- what a voice has -----------------------------------------------------------------------------------
 */

static item *add_item(items *all, uint32_t voice, sw_rational onset, sw_rational grace)
{
    all->list = sw_grow(all->list, all->count, &all->capacity, sizeof *all->list);
    all->list[all->count] =
        (item){.voice = voice, .onset = onset, .grace = grace, .end = onset, .order = all->count};
    return &all->list[all->count++];
}

static void print_sound(const sw_reading *reading, const sw_event *event, sw_buffer *text)
{
    if (event->kind == SW_EVENT_NOTE) {
        print_pitch(event->pitch, text);
    } else {
        sw_buffer_string(text, sw_reading_name(reading, reading->music[event->music].name));
    }
}

/* Events [first, end) are one note, chord or rest. Silence without marks is what is left. */
static void add_events(const page *p, items *all, size_t first, size_t end)
{
    const sw_event *event = &p->score->events[first];
    bool sounds = event->kind == SW_EVENT_NOTE || event->kind == SW_EVENT_DRUM;
    sw_rational grace = {event->grace_num, event->grace_den};
    sw_buffer text = {0};
    sw_buffer_string(&text, (event->flags & SW_EVENT_CUE) != 0 ? "cue:" : "");
    sw_buffer_string(&text, sw_rational_is_zero(grace) ? "" : "grace:");
    sw_buffer_string(&text, !sounds ? "r" : end - first > 1 ? "<" : "");
    for (size_t e = first; sounds && e < end; e++) {
        sw_buffer_string(&text, e > first ? " " : "");
        print_sound(p->reading, &p->score->events[e], &text);
        if (end - first > 1) {
            print_marks(p->reading, p->score->events[e].music, p->score->events[e].music, &text);
        }
    }
    sw_buffer_string(&text, sounds && end - first > 1 ? ">" : "");
    print_value(event->duration, &text);
    size_t unmarked = text.length;
    print_marks(p->reading, event->chord, end - first > 1 ? event->chord : event->music, &text);
    if (sounds || text.length > unmarked) {
        item *i = add_item(all, event->voice, event->onset, grace);
        i->end = sw_rational_is_zero(grace) ? sw_event_end(event) : event->onset;
        i->text = text;
    } else {
        sw_buffer_free(&text);
    }
}

static void add_all_events(const page *p, items *all)
{
    const sw_score *score = p->score;
    for (size_t first = 0, end; first < score->event_count; first = end) {
        const sw_event *event = &score->events[first];
        end = first + 1;
        while ((event->flags & SW_EVENT_CHORD) != 0 && end < score->event_count &&
               score->events[end].chord == event->chord && score->events[end].voice == event->voice &&
               sw_rational_equal(score->events[end].onset, event->onset) &&
               score->events[end].grace_num == event->grace_num &&
               score->events[end].grace_den == event->grace_den) {
            end++;
        }
        if ((event->flags & SW_EVENT_HIDDEN) == 0) {
            add_events(p, all, first, end);
        }
    }
}

/* Marks on <>. */
static void add_bare_marks(const page *p, items *all)
{
    for (size_t s = 0; s < p->score->setting_count; s++) {
        const sw_setting *setting = &p->score->settings[s];
        sw_buffer text = {0};
        if (setting->voice != SW_NO_INDEX && p->reading->music[setting->music].kind == SW_MUSIC_CHORD) {
            print_marks(p->reading, setting->music, setting->music, &text);
        }
        if (text.length > 0) {
            item *i = add_item(all, setting->voice, setting->onset,
                               (sw_rational){setting->grace_num, setting->grace_den});
            sw_buffer_format(&i->text, "<>%s", sw_buffer_text(&text));
        }
        sw_buffer_free(&text);
    }
}

static int compare_items(const void *a, const void *b)
{
    const item *x = a;
    const item *y = b;
    if (x->voice != y->voice) {
        return x->voice < y->voice ? -1 : 1;
    }
    int order = sw_rational_compare(x->onset, y->onset);
    order = order != 0 ? order : sw_rational_compare(x->grace, y->grace);
    order = order != 0 ? order : sw_rational_compare(x->end, y->end); /* marks alone come first */
    return order != 0 ? order : (x->order > y->order) - (x->order < y->order);
}

/* ---- lines ----------------------------------------------------------------------------------------------
 */

static size_t line_at(const page *p, sw_rational onset)
{
    size_t low = 0;
    size_t high = p->lines.count;
    while (high - low > 1) {
        size_t middle = (low + high) / 2;
        if (sw_rational_compare(p->lines.starts[middle], onset) <= 0) {
            low = middle;
        } else {
            high = middle;
        }
    }
    return low;
}

static bool is_setting(const page *p, size_t setting, sw_music_kind kind)
{
    return p->reading->music[p->score->settings[setting].music].kind == (uint8_t)kind;
}

static bool has_setting(const page *p, sw_music_kind kind)
{
    for (size_t s = 0; s < p->score->setting_count; s++) {
        if (is_setting(p, s, kind)) {
            return true;
        }
    }
    return false;
}

static void find_lines(page *p)
{
    const sw_score *score = p->score;
    lines *l = &p->lines;
    l->are_bars =
        score->variable == 0 || has_setting(p, SW_MUSIC_TIME) || !has_setting(p, SW_MUSIC_BAR_CHECK);
    l->starts = sw_alloc((score->bar_count + score->setting_count + 3) * sizeof *l->starts);
    if (l->are_bars) {
        for (size_t b = 0; b < score->bar_count; b++) {
            l->starts[l->count++] = score->bars[b].start;
        }
    } else {
        l->starts[l->count++] = sw_rational_zero();
        for (size_t s = 0; s < score->setting_count; s++) {
            if (is_setting(p, s, SW_MUSIC_BAR_CHECK) &&
                sw_rational_compare(score->settings[s].onset, l->starts[l->count - 1]) > 0 &&
                sw_rational_compare(score->settings[s].onset, score->length) < 0) {
                l->starts[l->count++] = score->settings[s].onset;
            }
        }
    }
    l->starts[l->count] = score->length;
}

static void add_word(sw_buffer *line, const char *between, const char *word)
{
    sw_buffer_string(line, line->length > 0 ? between : "");
    sw_buffer_string(line, word);
}

static void add_silence(sw_buffer *cell, sw_rational from, sw_rational to)
{
    sw_rational length = sw_rational_sub(to, from);
    char fraction[SW_RATIONAL_TEXT];
    if (sw_rational_compare(length, sw_rational_make(1, 1)) > 0) {
        add_word(cell, " ", "r1*");
        sw_buffer_string(cell, sw_rational_print(length, fraction));
    } else if (sw_rational_compare(length, sw_rational_zero()) > 0) {
        add_word(cell, " ", "r");
        print_value(length, cell);
    }
}

/* Fills the cells of all voices. */
static void lay_out(page *p, const items *all)
{
    sw_rational clock = sw_rational_zero(); /* the voice is known up to here */
    for (size_t i = 0; i < all->count; i++) {
        const item *one = &all->list[i];
        const item *next = i + 1 < all->count && all->list[i + 1].voice == one->voice ? one + 1 : NULL;
        bool first = i == 0 || all->list[i - 1].voice != one->voice;
        size_t line = line_at(p, one->onset);
        sw_buffer *cell = &p->cells[one->voice * p->lines.count + line];
        clock = first ? p->lines.starts[line] : sw_rational_max(clock, p->lines.starts[line]);
        add_silence(cell, clock, one->onset);
        add_word(cell, " ", sw_buffer_text(&one->text));
        clock = sw_rational_max(first ? one->onset : clock, one->end);
        if (next == NULL || line_at(p, next->onset) != line) {
            add_silence(cell, clock, p->lines.starts[line + 1]);
        }
    }
}

static void add_keys(page *p)
{
    static const struct {
        int step;
        const char *name;
    } circle[] = {{3, "f"}, {0, "c"}, {4, "g"}, {1, "d"}, {5, "a"}, {2, "e"}, {6, "b"}};
    sw_key_changes keys = sw_key_changes_of(p->reading, p->score);
    for (size_t i = 0; i < keys.count; i++) {
        const sw_key_change *key = &keys.items[i];
        sw_buffer *cell = &p->keys[key->staff * p->lines.count + line_at(p, key->onset)];
        add_word(cell, ", ", "key");
        size_t empty = cell->length;
        for (size_t n = 0; n < 14; n++) { /* sharps from f on, flats from b on */
            size_t at = n < 7 ? n : 13 - n;
            int alter = key->alter[circle[at].step];
            if (n < 7 ? alter > 0 : alter < 0) {
                char name[SW_PITCH_TEXT];
                sw_pitch_print((sw_pitch){(int8_t)circle[at].step, 0, (int8_t)alter}, name);
                sw_buffer_format(cell, " %s%.*s", circle[at].name, (int)strlen(name) - 2, name + 1);
            }
        }
        sw_buffer_string(cell, cell->length == empty ? " natural" : "");
    }
    free(keys.items);
}

static void add_syllables(page *p)
{
    for (size_t i = 0; i < p->score->syllable_count; i++) {
        const sw_syllable *s = &p->score->syllables[i];
        const char *text = sw_reading_name(p->reading, p->reading->music[s->music].name);
        sw_buffer *cell = &p->words[s->line * p->lines.count + line_at(p, s->onset)];
        add_word(cell, " ", (s->flags & SW_SYLLABLE_EMPTY) != 0 ? "_" : text);
        sw_buffer_string(cell, (s->flags & SW_SYLLABLE_HYPHEN) != 0 ? "-" : "");
    }
}

/* A new metre, and what signs say; behind the beat where they do not stand at the beginning. */
static void add_for_all(page *p)
{
    const sw_score *score = p->score;
    bool timed = has_setting(p, SW_MUSIC_TIME);
    for (size_t b = 0; b < score->bar_count && p->lines.are_bars && timed; b++) {
        const sw_bar *bar = &score->bars[b];
        if (b == 0 || bar->beats != bar[-1].beats || bar->beat_value != bar[-1].beat_value) {
            sw_buffer_format(&p->all[b], "%d/%d", (int)bar->beats, (int)bar->beat_value);
        }
    }
    sw_signs signs = sw_signs_of(p->reading, score);
    for (size_t i = 0; i < signs.count; i++) {
        const sw_sign *sign = &signs.items[i];
        sw_rational onset = sw_rational_add(score->bars[sign->bar].start, sign->place);
        sw_buffer *cell = &p->all[p->lines.are_bars ? sign->bar : line_at(p, onset)];
        char beat[SW_RATIONAL_TEXT];
        add_word(cell, ", ",
                 sign->kind == SW_SIGN_TEMPO  ? "tempo "
                 : sign->kind == SW_SIGN_MARK ? "mark "
                                              : "");
        sw_buffer_string(cell, sign->text);
        bool ends = sw_rational_compare(sign->place, score->bars[sign->bar].length) >= 0;
        if (p->lines.are_bars && !sw_rational_is_zero(sign->place) && !ends) {
            sw_buffer_format(cell, " (beat %s)", sw_rational_print(sw_score_beat(score, onset), beat));
        }
    }
    sw_signs_free(&signs);
}

/* ---- the page -------------------------------------------------------------------------------------------
 */

/* All voices of a staff in a line; false when there is nothing. */
static bool join_voices(const page *p, uint32_t staff, size_t line, sw_buffer *text)
{
    const sw_buffer *key = &p->keys[staff * p->lines.count + line];
    sw_buffer_string(text, sw_buffer_text(key));
    bool several = false;
    for (uint32_t v = 0; v < p->score->voice_count; v++) {
        const sw_buffer *cell = &p->cells[v * p->lines.count + line];
        if (p->score->voices[v].staff == staff && cell->length > 0) {
            add_word(text, several ? " // " : ", ", sw_buffer_text(cell));
            several = true;
        }
    }
    return text->length > 0;
}

/* The staff on which a verse is sung; SW_NO_INDEX: none. */
static uint32_t staff_of_verse(const sw_score *score, uint32_t verse)
{
    for (size_t i = 0; i < score->syllable_count; i++) {
        if (score->syllables[i].line == verse && score->syllables[i].voice != SW_NO_INDEX) {
            return score->voices[score->syllables[i].voice].staff;
        }
    }
    return SW_NO_INDEX;
}

/* What stands in front of a line. */
static void print_label(const page *p, uint32_t staff, sw_buffer *text)
{
    char label[32];
    const char *variable = sw_reading_name(p->reading, p->score->variable);
    bool named = p->score->variable == 0 || p->score->staff_count > 1;
    sw_buffer_string(text, variable);
    if (named && staff != SW_NO_INDEX) {
        add_word(text, ", ", sw_staff_label(p->reading, p->score, staff, label));
    }
}

static void print_line(const page *p, uint32_t staff, const char *what, const char *text)
{
    sw_buffer label = {0};
    print_label(p, staff, &label);
    sw_buffer_string(&label, label.length > 0 && what[0] != '\0' ? ", " : "");
    sw_buffer_format(p->result, "%s%s%s: %s\n", p->score->variable == 0 ? "  " : "", sw_buffer_text(&label),
                     what, text);
    sw_buffer_free(&label);
}

static void print_words(const page *p, uint32_t staff, size_t line)
{
    for (uint32_t verse = 0, number = 0; verse < p->score->line_count; verse++) {
        if (staff_of_verse(p->score, verse) == staff) {
            const sw_buffer *cell = &p->words[verse * p->lines.count + line];
            char what[32];
            snprintf(what, sizeof what, "verse %u", ++number);
            if (cell->length > 0) {
                print_line(p, staff, what, sw_buffer_text(cell));
            }
        }
    }
}

/* Prints a line of the page; false when nobody plays in it. */
static bool print_bar(const page *p, size_t line)
{
    size_t before = p->result->length;
    if (p->all[line].length > 0) {
        print_line(p, SW_NO_INDEX, p->score->variable == 0 ? "all" : "", sw_buffer_text(&p->all[line]));
    }
    for (uint32_t staff = 0; staff < p->score->staff_count; staff++) {
        sw_buffer text = {0};
        if (join_voices(p, staff, line, &text)) {
            print_line(p, staff, "", sw_buffer_text(&text));
        }
        sw_buffer_free(&text);
        print_words(p, staff, line);
    }
    print_words(p, SW_NO_INDEX, line);
    return p->result->length > before;
}

static void print_score(const page *p)
{
    for (uint32_t staff = 0; staff < p->score->staff_count; staff++) {
        char label[32];
        if (sw_report_is_staff(p->reading, &p->score->staves[staff])) {
            sw_buffer_format(p->result, "staff: %s\n", sw_staff_label(p->reading, p->score, staff, label));
        }
    }
    for (size_t line = 0; line < p->lines.count; line++) {
        sw_buffer_format(p->result, "bar %d\n", (int)p->score->bars[line].number);
        print_bar(p, line);
    }
}

/* Lines of a variable have no numbers: bars that come in do not change all that follow. Silence is said as a
 * whole. */
static void print_variable(const page *p)
{
    sw_rational silent = sw_rational_zero();
    for (size_t line = 0; line <= p->lines.count; line++) {
        size_t before = p->result->length;
        bool last = line == p->lines.count;
        if (!last && !print_bar(p, line)) {
            sw_rational length = sw_rational_sub(p->lines.starts[line + 1], p->lines.starts[line]);
            silent = sw_rational_add(silent, length);
        } else if (!sw_rational_is_zero(silent)) {
            sw_buffer rest = {0};
            sw_buffer shown = {0};
            sw_buffer_append(&shown, (sw_slice){p->result->data + before, p->result->length - before});
            p->result->length = before;
            add_silence(&rest, sw_rational_zero(), silent);
            print_line(p, SW_NO_INDEX, "", sw_buffer_text(&rest));
            sw_buffer_append(p->result, sw_buffer_slice(&shown));
            sw_buffer_free(&rest);
            sw_buffer_free(&shown);
            silent = sw_rational_zero();
        }
    }
}

static void free_cells(sw_buffer *cells, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        sw_buffer_free(&cells[i]);
    }
    free(cells);
}

static void print_music(const sw_reading *reading, const sw_score *score, sw_buffer *result)
{
    page p = {.reading = reading, .score = score, .result = result};
    find_lines(&p);
    size_t voices = score->voice_count * p.lines.count;
    size_t staves = score->staff_count * p.lines.count;
    size_t verses = score->line_count * p.lines.count;
    p.cells = sw_alloc_zero(voices + 1, sizeof *p.cells);
    p.keys = sw_alloc_zero(staves + 1, sizeof *p.keys);
    p.words = sw_alloc_zero(verses + 1, sizeof *p.words);
    p.all = sw_alloc_zero(p.lines.count + 1, sizeof *p.all);
    items all = {0};
    if (p.lines.count > 0 && score->bar_count > 0) {
        add_all_events(&p, &all);
        add_bare_marks(&p, &all);
        if (all.count > 1) {
            qsort(all.list, all.count, sizeof *all.list, compare_items);
        }
        lay_out(&p, &all);
        add_keys(&p);
        add_syllables(&p);
        add_for_all(&p);
    }
    if (score->variable == 0) {
        print_score(&p);
    } else {
        print_variable(&p);
    }
    for (size_t i = 0; i < all.count; i++) {
        sw_buffer_free(&all.list[i].text);
    }
    free(all.list);
    free_cells(p.cells, voices);
    free_cells(p.keys, staves);
    free_cells(p.words, verses);
    free_cells(p.all, p.lines.count);
    free(p.lines.starts);
}

void sw_report_music(const sw_reading *reading, sw_buffer *result)
{
    for (size_t i = 0; i < reading->score_count; i++) {
        const sw_score *score = &reading->scores[i];
        if (score->in_markup) {
            continue;
        }
        sw_buffer_string(result, score->variable == 0 ? "score\n" : "");
        print_music(reading, score, result);
    }
}

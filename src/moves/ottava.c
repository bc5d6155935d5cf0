#include "moves/ottava.h"

#include <stdlib.h>
#include <string.h>

#include "checks/say.h"
#include "write/division.h"
#include "write/entry.h"

/* ---- writing brackets ---- */

/* By music node: the node around it; a variable's music stands alone, wherever it is used. */
static uint32_t *find_parents(const sw_reading *reading)
{
    uint32_t *parent = sw_alloc((reading->music_count + 1) * sizeof *parent);
    memset(parent, 0xff, (reading->music_count + 1) * sizeof *parent);
    for (uint32_t m = 0; m < reading->music_count; m++) {
        bool use = reading->music[m].kind == SW_MUSIC_REFERENCE;
        for (uint32_t c = use ? SW_NO_INDEX : reading->music[m].first; c != SW_NO_INDEX;
             c = reading->music[c].next) {
            parent[c] = m;
        }
    }
    return parent;
}

static bool is_repeat(const sw_reading *reading, uint32_t music)
{
    return reading->music[music].kind == SW_MUSIC_REPEAT;
}

static bool is_tremolo(const sw_reading *reading, uint32_t music)
{
    return is_repeat(reading, music) &&
           strcmp(sw_reading_name(reading, reading->music[music].name), "tremolo") == 0;
}

/* The node that holds an item and stands in a sequence, where a command can stand beside it; SW_NO_INDEX when
 * none does. */
static uint32_t in_sequence(const sw_reading *reading, const uint32_t *parent, uint32_t item)
{
    uint32_t found = item;
    for (uint32_t at = item; at != SW_NO_INDEX; at = parent[at]) {
        found = is_tremolo(reading, at) || reading->music[at].kind == SW_MUSIC_GRACE ||
                        reading->music[at].kind == SW_MUSIC_AFTER_GRACE
                    ? at
                    : found;
    }
    while (parent[found] != SW_NO_INDEX && reading->music[parent[found]].kind != SW_MUSIC_SEQUENCE) {
        found = parent[found];
    }
    return parent[found] == SW_NO_INDEX ? SW_NO_INDEX : found;
}

/* The repeat, or the outermost music, that a node stands in. */
static uint32_t repeat_around(const sw_reading *reading, const uint32_t *parent, uint32_t music)
{
    uint32_t at = parent[music];
    while (parent[at] != SW_NO_INDEX && !is_repeat(reading, at)) {
        at = parent[at];
    }
    return at;
}

/* "\ottava 1", or "\ottava #1" in a file that writes it so. */
static void print_ottava(const sw_text *text, int number, sw_buffer *result)
{
    static const char old[] = "\\ottava #";
    bool hash = memmem(text->bytes, text->length, old, strlen(old)) != NULL;
    sw_buffer_format(result, "%s%d", hash ? "\\ottava #" : "\\ottava ", number);
}

/* False when there is no place for the bracket. */
static bool write_bracket(sw_move *move, const sw_chosen *chosen, const uint32_t *parent,
                          const sw_bracket *bracket)
{
    const sw_reading *reading = chosen->reading;
    uint32_t first = in_sequence(reading, parent, chosen->score->events[bracket->first].chord);
    uint32_t last = in_sequence(reading, parent, chosen->score->events[bracket->last].chord);
    if (first == SW_NO_INDEX || last == SW_NO_INDEX ||
        reading->music[first].file != reading->music[last].file ||
        reading->music[first].start > reading->music[last].start ||
        repeat_around(reading, parent, first) != repeat_around(reading, parent, last)) {
        return false;
    }
    const sw_text *text = reading->files[reading->music[first].file].text;
    sw_buffer words = {0};
    print_ottava(text, bracket->octaves, &words);
    sw_buffer_string(&words, " ");
    uint32_t at = sw_run_begin(reading, first);
    sw_patch_add(&move->patch, text, at, at, sw_buffer_slice(&words));
    sw_buffer_clear(&words);
    sw_buffer_string(&words, " ");
    print_ottava(text, 0, &words);
    at = sw_node_end(reading, last);
    sw_patch_add(&move->patch, text, at, at, sw_buffer_slice(&words));
    sw_buffer_free(&words);
    return true;
}

/* What is written one after another with a node: the music up to the next << >>, context or variable. */
static uint32_t line_around(const sw_reading *reading, const uint32_t *parent, uint32_t music)
{
    uint32_t at = music;
    while (parent[at] != SW_NO_INDEX && reading->music[parent[at]].kind != SW_MUSIC_SIMULTANEOUS &&
           reading->music[parent[at]].kind != SW_MUSIC_CONTEXT) {
        at = parent[at];
    }
    return at;
}

static sw_ottava_places find_places(const sw_chosen *chosen, const uint32_t *parent)
{
    const sw_reading *reading = chosen->reading;
    const sw_score *score = chosen->score;
    sw_ottava_places places = {
        .unit = sw_alloc((score->event_count + 1) * sizeof(uint32_t)),
        .home = sw_alloc((score->event_count + 1) * sizeof(uint32_t)),
        .line = sw_alloc((score->event_count + 1) * sizeof(uint32_t)),
        .setting_line = sw_alloc((score->setting_count + 1) * sizeof(uint32_t)),
    };
    for (uint32_t e = 0; e < score->event_count; e++) {
        uint32_t unit = in_sequence(reading, parent, score->events[e].chord);
        places.unit[e] = unit;
        places.home[e] = unit == SW_NO_INDEX ? SW_NO_INDEX : repeat_around(reading, parent, unit);
        places.line[e] = line_around(reading, parent, score->events[e].chord);
    }
    for (size_t i = 0; i < score->setting_count; i++) {
        places.setting_line[i] = line_around(reading, parent, score->settings[i].music);
    }
    return places;
}

static void leave_places(sw_ottava_places *places)
{
    free(places->unit);
    free(places->home);
    free(places->line);
    free(places->setting_line);
}

static sw_brackets add_all(sw_move *move, const sw_chosen *chosen, int ledgers)
{
    uint32_t *parent = find_parents(chosen->reading);
    sw_ottava_places places = find_places(chosen, parent);
    sw_brackets planned = sw_ottava_plan(move, chosen, &places, ledgers);
    sw_brackets *brackets = &planned;
    leave_places(&places);
    size_t kept = 0;
    for (size_t i = 0; i < brackets->count; i++) {
        const sw_bracket *b = &brackets->items[i];
        if (write_bracket(move, chosen, parent, b)) {
            brackets->items[kept++] = *b;
            continue;
        }
        char place[SW_SAY];
        char label[32];
        sw_buffer_format(&move->notes,
                         "note: %s, %s: no bracket here: its ends stand in different repeats or variables\n",
                         sw_say_place(chosen->score, b->from, place),
                         sw_staff_label(chosen->reading, chosen->score, b->staff, label));
    }
    brackets->count = kept;
    free(parent);
    return planned;
}

/* ---- taking brackets out ---- */

static bool is_blank(char c)
{
    return c == ' ' || c == '\t';
}

/* Takes a command out: with its line when it has one of its own, otherwise with one space beside it, as one
 * came with it; a tab only where there is no space. */
static void take_out(sw_move *move, const sw_reading *reading, uint32_t music)
{
    const sw_music *m = &reading->music[music];
    const sw_text *text = reading->files[m->file].text;
    uint32_t from = m->start;
    uint32_t to = m->end;
    while (from > 0 && is_blank(text->bytes[from - 1])) {
        from--;
    }
    while (to < text->length && is_blank(text->bytes[to])) {
        to++;
    }
    bool begins = from == 0 || text->bytes[from - 1] == '\n';
    bool ends = to == text->length || text->bytes[to] == '\n' || text->bytes[to] == '\r';
    bool blank_before = from < m->start && !begins;
    bool blank_behind = to > m->end && !ends;
    if (begins && ends) {
        while (to < text->length && text->bytes[to] != '\n') {
            to++;
        }
        to += to < text->length;
    } else if (blank_before && (text->bytes[m->start - 1] == ' ' || !blank_behind)) {
        from = m->start - 1;
        to = m->end;
    } else {
        from = m->start;
        to = m->end + blank_behind;
    }
    sw_patch_add(&move->patch, text, from, to, (sw_slice){"", 0});
}

static bool holds_chosen(const sw_chosen *chosen, uint32_t staff, sw_rational from, sw_rational to)
{
    for (size_t i = 0; i < chosen->count; i++) {
        const sw_event *e = &chosen->score->events[chosen->events[i]];
        if (chosen->score->voices[e->voice].staff == staff && sw_rational_compare(e->onset, from) >= 0 &&
            sw_rational_compare(e->onset, to) < 0) {
            return true;
        }
    }
    return false;
}

/* The next bracket command of a staff behind a setting; the number of settings when there is none. */
static size_t next_command(const sw_chosen *chosen, size_t setting)
{
    const sw_score *score = chosen->score;
    size_t k = setting + 1;
    while (k < score->setting_count && (score->settings[k].staff != score->settings[setting].staff ||
                                        !sw_is_ottava(chosen->reading, &score->settings[k]))) {
        k++;
    }
    return k;
}

static void remove_all(sw_move *move, const sw_chosen *chosen, sw_brackets *brackets)
{
    const sw_score *score = chosen->score;
    for (size_t i = 0; i < score->setting_count; i++) {
        const sw_setting *open = &score->settings[i];
        if (!sw_is_ottava(chosen->reading, open) || sw_ottava_number(chosen->reading, open) == 0) {
            continue;
        }
        size_t k = next_command(chosen, i);
        const sw_setting *close = k < score->setting_count ? &score->settings[k] : NULL;
        sw_rational to = close == NULL ? score->length : close->onset;
        if (!holds_chosen(chosen, open->staff, open->onset, to)) {
            continue;
        }
        take_out(move, chosen->reading, open->music);
        /* Two voices may have ended their brackets one after another. */
        for (; k < score->setting_count && sw_ottava_number(chosen->reading, &score->settings[k]) == 0;
             k = next_command(chosen, k)) {
            take_out(move, chosen->reading, score->settings[k].music);
        }
        brackets->items =
            sw_grow(brackets->items, brackets->count, &brackets->capacity, sizeof *brackets->items);
        brackets->items[brackets->count++] = (sw_bracket){.staff = open->staff,
                                                          .from = open->onset,
                                                          .to = to,
                                                          .octaves = sw_ottava_number(chosen->reading, open)};
        char place[SW_SAY];
        char label[32];
        sw_buffer_format(&move->why, "%s, %s: the bracket that begins here goes\n",
                         sw_say_place(score, open->onset, place),
                         sw_staff_label(chosen->reading, score, open->staff, label));
    }
}

/* ---- the whole ---- */

bool sw_move_ottava(sw_move *move, const sw_chosen *chosen, const sw_octave_options *options,
                    const sw_read_options *reading_options, char **error)
{
    bool add = options->ottava == SW_OTTAVA_ADD;
    sw_brackets brackets = {0};
    if (add) {
        brackets = add_all(move, chosen, options->ledgers > 0 ? options->ledgers : SW_OTTAVA_LEDGERS);
    } else {
        remove_all(move, chosen, &brackets);
    }
    bool done = sw_patch_finish(&move->patch, error);
    if (done && brackets.count > 0) {
        done = sw_sources_are_known(move->mains, move->main_count, &move->patch, error) &&
               sw_ottava_prove(move, chosen, &brackets, add, reading_options, error);
    }
    free(brackets.items);
    return done;
}

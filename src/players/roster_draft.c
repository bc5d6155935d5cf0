/* A first roster: what the staves of scores say about who plays. */
#include <stdlib.h>
#include <string.h>

#include "players/percussion_names.h"
#include "players/staff_instrument.h"
#include "players/staff_numbers.h"
#include "stavewright/film.h"

/* A player, or a section, that the staves speak of. */
typedef struct drafted {
    const sw_instrument *instrument;
    unsigned number;  /* 0: none is said */
    const char *name; /* NULL: made of instrument and number */
    bool printed;     /* a name that is printed tells it, not only an id or a variable */
    const sw_instrument **percussion;
    size_t percussion_count;
    size_t percussion_capacity;
} drafted;

struct sw_roster_draft {
    const sw_instruments *instruments;
    sw_arena *arena;
    drafted *chairs;
    size_t count;
    size_t capacity;
    const char **unknown; /* names of staves with notes that mean no instrument */
    size_t unknown_count;
    size_t unknown_capacity;
};

sw_roster_draft *sw_roster_draft_new(const sw_instruments *instruments)
{
    sw_roster_draft *draft = sw_alloc_zero(1, sizeof *draft);
    draft->instruments = instruments;
    draft->arena = sw_arena_new();
    return draft;
}

void sw_roster_draft_free(sw_roster_draft *draft)
{
    if (draft == NULL) {
        return;
    }
    for (size_t i = 0; i < draft->count; i++) {
        free(draft->chairs[i].percussion);
    }
    free(draft->chairs);
    free(draft->unknown);
    sw_arena_free(draft->arena);
    free(draft);
}

/* ---- gathering -------------------------------------------------------------------------------------------
 */

static drafted *chair_for(sw_roster_draft *draft, const sw_instrument *instrument, unsigned number)
{
    for (size_t i = 0; i < draft->count; i++) {
        if (draft->chairs[i].instrument == instrument && draft->chairs[i].number == number) {
            return &draft->chairs[i];
        }
    }
    draft->chairs = sw_grow(draft->chairs, draft->count, &draft->capacity, sizeof *draft->chairs);
    draft->chairs[draft->count] = (drafted){.instrument = instrument, .number = number};
    return &draft->chairs[draft->count++];
}

static void add_unknown(sw_roster_draft *draft, const char *name)
{
    for (size_t i = 0; i < draft->unknown_count; i++) {
        if (strcmp(draft->unknown[i], name) == 0) {
            return;
        }
    }
    draft->unknown =
        sw_grow(draft->unknown, draft->unknown_count, &draft->unknown_capacity, sizeof *draft->unknown);
    draft->unknown[draft->unknown_count++] = sw_arena_copy(draft->arena, sw_slice_of(name));
}

static void add_percussion(drafted *chair, const sw_instrument *instrument)
{
    for (size_t i = 0; i < chair->percussion_count; i++) {
        if (chair->percussion[i] == instrument) {
            return;
        }
    }
    chair->percussion = sw_grow(chair->percussion, chair->percussion_count, &chair->percussion_capacity,
                                sizeof *chair->percussion);
    chair->percussion[chair->percussion_count++] = instrument;
}

/* The drums of the notes of a staff. */
static void add_drums(const sw_roster_draft *draft, const sw_reading *reading, const sw_score *score,
                      uint32_t staff, drafted *chair)
{
    for (size_t i = 0; i < score->event_count; i++) {
        const sw_event *event = &score->events[i];
        const sw_instrument *drum =
            event->kind != SW_EVENT_DRUM || score->voices[event->voice].staff != staff
                ? NULL
                : sw_percussion_of_drum(draft->instruments,
                                        sw_reading_name(reading, reading->music[event->music].name));
        if (drum != NULL) {
            add_percussion(chair, drum);
        }
    }
}

static bool has_notes(const sw_score *score, uint32_t staff)
{
    for (size_t i = 0; i < score->event_count; i++) {
        const sw_event *event = &score->events[i];
        if (score->voices[event->voice].staff == staff &&
            (event->kind == SW_EVENT_NOTE || event->kind == SW_EVENT_DRUM) &&
            (event->flags & (SW_EVENT_CUE | SW_EVENT_HIDDEN)) == 0) {
            return true;
        }
    }
    return false;
}

/* Whether a name is that of the staff, or of the brace around it, as it is printed. */
static bool is_printed(const sw_reading *reading, const sw_score *score, uint32_t staff, const char *name)
{
    uint32_t brace = sw_staff_brace(reading, score, staff);
    uint32_t group = brace == SW_NO_INDEX ? 0 : score->groups[brace].instrument;
    return name == sw_reading_name(reading, score->staves[staff].instrument) ||
           name == sw_reading_name(reading, group);
}

static void add_staff(sw_roster_draft *draft, const sw_reading *reading, const sw_score *score,
                      uint32_t staff)
{
    char label[32];
    const sw_instrument *instrument = sw_staff_instrument(draft->instruments, reading, score, staff);
    const char *name = sw_staff_instrument_name(draft->instruments, reading, score, staff);
    bool drums = strcmp(sw_reading_name(reading, score->staves[staff].type), "DrumStaff") == 0;
    if (instrument == NULL && drums) {
        instrument = sw_instruments_by_id(draft->instruments, "percussion");
    }
    if (instrument == NULL) {
        add_unknown(draft, sw_staff_label(reading, score, staff, label));
        return;
    }
    bool printed = is_printed(reading, score, staff, name);
    sw_staff_numbers numbers = sw_staff_numbers_of_staff(draft->instruments, reading, score, staff);
    for (size_t i = 0; i < numbers.count || i == 0; i++) {
        drafted *chair = chair_for(draft, instrument, numbers.count == 0 ? 0 : numbers.items[i]);
        bool tells = sw_staff_numbers_of(name).count == numbers.count && strstr(name, " in ") == NULL;
        chair->printed = chair->printed || printed;
        if (chair->name == NULL && numbers.count <= 1 && printed && tells) {
            chair->name = sw_arena_copy(draft->arena, sw_slice_of(name));
        }
        add_drums(draft, reading, score, staff, chair);
    }
}

void sw_roster_draft_add(sw_roster_draft *draft, const sw_reading *reading)
{
    for (size_t i = 0; i < reading->score_count; i++) {
        const sw_score *score = &reading->scores[i];
        for (uint32_t staff = 0; staff < score->staff_count && !score->in_markup; staff++) {
            if (has_notes(score, staff)) {
                add_staff(draft, reading, score, staff);
            }
        }
    }
}

/* ---- printing --------------------------------------------------------------------------------------------
 */

/* A text in single quotes, as YAML wants it. */
static void print_quoted(const char *text, sw_buffer *result)
{
    sw_buffer_char(result, '\'');
    for (; *text != '\0'; text++) {
        sw_buffer_string(result, *text == '\'' ? "''" : (char[2]){*text, '\0'});
    }
    sw_buffer_char(result, '\'');
}

/* "Bass clarinet 2" */
static void print_made_name(const drafted *chair, sw_buffer *result)
{
    const char *id = chair->instrument->id;
    for (size_t i = 0; id[i] != '\0'; i++) {
        char c = id[i] == '-' ? ' ' : i == 0 && id[i] >= 'a' && id[i] <= 'z' ? (char)(id[i] - 32) : id[i];
        sw_buffer_char(result, c);
    }
    if (chair->number > 0) {
        sw_buffer_format(result, " %u", chair->number);
    }
}

static void print_chair(const drafted *chair, sw_buffer *result)
{
    sw_buffer name = {0};
    if (chair->name == NULL) {
        print_made_name(chair, &name);
    } else {
        sw_buffer_string(&name, chair->name);
    }
    sw_buffer_string(result, "  - name: ");
    print_quoted(sw_buffer_text(&name), result);
    sw_buffer_free(&name);
    sw_buffer_format(result, "\n    plays: [%s]\n", chair->instrument->id);
    if (chair->instrument->family == SW_STRINGS) {
        sw_buffer_string(result, "    # players: 8\n");
    }
    for (size_t i = 0; i < chair->percussion_count; i++) {
        sw_buffer_format(result, "%s%s%s", i == 0 ? "    percussion: [" : ", ", chair->percussion[i]->id,
                         i + 1 == chair->percussion_count ? "]\n" : "");
    }
}

/* Whether chairs of the instrument have numbers: then a staff without one is theirs. */
static bool others_have_numbers(const sw_roster_draft *draft, const sw_instrument *instrument)
{
    for (size_t i = 0; i < draft->count; i++) {
        if (draft->chairs[i].instrument == instrument && draft->chairs[i].number > 0 &&
            draft->chairs[i].printed) {
            return true;
        }
    }
    return false;
}

static int compare_chairs(const void *a, const void *b)
{
    const drafted *x = a;
    const drafted *y = b;
    if (x->instrument->family != y->instrument->family) {
        return x->instrument->family < y->instrument->family ? -1 : 1;
    }
    if (x->instrument != y->instrument) { /* they stand in score order */
        return x->instrument < y->instrument ? -1 : 1;
    }
    return (x->number > y->number) - (x->number < y->number);
}

void sw_roster_draft_print(const sw_roster_draft *draft, sw_buffer *result)
{
    sw_buffer_string(
        result, "# Who plays: one entry a player, or a section that plays from one staff.\n"
                "# plays: its own instrument first, then what it doubles, as in [flute, piccolo]; players: "
                "how many sit\n"
                "# there; percussion, mutes: what is at hand, when that is restricted; prerecorded: true is "
                "shown to the\n"
                "# conductor and not checked; staves: patterns (PCRE2) of staff names that belong to the "
                "chair.\n");
    if (draft->count > 0) {
        qsort(draft->chairs, draft->count, sizeof *draft->chairs, compare_chairs);
    }
    sw_buffer_string(result, draft->count == 0 ? "chairs: []\n" : "chairs:\n");
    bool some_printed = false;
    for (size_t i = 0; i < draft->count; i++) {
        some_printed = some_printed || draft->chairs[i].printed;
    }
    for (size_t i = 0; i < draft->count; i++) {
        const drafted *chair = &draft->chairs[i];
        if (some_printed && !chair->printed) {
            continue; /* an id alone may be anything */
        }
        if (chair->number > 0 || !others_have_numbers(draft, chair->instrument)) {
            print_chair(chair, result);
        }
    }
    for (size_t i = 0; i < draft->unknown_count; i++) {
        sw_buffer_format(result, "%s#   %s\n",
                         i == 0 ? "# Staves whose names tell no instrument (name them, or give a chair "
                                  "'staves'):\n"
                                : "",
                         draft->unknown[i]);
    }
}

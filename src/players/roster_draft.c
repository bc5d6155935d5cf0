/* A first roster: what the staves of scores say about who plays. */
#include <stdlib.h>
#include <string.h>

#include "players/chair_notes.h"
#include "players/percussion_names.h"
#include "players/staff_instrument.h"
#include "players/staff_numbers.h"
#include "stavewright/film.h"

/* A player, or a section, that the staves speak of. */
typedef struct drafted {
    const sw_instrument *instrument; /* the first of those that it plays */
    const sw_instrument *
        *plays; /* all of them: one instrument to the player, in several keys, and doublings */
    size_t play_count;
    size_t play_capacity;
    unsigned number;  /* 0: none is said */
    const char *name; /* NULL: made of instrument and number */
    const sw_instrument **percussion;
    size_t percussion_count;
    size_t percussion_capacity;
} drafted;

struct sw_roster_draft {
    const sw_film *film;
    const sw_instruments *instruments; /* of the film */
    sw_arena *arena;
    drafted *chairs;
    size_t count;
    size_t capacity;
    const char **unknown; /* names of staves with notes that mean no instrument */
    size_t unknown_count;
    size_t unknown_capacity;
};

sw_roster_draft *sw_roster_draft_new(const sw_film *film)
{
    sw_roster_draft *draft = sw_alloc_zero(1, sizeof *draft);
    draft->film = film;
    draft->instruments = sw_film_instruments(film);
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
        free(draft->chairs[i].plays);
    }
    free(draft->chairs);
    free(draft->unknown);
    sw_arena_free(draft->arena);
    free(draft);
}

/* ---- gathering -------------------------------------------------------------------------------------------
 */

/* Adds an instrument to a list that has each once. */
static void add_instrument(const sw_instrument ***list, size_t *count, size_t *capacity,
                           const sw_instrument *instrument)
{
    for (size_t i = 0; i < *count; i++) {
        if ((*list)[i] == instrument) {
            return;
        }
    }
    *list = sw_grow(*list, *count, capacity, sizeof **list);
    (*list)[(*count)++] = instrument;
}

static drafted *chair_for(sw_roster_draft *draft, const sw_instrument *instrument, unsigned number)
{
    drafted *chair = NULL;
    for (size_t i = 0; i < draft->count && chair == NULL; i++) {
        bool same = draft->chairs[i].number == number &&
                    sw_instruments_alike(draft->chairs[i].instrument, instrument);
        chair = same ? &draft->chairs[i] : NULL;
    }
    if (chair == NULL) {
        draft->chairs = sw_grow(draft->chairs, draft->count, &draft->capacity, sizeof *draft->chairs);
        draft->chairs[draft->count] = (drafted){.instrument = instrument, .number = number};
        chair = &draft->chairs[draft->count++];
    }
    add_instrument(&chair->plays, &chair->play_count, &chair->play_capacity, instrument);
    return chair;
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
    add_instrument(&chair->percussion, &chair->percussion_count, &chair->percussion_capacity, instrument);
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

/* How many notes a staff has at once, at the most; 0: it has none. */
static unsigned most_at_once(const sw_reading *reading, const sw_score *score, uint32_t staff)
{
    enum { MOST = 8 };
    sw_rational ends[MOST]; /* of what sounds */
    unsigned sounding = 0;
    unsigned most = 0;
    sw_note_list notes = sw_notes_of_staff(reading, score, staff);
    for (size_t i = 0; i < notes.count; i++) {
        const sw_event *event = &score->events[notes.items[i]];
        unsigned kept = 0;
        for (unsigned n = 0; n < sounding; n++) {
            if (sw_rational_compare(ends[n], event->onset) > 0) {
                ends[kept++] = ends[n];
            }
        }
        sounding = kept;
        if ((event->flags & SW_EVENT_GRACE) == 0 && sounding < MOST) {
            ends[sounding++] = sw_event_end(event);
        }
        most = sounding > most ? sounding : most == 0 ? 1 : most;
    }
    free(notes.items);
    return most;
}

/* Winds on a staff that does not count its players: so many as sound at once. */
static void count_winds(const sw_instrument *instrument, unsigned at_once, sw_staff_numbers *numbers)
{
    bool winds = instrument->family == SW_WOODWIND || instrument->family == SW_BRASS;
    if (winds && numbers->count == 0 && at_once > 1) {
        while (numbers->count < at_once) {
            numbers->items[numbers->count] = (unsigned)numbers->count + 1;
            numbers->count++;
        }
    }
}

/* Whether a name is that of the staff, or of the brace around it, as it is printed. */
static bool is_printed(const sw_reading *reading, const sw_score *score, uint32_t staff, const char *name)
{
    uint32_t brace = sw_staff_brace(reading, score, staff);
    uint32_t group = brace == SW_NO_INDEX ? 0 : score->groups[brace].instrument;
    return name == sw_reading_name(reading, score->staves[staff].instrument) ||
           name == sw_reading_name(reading, group);
}

/* What the players of a staff take in its course ("2. muta in Piccolo", a new name). Where nobody is named,
 * the last of them doubles, as is usual. */
static void add_doublings(sw_roster_draft *draft, const sw_seating *seating, uint32_t staff,
                          const sw_instrument *instrument, const sw_staff_numbers *numbers)
{
    const sw_seated_staff *seated = &seating->staves[staff];
    for (size_t i = seated->first; i < seated->first + seated->count; i++) {
        const sw_seats *span = &seating->spans[i];
        for (size_t n = span->all_first; n < span->all_first + span->all_count; n++) {
            const sw_seat *seat = &seating->seats[n];
            unsigned own = seating->players[seat->player].number;
            unsigned number = own != 0 || numbers->count == 0 ? own : numbers->items[numbers->count - 1];
            if (seat->instrument != NULL && seat->instrument != seated->instrument) {
                drafted *chair = chair_for(draft, instrument, number);
                add_instrument(&chair->plays, &chair->play_count, &chair->play_capacity, seat->instrument);
            }
        }
    }
}

static void add_staff(sw_roster_draft *draft, const sw_reading *reading, const sw_score *score,
                      const sw_seating *seating, uint32_t staff, unsigned at_once)
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
    count_winds(instrument, at_once, &numbers);
    for (size_t i = 0; i < numbers.count || i == 0; i++) {
        drafted *chair = chair_for(draft, instrument, numbers.count == 0 ? 0 : numbers.items[i]);
        bool tells = sw_staff_numbers_of(name).count == numbers.count && strstr(name, " in ") == NULL;
        if (chair->name == NULL && numbers.count <= 1 && printed && tells) {
            chair->name = sw_arena_copy(draft->arena, sw_slice_of(name));
        }
        add_drums(draft, reading, score, staff, chair);
    }
    add_doublings(draft, seating, staff, instrument, &numbers);
}

void sw_roster_draft_add(sw_roster_draft *draft, const sw_reading *reading)
{
    for (size_t i = 0; i < reading->score_count; i++) {
        const sw_score *score = &reading->scores[i];
        if (score->in_markup) {
            continue;
        }
        sw_seating *seating = sw_seating_of(draft->film, reading, score);
        for (uint32_t staff = 0; staff < score->staff_count; staff++) {
            unsigned at_once = most_at_once(reading, score, staff);
            if (at_once > 0) {
                add_staff(draft, reading, score, seating, staff, at_once);
            }
        }
        sw_seating_free(seating);
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

/* "Bass clarinet 2"; the key is left out where the player takes other keys for the same. */
static void print_made_name(const sw_roster_draft *draft, const drafted *chair, bool whole, sw_buffer *result)
{
    const char *id = chair->instrument->id;
    const char *key = strstr(id, "-in-");
    size_t length = strlen(id);
    if (key != NULL && !whole) {
        char base[64] = {0};
        memcpy(base, id, (size_t)(key - id) < sizeof base ? (size_t)(key - id) : sizeof base - 1);
        const sw_instrument *plain = sw_instruments_by_id(draft->instruments, base);
        length = plain != NULL && sw_instruments_alike(plain, chair->instrument) ? strlen(base) : length;
    }
    for (size_t i = 0; i < length; i++) {
        char c = id[i] == '-' ? ' ' : i == 0 && id[i] >= 'a' && id[i] <= 'z' ? (char)(id[i] - 32) : id[i];
        sw_buffer_char(result, c);
    }
    if (chair->number > 0) {
        sw_buffer_format(result, " %u", chair->number);
    }
}

/* Settles the names, each for one chair only. */
static void name_chairs(sw_roster_draft *draft)
{
    for (size_t i = 0; i < draft->count; i++) {
        drafted *chair = &draft->chairs[i];
        for (int attempt = chair->name != NULL ? 0 : 1; attempt <= 3; attempt++) {
            sw_buffer made = {0};
            if (attempt == 0) {
                sw_buffer_string(&made, chair->name);
            } else {
                print_made_name(draft, chair, attempt > 1, &made);
            }
            if (attempt == 3) { /* names can be told apart by their place */
                sw_buffer_format(&made, ", chair %zu", i + 1);
            }
            chair->name = sw_arena_copy(draft->arena, sw_buffer_slice(&made));
            sw_buffer_free(&made);
            size_t other = 0;
            while (other < i && strcmp(draft->chairs[other].name, chair->name) != 0) {
                other++;
            }
            if (other == i) {
                break;
            }
        }
    }
}

static void print_list(const char *key, const sw_instrument *const *list, size_t count, sw_buffer *result)
{
    for (size_t i = 0; i < count; i++) {
        if (i == 0) {
            sw_buffer_format(result, "    %s: [", key);
        }
        sw_buffer_format(result, "%s%s%s", i == 0 ? "" : ", ", list[i]->id, i + 1 == count ? "]\n" : "");
    }
}

static void print_chair(const drafted *chair, sw_buffer *result)
{
    sw_buffer_string(result, "  - name: ");
    print_quoted(chair->name, result);
    sw_buffer_char(result, '\n');
    print_list("plays", chair->plays, chair->play_count, result);
    if (chair->instrument->family == SW_STRINGS) {
        sw_buffer_string(result, "    # players: 8\n");
    }
    print_list("percussion", chair->percussion, chair->percussion_count, result);
}

/* Whether chairs of the instrument have numbers: then a staff without one is theirs. */
static bool others_have_numbers(const sw_roster_draft *draft, const sw_instrument *instrument)
{
    for (size_t i = 0; i < draft->count; i++) {
        if (sw_instruments_alike(draft->chairs[i].instrument, instrument) && draft->chairs[i].number > 0) {
            return true;
        }
    }
    return false;
}

/* What was struck on staves without a number goes to the first of those that have one. */
static void merge_percussion(sw_roster_draft *draft)
{
    for (size_t i = 0; i < draft->count; i++) {
        drafted *from = &draft->chairs[i];
        drafted *to = NULL;
        for (size_t n = 0; n < draft->count && from->number == 0 && to == NULL; n++) {
            bool first = sw_instruments_alike(draft->chairs[n].instrument, from->instrument) &&
                         draft->chairs[n].number > 0;
            to = first ? &draft->chairs[n] : NULL;
        }
        for (size_t p = 0; p < from->percussion_count && to != NULL; p++) {
            add_percussion(to, from->percussion[p]);
        }
    }
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

void sw_roster_draft_print(sw_roster_draft *draft, sw_buffer *result)
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
        merge_percussion(draft);
        name_chairs(draft);
    }
    sw_buffer_string(result, draft->count == 0 ? "chairs: []\n" : "chairs:\n");
    for (size_t i = 0; i < draft->count; i++) {
        const drafted *chair = &draft->chairs[i];
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

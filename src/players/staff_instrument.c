#include "players/staff_instrument.h"

#include <string.h>

#include "players/staff_words.h"
#include "players/unclear_name.h"

enum { MOST_NAMES = 16 };

/* The names of a staff, the most telling first. */
typedef struct staff_names {
    uint32_t items[MOST_NAMES];
    size_t count;
    size_t variable; /* index of the variable's name */
} staff_names;

static void add(staff_names *names, uint32_t name)
{
    if (names->count < MOST_NAMES) {
        names->items[names->count++] = name;
    }
}

static staff_names names_of(const sw_score *score, const sw_staff *staff, uint32_t brace)
{
    staff_names names = {0};
    add(&names, staff->instrument);
    add(&names, staff->short_instrument);
    if (brace != SW_NO_INDEX) {
        add(&names, score->groups[brace].instrument);
        add(&names, score->groups[brace].id);
    }
    add(&names, staff->id);
    names.variable = names.count;
    add(&names, staff->variable);
    for (uint32_t group = staff->group; group != SW_NO_INDEX; group = score->groups[group].parent) {
        add(&names, score->groups[group].instrument);
        add(&names, score->groups[group].id);
    }
    return names;
}

/* *name becomes the name that told. */
static const sw_instrument *find(const sw_instruments *instruments, const sw_reading *reading,
                                 const sw_score *score, uint32_t staff, const char **name)
{
    uint32_t brace = sw_staff_brace(reading, score, staff);
    staff_names names = names_of(score, &score->staves[staff], brace);
    for (size_t i = 0; i < names.count; i++) {
        *name = sw_reading_name(reading, names.items[i]);
        const sw_instrument *found = names.items[i] == 0 ? NULL : sw_instruments_find(instruments, *name);
        bool may_sing = brace == SW_NO_INDEX && i != names.variable;
        if (found != NULL && (found->family != SW_VOICE || may_sing)) {
            return found;
        }
    }
    *name = "";
    return NULL;
}

/* What a name means beside the next staff in one direction whose own name is clear. */
static const sw_instrument *find_beside(const sw_instruments *instruments, const sw_reading *reading,
                                        const sw_score *score, uint32_t staff, bool above,
                                        const char *unclear)
{
    const char *name;
    const sw_instrument *found = NULL;
    while (found == NULL && (above ? staff > 0 : staff + 1 < score->staff_count)) {
        staff = above ? staff - 1 : staff + 1;
        found = find(instruments, reading, score, staff, &name);
    }
    return sw_unclear_name_find(instruments, unclear, found == NULL ? NULL : &found->family);
}

/* Like find; of a name that several bear, the staff above tells more than the one below: basses come last. */
static const sw_instrument *find_among_others(const sw_instruments *instruments, const sw_reading *reading,
                                              const sw_score *score, uint32_t staff, const char **name)
{
    const sw_instrument *found = find(instruments, reading, score, staff, name);
    const uint32_t own[] = {score->staves[staff].instrument, score->staves[staff].short_instrument};
    for (size_t i = 0; found == NULL && i < sizeof own / sizeof own[0]; i++) {
        const char *unclear = sw_reading_name(reading, own[i]);
        if (own[i] != 0 && sw_name_is_unclear(unclear)) {
            const sw_instrument *beside = find_beside(instruments, reading, score, staff, true, unclear);
            found = beside != NULL ? beside : find_beside(instruments, reading, score, staff, false, unclear);
            *name = found != NULL ? unclear : *name;
        }
    }
    return found;
}

const sw_instrument *sw_staff_instrument(const sw_instruments *instruments, const sw_reading *reading,
                                         const sw_score *score, uint32_t staff)
{
    const char *name;
    return find_among_others(instruments, reading, score, staff, &name);
}

const char *sw_staff_instrument_name(const sw_instruments *instruments, const sw_reading *reading,
                                     const sw_score *score, uint32_t staff)
{
    const char *name;
    find_among_others(instruments, reading, score, staff, &name);
    return name;
}

static bool says_soloist(const char *name)
{
    static const char *const says[] = {"solo",       "sola",        "principal",  "principale", "princ",
                                       "concertant", "concertante", "concertato", "solist",     "solistin",
                                       "soliste",    "soloist",     NULL};
    return sw_staff_name_says(name, says);
}

bool sw_staff_is_soloist(const sw_instruments *instruments, const sw_reading *reading, const sw_score *score,
                         uint32_t staff)
{
    const sw_staff *s = &score->staves[staff];
    return says_soloist(sw_staff_instrument_name(instruments, reading, score, staff)) ||
           says_soloist(sw_reading_name(reading, s->instrument)) ||
           says_soloist(sw_reading_name(reading, s->short_instrument));
}

uint32_t sw_staff_brace(const sw_reading *reading, const sw_score *score, uint32_t staff)
{
    uint32_t group = score->staves[staff].group;
    if (group == SW_NO_INDEX) {
        return SW_NO_INDEX;
    }
    const char *type = sw_reading_name(reading, score->groups[group].type);
    bool brace = strcmp(type, "PianoStaff") == 0 || strcmp(type, "GrandStaff") == 0;
    return brace ? group : SW_NO_INDEX;
}

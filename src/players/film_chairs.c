/* The section "chairs" of stavewright.yaml. */
#include <string.h>

#include "players/chairs.h"
#include "players/film_reader.h"
#include "players/staff_numbers.h"

enum { NAME, PLAYS, PLAYERS, PERCUSSION, MUTES, PRERECORDED, STAVES, KEYS };
static const char *const chair_keys[] = {
    [NAME] = "name",       [PLAYS] = "plays",
    [PLAYERS] = "players", [PERCUSSION] = "percussion",
    [MUTES] = "mutes",     [PRERECORDED] = "prerecorded",
    [STAVES] = "staves",
};

/* Instruments by their ids; of the family percussion only, where that is asked for. */
static bool read_instruments(sw_film_reader *r, const yaml_node_t *node, const char *what,
                             bool only_percussion, const sw_instrument *const **list, size_t *count)
{
    const yaml_node_item_t *items;
    if (!sw_yaml_list(&r->yaml, node, what, &items, count)) {
        return false;
    }
    const sw_instrument **found = sw_arena_alloc(r->film->arena, (*count + 1) * sizeof *found);
    *list = found;
    for (size_t i = 0; i < *count; i++) {
        sw_slice text;
        const yaml_node_t *item = sw_yaml_node(&r->yaml, items[i]);
        if (!sw_yaml_text(&r->yaml, item, "an instrument", &text)) {
            return false;
        }
        found[i] = sw_instruments_by_id(r->film->instruments, sw_arena_copy(r->film->arena, text));
        if (found[i] == NULL) {
            return sw_yaml_fail_instrument(&r->yaml, item, text, r->film->instruments);
        }
        if (only_percussion && found[i]->family != SW_PERCUSSION) {
            return sw_yaml_fail(&r->yaml, item, "%s: '%s' is no percussion; put it under 'plays'", what,
                                found[i]->id);
        }
        for (size_t before = 0; before < i; before++) {
            if (found[before] == found[i]) {
                return sw_yaml_fail(&r->yaml, item, "'%s' stands twice here; remove one", found[i]->id);
            }
        }
    }
    return true;
}

/* The group of techniques that are mutes. */
static uint8_t mute_group(const sw_techniques *techniques)
{
    uint8_t group = 0;
    while (strcmp(sw_techniques_group(techniques, group)->id, "mute") != 0) {
        group++;
    }
    return group;
}

static bool read_mutes(sw_film_reader *r, const yaml_node_t *node, sw_chair *chair)
{
    const sw_techniques *techniques = r->film->techniques;
    uint8_t group = mute_group(techniques);
    const char *words[SW_NO_TECHNIQUE];
    uint8_t numbers[SW_NO_TECHNIQUE];
    size_t known = 0;
    for (size_t i = 0; i < sw_techniques_count(techniques); i++) {
        const sw_technique *technique = sw_techniques_get(techniques, i);
        if (technique->group == group && !technique->plain) {
            words[known] = technique->id;
            numbers[known++] = (uint8_t)i;
        }
    }
    const yaml_node_item_t *items;
    if (!sw_yaml_list(&r->yaml, node, "mutes", &items, &chair->mute_count)) {
        return false;
    }
    uint8_t *mutes = sw_arena_alloc(r->film->arena, chair->mute_count + 1);
    chair->mutes = mutes;
    chair->mutes_given = true;
    for (size_t i = 0; i < chair->mute_count; i++) {
        sw_slice text;
        const yaml_node_t *item = sw_yaml_node(&r->yaml, items[i]);
        if (!sw_yaml_text(&r->yaml, item, "a mute", &text)) {
            return false;
        }
        size_t w = 0;
        while (w < known && !sw_slice_is(text, words[w])) {
            w++;
        }
        if (w == known) {
            return sw_yaml_fail_word(&r->yaml, item, "mute", text, words, known);
        }
        mutes[i] = numbers[w];
    }
    return true;
}

static bool read_patterns(sw_film_reader *r, const yaml_node_t *node, sw_film_patterns *patterns)
{
    const yaml_node_item_t *items;
    size_t count;
    if (!sw_yaml_list(&r->yaml, node, "staves", &items, &count)) {
        return false;
    }
    patterns->items = sw_arena_alloc(r->film->arena, (count + 1) * sizeof(sw_pattern *));
    for (size_t i = 0; i < count; i++) {
        if (!sw_film_read_pattern(r, sw_yaml_node(&r->yaml, items[i]), "staves", &patterns->items[i], NULL)) {
            return false;
        }
        patterns->count++;
    }
    return true;
}

/* The name and what it plays, which every chair has. */
static bool read_who(sw_film_reader *r, const yaml_node_t *node, const yaml_node_t *const *values,
                     sw_chair *chair)
{
    if (values[NAME] == NULL) {
        return sw_yaml_fail(&r->yaml, node, "a chair needs a name, as in 'name: Flute 2'");
    }
    if (!sw_film_read_text(r, values[NAME], "name", &chair->name)) {
        return false;
    }
    for (const sw_chair *other = r->film->chairs; other < chair; other++) {
        if (strcmp(other->name, chair->name) == 0) {
            return sw_yaml_fail(&r->yaml, values[NAME], "chair '%s' stands twice, first on line %u; %s",
                                chair->name, (unsigned)other->line, "give each a name of its own");
        }
    }
    if (values[PLAYS] == NULL) {
        return sw_yaml_fail(&r->yaml, node, "chair '%s' needs 'plays', as in 'plays: [flute, piccolo]'",
                            chair->name);
    }
    if (!read_instruments(r, values[PLAYS], "plays", false, &chair->plays, &chair->play_count)) {
        return false;
    }
    return chair->play_count > 0 ? true
                                 : sw_yaml_fail(&r->yaml, values[PLAYS],
                                                "chair '%s' plays nothing; name an instrument", chair->name);
}

/* What a chair's name says: which of its instruments is its own ("Piccolo" of a chair that plays [flute,
 * piccolo]), and its number. */
static void read_name(const sw_film_reader *r, sw_chair *chair)
{
    sw_staff_numbers numbers = sw_staff_numbers_of(chair->name);
    chair->number = numbers.count == 1 ? numbers.items[0] : 0;
    const sw_instrument *named = sw_instruments_find(sw_film_instruments(r->film), chair->name);
    chair->own = named != NULL && sw_chair_plays(chair, named) ? named : chair->plays[0];
}

static bool read_chair(sw_film_reader *r, const yaml_node_t *node, size_t number)
{
    const yaml_node_t *values[KEYS];
    sw_chair *chair = &r->film->chairs[number];
    if (!sw_yaml_fields(&r->yaml, node, "a chair", chair_keys, KEYS, values)) {
        return false;
    }
    *chair = (sw_chair){.players = 1, .line = (uint32_t)node->start_mark.line + 1};
    if (!read_who(r, node, values, chair)) {
        return false;
    }
    chair->percussion_given = values[PERCUSSION] != NULL;
    bool read =
        (values[PLAYERS] == NULL || sw_yaml_number(&r->yaml, values[PLAYERS], "players", &chair->players)) &&
        (values[PERCUSSION] == NULL || read_instruments(r, values[PERCUSSION], "percussion", true,
                                                        &chair->percussion, &chair->percussion_count)) &&
        (values[MUTES] == NULL || read_mutes(r, values[MUTES], chair)) &&
        (values[PRERECORDED] == NULL ||
         sw_yaml_flag(&r->yaml, values[PRERECORDED], "prerecorded", &chair->prerecorded)) &&
        (values[STAVES] == NULL || read_patterns(r, values[STAVES], &r->film->patterns[number]));
    if (read) {
        read_name(r, chair);
    }
    return read;
}

bool sw_film_read_chairs(sw_film_reader *r, const yaml_node_t *node)
{
    const yaml_node_item_t *items;
    size_t count;
    sw_film *film = r->film;
    if (!sw_yaml_list(&r->yaml, node, "chairs", &items, &count)) {
        return false;
    }
    film->has_roster = true;
    film->chairs = sw_arena_alloc(film->arena, (count + 1) * sizeof *film->chairs);
    film->patterns = sw_arena_alloc(film->arena, (count + 1) * sizeof *film->patterns);
    film->chair_count = count; /* those not yet read have no patterns to free */
    for (size_t i = 0; i < count; i++) {
        if (!read_chair(r, sw_yaml_node(&r->yaml, items[i]), i)) {
            return false;
        }
    }
    return true;
}

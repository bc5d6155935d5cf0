/* Who plays what: instruments that nobody is booked for, players with two things to do at once, mutes and
 * percussion that are not there. */
#include "players/chairs.h"

#include <stdlib.h>
#include <string.h>

#include "checks/chair_findings.h"
#include "checks/rules.h"

static void run(sw_check *check)
{
    for (size_t i = 0; i < check->reading->score_count; i++) {
        const sw_score *score = &check->reading->scores[i];
        if (score->in_markup) {
            continue;
        }
        const sw_seating *seating = sw_check_seating(check, i);
        const sw_seat_range *ranges = sw_check_seat_ranges(check, i);
        sw_chair_scene scene = {check, score, seating, ranges, (uint32_t)i, sw_rule_chairs.name};
        sw_find_change_overs(&scene);
        if (sw_film_has_roster(check->film)) {
            sw_find_unbooked(&scene);
            sw_find_too_many_notes(&scene);
            sw_find_missing_things(&scene);
        }
        sw_find_impossible_stops(&scene); /* behind what even divided players can't give */
    }
}

static const sw_rule_option options[] = {
    {"margin", 0, 0, 1, "the share of the time for a change of instrument that may be missing"}, {0}};

const sw_rule sw_rule_chairs = {
    .name = "chairs",
    .summary = "what the players who are booked can't do: instruments, changes, players, mutes, percussion",
    .severity = SW_ERROR,
    .explain =
        "The chairs under `chairs` in stavewright.yaml say who is booked, on what. (stavewright roster init "
        "writes a first\nlist.) Against them this rule tells of staves for an instrument that nobody plays, "
        "or "
        "for a third trumpet where two\nare booked; of a player with notes on two instruments at once, or "
        "with "
        "too little time between them; of more notes\nat once than a staff of winds has players, or strings "
        "can give (four a player, two a player of a section); of mutes\nand percussion that are not on a "
        "player's list. Staves belong to chairs by instrument and number (\"Horns 1, 2\"), or\nby the "
        "patterns "
        "under `staves`. It follows \"muta in Piccolo\", \"to Picc.\", new names of a staff, \"1.\" and \"a "
        "2\". "
        "Without\na list only changes of instrument on one staff are looked at, and chords that no player "
        "can strike with a bow:\nmore notes than strings, or two on the lowest string, where neither div. "
        "nor "
        "a second voice divides them.\n\n"
        "The figures: flute to piccolo 5 s, oboe to English horn and B flat to A clarinet 8 s, to bass "
        "clarinet "
        "10 s, to\ncontrabassoon 15 s (common practice, no source); other woodwinds 8 s (under 5 s is risky, "
        "8 "
        "to 10 s are safe:\nB. Pimentel, Time required for instrument switches); other instruments 5 s, "
        "percussion 2 s (common practice, no\nsource). Less than 60 percent of them is a warning, more a "
        "note.\n\n"
        "To mend: give the passage to another chair, leave more rests before a change, write div., or "
        "correct the "
        "list.\n",
    .run = run,
    .options = options,
};

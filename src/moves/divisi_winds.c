#include "moves/divisi_winds.h"

#include <string.h>

#include "players/chairs.h"
#include "write/draft.h"

static int height_of(const sw_divisi_plan *plan, uint32_t event)
{
    return sw_pitch_quarter_tones(plan->score->events[event].pitch);
}

unsigned sw_divisi_holders(const sw_divisi_plan *plan, const sw_divisi_passage *passage, size_t chord)
{
    const sw_divisi_chord *now = &plan->chords[chord];
    unsigned all = (1u << passage->section.parts) - 1;
    if (chord == passage->first || now->count != 1 || !now->tied) {
        return 0;
    }
    unsigned before = sw_divisi_holders(plan, passage, chord - 1);
    unsigned holders = 0;
    for (int part = 0; part < passage->section.parts; part++) {
        uint32_t held = sw_divisi_note(plan, passage, chord - 1, part);
        bool played = before == 0 || (before >> part & 1) != 0;
        bool same = height_of(plan, held) == height_of(plan, now->notes[0]);
        holders |= played && same && sw_voice_is_tied(plan->reading, plan->score, held) ? 1u << part : 0;
    }
    return holders == all ? 0 : holders;
}

/* The number of a player of the staff: that of the film or of the staff's name, otherwise the place. */
static unsigned number_of(const sw_divisi_fit *fit, const sw_seats *seats, size_t place)
{
    const sw_seat *seat = &fit->seating->seats[seats->all_first + place];
    unsigned number = fit->seating->players[seat->player].number;
    return number == 0 ? (unsigned)place + 1 : number;
}

static const char *add_number(sw_arena *arena, const char *text, unsigned number)
{
    return text == NULL ? sw_arena_format(arena, "%u.", number)
                        : sw_arena_format(arena, "%s %u.", text, number);
}

const char *sw_divisi_say_holders(const sw_divisi_fit *fit, const sw_divisi_section *section, unsigned parts,
                                  sw_rational moment, sw_arena *arena)
{
    const sw_seats *seats = sw_seating_at(fit->seating, fit->staff, moment);
    size_t count = (size_t)section->parts;
    bool numbered = seats != NULL && seats->all_count == count;
    bool unknown = seats != NULL && seats->all_count == 1 && fit->seating->staves[fit->staff].players == 0;
    const char *text = NULL;
    for (size_t place = 0; place < count && (numbered || unknown); place++) {
        if ((parts >> (count - 1 - place) & 1) != 0) {
            text = add_number(arena, text, numbered ? number_of(fit, seats, place) : (unsigned)place + 1);
        }
    }
    return text;
}

const char *sw_divisi_say_chosen(const sw_divisi_fit *fit, sw_rational moment, bool one, sw_arena *arena)
{
    const sw_seats *seats = sw_seating_at(fit->seating, fit->staff, moment);
    const char *text = NULL;
    if (one) {
        return add_number(arena, NULL, seats == NULL ? 1 : number_of(fit, seats, 0));
    }
    for (size_t place = 0; seats != NULL && seats->some && place < seats->all_count; place++) {
        for (size_t i = 0; i < seats->count; i++) {
            uint32_t player = fit->seating->seats[seats->first + i].player;
            if (player == fit->seating->seats[seats->all_first + place].player) {
                text = add_number(arena, text, number_of(fit, seats, place));
            }
        }
    }
    return text;
}

unsigned sw_divisi_chosen_parts(const sw_divisi_fit *fit, sw_rational moment, int parts)
{
    const sw_seats *seats = sw_seating_at(fit->seating, fit->staff, moment);
    const unsigned all = (1u << parts) - 1;
    if (seats == NULL || !seats->some || seats->all_count != (size_t)parts) {
        return all;
    }
    unsigned chosen = 0;
    for (size_t place = 0; place < seats->all_count; place++) {
        for (size_t i = 0; i < seats->count; i++) {
            bool plays = fit->seating->seats[seats->first + i].player ==
                         fit->seating->seats[seats->all_first + place].player;
            chosen |= plays ? 1u << (seats->all_count - 1 - place) : 0;
        }
    }
    return chosen == 0 ? all : chosen;
}

bool sw_divisi_name_players(const sw_divisi_fit *fit, int parts, sw_arena *arena, const char **names)
{
    const sw_seats *seats = sw_seating_at(fit->seating, fit->staff, (sw_rational){0, 1});
    if (seats == NULL || seats->all_count != (size_t)parts) {
        return false;
    }
    for (int part = 0; part < parts; part++) {
        names[part] = add_number(arena, NULL, number_of(fit, seats, (size_t)part));
    }
    return true;
}

bool sw_divisi_only_says_who(const sw_instruments *instruments, const sw_instrument *instrument,
                             const char *text)
{
    sw_chair_text_kind kind = sw_chair_text_read(instruments, instrument, text).kind;
    bool numbers = text[strspn(text, "0123456789IV.,;+&/ ")] == '\0';
    return kind == SW_CHAIR_TEXT_ALL || (kind == SW_CHAIR_TEXT_ONLY && numbers);
}

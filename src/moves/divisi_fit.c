#include "moves/divisi_fit.h"

/* How far a written pitch lies outside of the compass that any section has, in semitones. */
static int semitones_beyond(const sw_instrument *instrument, sw_pitch written)
{
    int height = sw_pitch_semitones(written);
    int below = sw_pitch_semitones(instrument->written_low) - height;
    int above = height - sw_pitch_semitones(instrument->written_high);
    int beyond = below > above ? below : above;
    return instrument->has_compass && beyond > 0 ? beyond : 0;
}

/* The lowest position in which a sounding pitch lies: on some string the hand is so many semitones above the
 * place from which its fingers reach the first `reach` ones. */
static int lowest_position(const sw_tuning *tuning, sw_pitch sounding)
{
    int lowest = -1;
    for (size_t i = 0; tuning->reach > 0 && i < tuning->count; i++) {
        int above = sw_pitch_semitones(sounding) - sw_pitch_semitones(tuning->strings[i]);
        int position = above > tuning->reach ? above - tuning->reach : 0;
        lowest = above >= 0 && (lowest < 0 || position < lowest) ? position : lowest;
    }
    return lowest < 0 ? 0 : lowest;
}

/* What a note asks of an instrument; of several readings the one counts that asks least. */
static void fit_note(const sw_entry *entry, const sw_instrument *instrument, sw_pitch pitch, uint8_t *beyond,
                     uint8_t *position)
{
    sw_entry own = *entry;
    sw_pitch written[SW_ENTRY_READINGS];
    own.instrument = instrument;
    size_t count = sw_entry_written(&own, pitch, written);
    int least = INT16_MAX;
    int place = 0;
    for (size_t i = 0; i < count; i++) {
        int outside = semitones_beyond(instrument, written[i]);
        if (outside < least) {
            least = outside;
            place = lowest_position(&instrument->can.tuning, sw_instrument_sounding(instrument, written[i]));
        }
    }
    least = count == 0 ? 0 : least;
    *beyond = (uint8_t)(least < UINT8_MAX ? least : UINT8_MAX);
    *position = (uint8_t)(place < UINT8_MAX ? place : UINT8_MAX);
}

/* Who does not play the instrument that the staff is named after has the own one. */
static const sw_instrument *instrument_of(const sw_seat *seat, const sw_chair *chair)
{
    bool plays = chair == NULL || seat->instrument == NULL || sw_chair_plays(chair, seat->instrument);
    return plays ? seat->instrument : chair->plays[0];
}

sw_divisi_groups sw_divisi_groups_at(const sw_divisi_fit *fit, sw_rational moment)
{
    const sw_seats *seats = sw_seating_at(fit->seating, fit->staff, moment);
    sw_divisi_groups groups = {0};
    for (size_t i = 0; seats != NULL && i < seats->all_count; i++) {
        const sw_seat *seat = &fit->seating->seats[seats->all_first + i];
        const sw_chair *chair = fit->seating->players[seat->player].chair;
        const sw_instrument *instrument = instrument_of(seat, chair);
        int last = groups.count - 1;
        bool own = last < 0 || !sw_instruments_alike(instrument, groups.instruments[last]);
        if (own && groups.count < SW_DIVISI_MOST) {
            groups.instruments[groups.count++] = instrument;
            last++;
        }
        groups.players[last] += chair == NULL ? 1 : chair->players;
    }
    if (groups.count < 2) { /* of one group the film alone says how many they are */
        groups = (sw_divisi_groups){1, {fit->seating->staves[fit->staff].players}, {NULL}};
    }
    return groups;
}

void sw_divisi_fit_slice(const sw_divisi_fit *fit, const sw_divisi_groups *groups,
                         const sw_divisi_section *section, const uint32_t *notes, sw_divisi_slice *slice)
{
    const sw_score *score = fit->score;
    const sw_entry *entry = sw_entries_at(&fit->entries[fit->staff], score->events[notes[0]].onset);
    for (int p = 0; p < section->parts; p++) {
        const sw_instrument *own = groups->instruments[section->groups[p]];
        const sw_instrument *instrument = own != NULL ? own : entry->instrument;
        for (int n = 0; n < slice->count && instrument != NULL; n++) {
            fit_note(entry, instrument, score->events[notes[n]].pitch, &slice->beyond[p][n],
                     &slice->position[p][n]);
        }
    }
}

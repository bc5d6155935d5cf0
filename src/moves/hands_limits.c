/* What the player's hands can do: the instrument's figures and what the options say instead. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "checks/say.h"
#include "moves/figures.h"
#include "moves/hands_plan.h"
#include "players/staff_instrument.h"

enum { HARP_FINGERS = 4, KEYBOARD_FINGERS = 5, MALLETS = 2 }; /* of one hand, in the table of instruments */

static bool is_mallets(const sw_instrument *instrument)
{
    return instrument->family == SW_PERCUSSION && instrument->fingers == MALLETS;
}

/* A keyboard whose notes ring as long as a pedal says. */
static bool can_pedal(const sw_film *film, const sw_instrument *instrument)
{
    const sw_limit *limit = sw_limits_of(sw_film_limits(film), instrument);
    return instrument->family == SW_KEYBOARD && limit != NULL && limit->rings;
}

static bool has_hands(const sw_instrument *instrument)
{
    return instrument != NULL && (instrument->fingers == HARP_FINGERS ||
                                  instrument->fingers == KEYBOARD_FINGERS || is_mallets(instrument));
}

/* The instrument that was named, or that the staff's names mean; NULL with *error when it has no hands. */
static const sw_instrument *find_instrument(const sw_hands *h, const sw_instruments *instruments,
                                            const char *named, char **error)
{
    const sw_instrument *found = named != NULL
                                     ? sw_instruments_find(instruments, named)
                                     : sw_staff_instrument(instruments, h->reading, h->score, h->staff);
    if (has_hands(found)) {
        return found;
    }
    char label[32];
    if (named != NULL &&
        asprintf(error, "no hands are known for the instrument \"%s\"; use harp, piano, celesta, marimba ...",
                 named) < 0) {
        abort();
    }
    if (named == NULL &&
        asprintf(error,
                 "the staff \"%s\" is not known to be for a harp or a keyboard; say which with --instrument "
                 "harp or --instrument piano",
                 sw_staff_label(h->reading, h->score, h->staff, label)) < 0) {
        abort();
    }
    return NULL;
}

/* The spans of the registers, as far as the instrument has any. */
static void take_registers(sw_hand_limits *limits, const sw_instrument *instrument)
{
    for (size_t i = 0; i < instrument->hand_register_count && i < SW_HANDS_REACHES; i++) {
        const sw_hand_register *reg = &instrument->hand_registers[i];
        limits->reaches[limits->reach_count++] =
            (sw_hand_reach){sw_pitch_staff_steps(reg->from), reg->extreme_span - 1, reg->span - 1};
    }
    if (limits->reach_count > 0) { /* further down nothing is wider */
        limits->span = limits->reaches[0].span;
        limits->comfort = limits->reaches[0].comfort;
    }
}

static void take_instrument(sw_hands *h, const sw_film *film, const sw_instrument *instrument)
{
    h->mallets = is_mallets(instrument);
    h->can_pedal = can_pedal(film, instrument);
    h->limits = h->mallets                            ? sw_hand_limits_mallets()
                : instrument->fingers == HARP_FINGERS ? sw_hand_limits_harp()
                                                      : sw_hand_limits_piano();
    h->limits.span = instrument->extreme_span - 1;
    h->limits.comfort = instrument->span - 1;
    h->compass_low = instrument->has_compass ? sw_pitch_midi(instrument->extreme_low) : 0;
    h->compass_high = instrument->has_compass ? sw_pitch_midi(instrument->extreme_high) : 127;
    take_registers(&h->limits, instrument);
}

bool sw_hands_find_limits(sw_hands *h, const sw_hands_options *options, char **error)
{
    sw_figures figures;
    if (!sw_figures_find(&figures, options->film, error)) {
        return false;
    }
    const sw_instrument *found =
        find_instrument(h, sw_film_instruments(figures.film), options->instrument, error);
    if (found != NULL) {
        take_instrument(h, figures.film, found);
    }
    bool good = found != NULL;
    if (good && options->mallets > 0 && !h->mallets) {
        good = false;
        if (asprintf(error, "--mallets is for marimba, vibraphone and xylophone; the %s has no mallets",
                     found->id) < 0) {
            abort();
        }
    }
    if (good && options->pedal && !h->can_pedal) {
        good = false;
        if (asprintf(error,
                     "--pedal is for keyboards with a pedal that lets them ring, such as the piano; the %s "
                     "has none",
                     found->id) < 0) {
            abort();
        }
    }
    sw_figures_free(&figures);
    sw_hand_limits *limits = &h->limits;
    if (options->span > 0) {
        limits->span = options->span - 1;
        limits->comfort = limits->comfort < limits->span ? limits->comfort : limits->span;
        limits->reach_count = 0;
    }
    if (options->fingers > 0) {
        limits->fingers = options->fingers;
    }
    if (options->mallets > 0) {
        limits->fingers = options->mallets / 2;
    }
    limits->may_roll = options->roll;
    limits->may_cross = options->crossing;
    limits->holds = options->pedal ? SW_HOLD_SOFT : limits->holds;
    return good;
}

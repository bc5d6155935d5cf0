/* Instruments as data: compass, transposition, hands, and which of them a staff name means.
 *
 * The figures are defaults for healthy professionals, each with its source; a file of the user's own may
 * replace them (src/players/instruments.yaml says in its head how both look). */
#ifndef STAVEWRIGHT_PLAYERS_H
#define STAVEWRIGHT_PLAYERS_H

#include <stdbool.h>
#include <stddef.h>

#include "stavewright/abilities.h"
#include "stavewright/base.h"
#include "stavewright/pitch.h"

typedef enum sw_family {
    SW_WOODWIND,
    SW_BRASS,
    SW_PERCUSSION,
    SW_KEYBOARD,
    SW_PLUCKED,
    SW_STRINGS,
    SW_VOICE
} sw_family;

/* What one hand spans when its lowest note lies at `from` or above. */
typedef struct sw_hand_register {
    sw_pitch from; /* written */
    int span;      /* as in sw_instrument */
    int extreme_span;
} sw_hand_register;

typedef struct sw_instrument {
    const char *id; /* plain English: "english-horn" */
    sw_family family;
    const char *key;  /* plain form of the key that a name may carry ("bb", "c basso"); "" when it has none */
    sw_pitch sounds;  /* sounding pitch of a written C4, and so the interval from written to sounding */
    bool has_compass; /* false: without definite pitch, or too various; then the four pitches mean nothing */
    sw_pitch written_low; /* section: any professional has it */
    sw_pitch written_high;
    sw_pitch extreme_low; /* written, too: soloists and larger models; never narrower than the section */
    sw_pitch extreme_high;
    const char *const *clefs; /* names as \clef takes them, the most usual first */
    size_t clef_count;
    int fingers; /* fingers or mallets of one hand; 0 = no hands to share */
    int span;    /* widest interval of one hand at sight, as an interval number: 10 = a tenth; 0 = no hands */
    int extreme_span;                       /* the widest that some can; never less than span */
    const sw_hand_register *hand_registers; /* from the bottom up, never narrower than the one before */
    size_t hand_register_count; /* 0: the two figures before hold everywhere; else they are the least and the
                                   most of all registers */
    const char *source;         /* where the figures come from, one line, never NULL */
    sw_abilities can;           /* its own, or taken from the entry that it is `like`, or from its family */
} sw_instrument;

/* All known instruments; owns every string and every sw_instrument that is handed out. */
typedef struct sw_instruments sw_instruments;

/* Loads the built-in instruments and, when `override_path_or_null` is not NULL, the overriding YAML text
 * `override_bytes`; the path is used in messages only and nothing is read from disk. An entry of the override
 * replaces the figures that it gives; without a `source` of its own its place (PATH:LINE) becomes the source.
 * Its names are added. Returns NULL on a mistake in the text and sets *error to one line,
 * "PATH:LINE:COLUMN: what is wrong; what mends it" (lines and columns from 1), which the caller frees with
 * free(); otherwise *error becomes NULL. Free the result with sw_instruments_free. */
sw_instruments *sw_instruments_load(const char *override_path_or_null, sw_slice override_bytes, char **error);
/* NULL is allowed. */
void sw_instruments_free(sw_instruments *instruments);

/* How many there are, those of the override included. */
size_t sw_instruments_count(const sw_instruments *instruments);
/* Number i of 0 .. count-1, NULL beyond; score order within a family. Valid until `instruments` is freed. */
const sw_instrument *sw_instruments_get(const sw_instruments *instruments, size_t i);
/* The instrument with exactly this id, or NULL. */
const sw_instrument *sw_instruments_by_id(const sw_instruments *instruments, const char *id);
/* The instrument that a staff name, a short name, a context id or a variable name means ("Cor. III in F",
 * "Vl. I", "fluteOne"; UTF-8), or NULL when it names none or could as well name another. Takes some tens of
 * microseconds. */
const sw_instrument *sw_instruments_find(const sw_instruments *instruments, const char *staff_name);

/* A written pitch as it sounds, and a sounding pitch as it is written. */
sw_pitch sw_instrument_sounding(const sw_instrument *instrument, sw_pitch written);
sw_pitch sw_instrument_written(const sw_instrument *instrument, sw_pitch sounding);

/* Where a pitch lies in a compass. */
typedef enum sw_compass_place {
    SW_BELOW_EXTREME, /* below what any instrument of the kind has */
    SW_BELOW_SECTION, /* only on larger models or with an extension */
    SW_IN_SECTION,
    SW_ABOVE_SECTION, /* for soloists */
    SW_ABOVE_EXTREME
} sw_compass_place;

/* Where a written (sounding) pitch lies; heights count, not spellings. SW_IN_SECTION without a compass. */
sw_compass_place sw_instrument_place_written(const sw_instrument *instrument, sw_pitch written);
sw_compass_place sw_instrument_place_sounding(const sw_instrument *instrument, sw_pitch sounding);

/* ---- what it can do ---- */

/* Whether the instrument is one of an id in whatever key: "horn" means the horns in all keys. */
bool sw_instrument_is(const sw_instrument *instrument, const char *id);
/* Whether the instrument has a technique ("pizzicato", "flutter-tongue"): SW_NOT_SAID when nothing is said of
 * its techniques. */
sw_answer sw_instrument_has(const sw_instrument *instrument, const char *technique);
/* The register that holds a written pitch, NULL when none is known. */
const sw_register *sw_instrument_register(const sw_instrument *instrument, sw_pitch written);
/* How heavy it is at a dynamic, between piano and forte in equal steps; 0 when nothing is known. */
double sw_instrument_weight(const sw_instrument *instrument, sw_dynamic dynamic);
/* What a trill between two written notes is: SW_TRILL_GOOD when nothing is said against it. */
typedef enum sw_trill_grade { SW_TRILL_GOOD, SW_TRILL_AWKWARD, SW_TRILL_IMPOSSIBLE } sw_trill_grade;
sw_trill_grade sw_instrument_trill(const sw_instrument *instrument, sw_pitch low, sw_pitch high);

/* The word that the YAML uses ("woodwind"), a static string. */
const char *sw_family_name(sw_family family);

#endif

/* What an instrument and its player can do: registers, lips, weight, techniques, strings, trills, tremolos.
 * (Breath, tongue and fading: limits.h.)
 *
 * All figures are defaults for healthy professionals, each group with its source; where nothing is said (a
 * count of 0, a source of NULL, SW_NO_DYNAMIC, SW_NOT_SAID) no check speaks of it. Pitches are written ones
 * unless said otherwise. src/players/instruments.yaml says in its head how they are given, and how an entry
 * takes them from another. */
#ifndef STAVEWRIGHT_ABILITIES_H
#define STAVEWRIGHT_ABILITIES_H

#include <stdbool.h>
#include <stddef.h>

#include "stavewright/dynamic.h"
#include "stavewright/pitch.h"

typedef enum sw_answer { SW_NOT_SAID, SW_YES, SW_NO } sw_answer;

/* A stretch of the compass and what it can carry. Registers don't overlap; between them there may be gaps, of
 * which nothing is said. */
typedef struct sw_register {
    const char *name; /* "chalumeau" */
    sw_pitch low;     /* both ends belong to it */
    sw_pitch high;
    sw_dynamic softest; /* the weakest dynamic that speaks and holds; SW_NO_DYNAMIC: no limit is said */
    sw_dynamic loudest; /* the strongest that it can carry */
    bool covered;       /* does not come through when others sound beside it */
    sw_answer niente;   /* can fade into silence */
    const char *source;
} sw_register;

/* Lips that tire. */
typedef struct sw_lips {
    sw_pitch above;     /* notes above this one ... */
    double seconds;     /* ... may add up to this ... */
    double rest;        /* ... before a rest of so many seconds */
    const char *source; /* NULL: nothing is said */
} sw_lips;

/* How heavy one part is beside others; a woodwind is 1. */
typedef struct sw_weight {
    double soft;        /* at piano and softer */
    double loud;        /* at forte and louder */
    const char *source; /* NULL: nothing is said */
} sw_weight;

/* Two notes between which a trill is impossible or awkward. */
typedef struct sw_trill_pair {
    sw_pitch low;
    sw_pitch high;
    bool impossible; /* false: awkward */
} sw_trill_pair;

typedef struct sw_trills {
    const sw_trill_pair *pairs;
    size_t count;
    sw_pitch from;      /* of lip trills: the lowest note that has one */
    bool whole_tones;   /* there are only whole tones, from `from` on: lip trills */
    const char *source; /* NULL: nothing is said */
} sw_trills;

/* How two slurred notes alternate. */
typedef struct sw_tremolo {
    sw_answer slurred;  /* SW_NO: poor */
    const char *source; /* NULL: nothing is said */
} sw_tremolo;

/* Plain words, those of src/players/techniques.yaml where it has them. */
typedef struct sw_technique_set {
    const char *const *words;
    size_t count;
    const char *source; /* NULL: nothing is said */
} sw_technique_set;

/* Sounding pitches of the open strings, from the lowest string on. */
typedef struct sw_tuning {
    const sw_pitch *strings;
    size_t count;
    int reach; /* semitones above an open string that the fingers have in the first position; 0: not said */
    const char *source; /* NULL: nothing is said */
} sw_tuning;

typedef struct sw_abilities {
    const sw_register *registers; /* from the bottom up */
    size_t register_count;
    sw_lips lips;
    sw_weight weight;
    sw_trills trills;
    sw_tremolo tremolo;
    sw_technique_set techniques;
    sw_tuning tuning;
} sw_abilities;

#endif

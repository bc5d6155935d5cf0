/* How the notes of a chord lie for the players of each part. Private to moves/. */
#ifndef SW_MOVES_DIVISI_FIT_H
#define SW_MOVES_DIVISI_FIT_H

#include "checks/entry.h"
#include "moves/divisi_line.h"

/* Who plays a staff, and how its notes are meant. */
typedef struct sw_divisi_fit {
    const sw_score *score;
    uint32_t staff;
    const sw_seating *seating;
    sw_entries *entries; /* by staff */
} sw_divisi_fit;

/* The groups of players who have different instruments at a moment, in the order of their chairs. */
typedef struct sw_divisi_groups {
    int count;
    int players[SW_DIVISI_MOST];                      /* 0: not known */
    const sw_instrument *instruments[SW_DIVISI_MOST]; /* NULL: that of the staff */
} sw_divisi_groups;

sw_divisi_groups sw_divisi_groups_at(const sw_divisi_fit *fit, sw_rational moment);
/* Sets what a slice says of compass and position for a section that was made of these groups. Its notes are
 * events, from the lowest up. */
void sw_divisi_fit_slice(const sw_divisi_fit *fit, const sw_divisi_groups *groups,
                         const sw_divisi_section *section, const uint32_t *notes, sw_divisi_slice *slice);

#endif

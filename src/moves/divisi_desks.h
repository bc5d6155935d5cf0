/* At which desks the players of a part sit: a pure function. Two players share a desk, the outside one the
 * upper part (Rimsky-Korsakov, Principles of Orchestration); a last player may sit alone. In two parts each
 * desk is divided. In more, whole desks go to the parts in turn, from the first desk and the upper part on,
 * and only the players that are left over share a desk with another part (common practice, no source).
 * Private to moves/. */
#ifndef SW_MOVES_DIVISI_DESKS_H
#define SW_MOVES_DIVISI_DESKS_H

#include <stdint.h>

#include "moves/divisi_line.h"
#include "stavewright/base.h"

/* Writes the part of each player of a group, who sit in the order of their desks: part_of[0], the outside one
 * of the first desk, up to the number of the group's players. */
void sw_divisi_seat(const sw_divisi_section *section, int group, uint8_t *part_of);
/* Appends where the players of a part sit: ": outside", ": desk 3", ": desks 1, 4, inside of desk 7"; nothing
 * where the whole group has the part. */
void sw_divisi_say_desks(const sw_divisi_section *section, int part, sw_buffer *text);

#endif

#include "moves/divisi_desks.h"

#include <stdlib.h>

enum { NOBODY = UINT8_MAX };

/* The parts of a group, and its players. */
typedef struct group {
    int lowest;
    int parts;
    int players;
} group;

static group find_group(const sw_divisi_section *section, int number)
{
    group g = {0};
    for (int p = section->parts; p-- > 0;) {
        if (section->groups[p] == number) {
            g.lowest = p;
            g.parts++;
            g.players += section->sizes[p];
        }
    }
    return g;
}

/* The next part, from the top down and round, that has at least so many players without a seat. */
static int next_part(const group *g, const int *left, int from, int players)
{
    for (int i = 0; i < g->parts; i++) {
        int part = g->lowest + (from - g->lowest + g->parts - i) % g->parts;
        if (left[part] >= players) {
            return part;
        }
    }
    return -1;
}

static void seat_in_turn(const group *g, int *left, uint8_t *part_of)
{
    int turn = g->lowest + g->parts - 1;
    int top = turn;
    for (int i = 0; i + 1 < g->players; i += 2) {
        int part = next_part(g, left, turn, 2);
        if (part >= 0) {
            part_of[i] = part_of[i + 1] = (uint8_t)part;
            left[part] -= 2;
            turn = part > g->lowest ? part - 1 : top;
        }
    }
    for (int i = 0; i < g->players; i++) {
        if (part_of[i] == NOBODY) {
            int part = next_part(g, left, top, 1);
            part_of[i] = (uint8_t)part;
            left[part]--;
        }
    }
}

void sw_divisi_seat(const sw_divisi_section *section, int number, uint8_t *part_of)
{
    group g = find_group(section, number);
    int left[SW_DIVISI_MOST];
    for (int p = 0; p < section->parts; p++) {
        left[p] = section->sizes[p];
    }
    for (int i = 0; i < g.players; i++) {
        part_of[i] = (uint8_t)(g.parts == 2 ? g.lowest + 1 - i % 2 : NOBODY);
    }
    if (g.parts != 2) {
        seat_in_turn(&g, left, part_of);
    }
}

void sw_divisi_say_desks(const sw_divisi_section *section, int part, sw_buffer *text)
{
    group g = find_group(section, section->groups[part]);
    if (g.parts <= 2) {
        sw_buffer_string(text, g.parts < 2 ? "" : part == g.lowest ? ": inside" : ": outside");
        return;
    }
    uint8_t *part_of = sw_alloc((size_t)g.players);
    sw_divisi_seat(section, section->groups[part], part_of);
    sw_buffer whole = {0};
    sw_buffer halves = {0};
    int desks = 0;
    for (int i = 0; i < g.players; i += 2) {
        bool alone = i + 1 == g.players;
        bool outside = part_of[i] == part;
        bool inside = !alone && part_of[i + 1] == part;
        if (outside && (inside || alone)) {
            sw_buffer_format(&whole, "%s%d", desks++ == 0 ? "" : ", ", i / 2 + 1);
        } else if (outside || inside) {
            sw_buffer_format(&halves, ", %s of desk %d", outside ? "outside" : "inside", i / 2 + 1);
        }
    }
    if (desks > 0) {
        sw_buffer_format(text, ": %s %s%s", desks == 1 ? "desk" : "desks", sw_buffer_text(&whole),
                         sw_buffer_text(&halves));
    } else {
        sw_buffer_format(text, ":%s", sw_buffer_text(&halves) + 1);
    }
    sw_buffer_free(&whole);
    sw_buffer_free(&halves);
    free(part_of);
}

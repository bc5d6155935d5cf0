#include "checks/chair_findings.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "checks/say.h"

/* ---- wording ---------------------------------------------------------------------------------------------
 */

void sw_chair_finding(const sw_chair_scene *scene, sw_severity severity, uint32_t event, const char *label,
                      const char *format, ...)
{
    char place[SW_SAY];
    sw_buffer text = {0};
    const sw_event *e = &scene->score->events[event];
    sw_buffer_format(&text, "%s, %s: ", sw_say_place(scene->score, e->onset, place), label);
    va_list values;
    va_start(values, format);
    sw_buffer_vformat(&text, format, values);
    va_end(values);
    const sw_music *m = sw_event_written(scene->check->reading, e);
    sw_findings_add(scene->check->findings, severity, scene->rule, m->file, m->start, m->end, "%s",
                    sw_buffer_text(&text));
    sw_buffer_free(&text);
}

/* ---- more notes than players -----------------------------------------------------------------------------
 */

/* How many notes the players of a staff can give at once; 0: nobody can tell. */
static int most_notes(const sw_instrument *instrument, int players)
{
    if (instrument == NULL || players == 0) {
        return 0;
    }
    if (instrument->family == SW_WOODWIND || instrument->family == SW_BRASS) {
        return players;
    }
    if (instrument->family != SW_STRINGS) {
        return 0;
    }
    return players < 2 ? 4 : 2 * players;
}

/* How many players play where a note sounds. */
static int players_at(const sw_chair_scene *scene, uint32_t event, const sw_seats **seats)
{
    const sw_event *e = &scene->score->events[event];
    *seats = sw_seating_at(scene->seating, scene->score->voices[e->voice].staff, e->onset);
    bool all = scene->ranges[event].all;
    size_t first = all ? (*seats)->all_first : (*seats)->first;
    size_t count = all ? (*seats)->all_count : (*seats)->count;
    int players = 0;
    for (size_t i = 0; i < count; i++) {
        const sw_chair *chair = scene->seating->players[scene->seating->seats[first + i].player].chair;
        players += chair == NULL ? 1 : chair->players;
    }
    return players;
}

static void report_too_many(const sw_chair_scene *scene, uint32_t staff, uint32_t event, size_t more)
{
    char label[32];
    char count[SW_SAY];
    char others[64] = "";
    const sw_seats *seats;
    int players = players_at(scene, event, &seats);
    if (more > 0) {
        snprintf(others, sizeof others, " (and in %zu more place%s)", more, more == 1 ? "" : "s");
    }
    sw_chair_finding(
        scene, SW_WARNING, event, sw_staff_label(scene->check->reading, scene->score, staff, label),
        "%u notes at once%s for %s%s; leave out some, or let more players join",
        (unsigned)scene->ranges[event].notes, others, sw_say_count((size_t)players, "player", count),
        seats->some && !scene->ranges[event].all ? ", as the text over the staff says" : "");
}

/* What is said of a staff: its first place, and how many more there are. */
typedef struct crowd {
    uint32_t event; /* SW_NO_INDEX: none so far */
    size_t more;
    sw_rational last; /* the moment that was counted last */
} crowd;

static void look_at(const sw_chair_scene *scene, crowd *crowds, uint32_t event)
{
    const sw_event *e = &scene->score->events[event];
    const sw_seat_range *range = &scene->ranges[event];
    if (e->kind != SW_EVENT_NOTE || range->notes < 2) {
        return;
    }
    uint32_t staff = scene->score->voices[e->voice].staff;
    const sw_seats *seats;
    int most = most_notes(scene->seating->seats[range->first].instrument, players_at(scene, event, &seats));
    crowd *c = &crowds[staff];
    if (most == 0 || (int)range->notes <= most) {
        return;
    }
    if (c->event == SW_NO_INDEX) {
        c->event = event;
    } else if (!sw_rational_equal(c->last, e->onset)) {
        c->more++;
    }
    c->last = e->onset;
}

void sw_find_too_many_notes(const sw_chair_scene *scene)
{
    crowd *crowds = sw_alloc((scene->score->staff_count + 1) * sizeof *crowds);
    for (uint32_t staff = 0; staff < scene->score->staff_count; staff++) {
        crowds[staff] = (crowd){.event = SW_NO_INDEX};
    }
    for (uint32_t i = 0; i < scene->score->event_count; i++) {
        look_at(scene, crowds, i);
    }
    for (uint32_t staff = 0; staff < scene->score->staff_count; staff++) {
        uint32_t event = crowds[staff].event;
        if (event != SW_NO_INDEX) {
            report_too_many(scene, staff, event, crowds[staff].more);
        }
    }
    free(crowds);
}

/* A run that is shared goes to the instrument in whose middle it lies (share_line.h), note by note; where it
 * is handed over, both play one note. */
#include <stdlib.h>
#include <string.h>

#include "checks/say.h"
#include "moves/give_plan.h"
#include "moves/share_line.h"

/* The run, stroke by stroke, and who plays what. */
typedef struct sharing {
    size_t *firsts; /* by stroke: its first note among the chosen ones; one more at the end */
    sw_share_stroke *strokes;
    uint8_t *who;
    size_t count;
    sw_share_player players[SW_SHARE_MOST];
    char *names[SW_SHARE_MOST]; /* as they were given */
    size_t player_count;
} sharing;

static void free_sharing(sharing *s)
{
    free(s->firsts);
    free(s->strokes);
    free(s->who);
    for (size_t p = 0; p < s->player_count; p++) {
        free(s->names[p]);
    }
}

static void find_strokes(sw_give_plan *g, sharing *s)
{
    sw_pitch source = sw_give_sounds(g, &g->from, g->source);
    s->firsts = sw_alloc_zero(g->chosen.count + 1, sizeof *s->firsts);
    s->strokes = sw_alloc_zero(g->chosen.count + 1, sizeof *s->strokes);
    s->who = sw_alloc_zero(g->chosen.count + 1, sizeof *s->who);
    for (size_t i = 0; i < g->chosen.count; i++) {
        const sw_event *event = sw_give_event(g, i);
        int height = sw_pitch_semitones(sw_pitch_transpose(event->pitch, source));
        if (i > 0 && sw_rational_equal(event->onset, sw_give_event(g, i - 1)->onset)) {
            sw_share_stroke *stroke = &s->strokes[s->count - 1];
            stroke->low = height < stroke->low ? height : stroke->low;
            stroke->high = height > stroke->high ? height : stroke->high;
        } else {
            bool bound = i > 0 && sw_give_has_tie(g->chosen.reading, sw_give_event(g, i - 1)->chord);
            s->firsts[s->count] = i;
            s->strokes[s->count++] = (sw_share_stroke){height, height, bound};
        }
    }
    s->firsts[s->count] = g->chosen.count;
}

/* The names between commas. */
static bool find_players(sw_give_plan *g, sharing *s, char **error)
{
    for (const char *at = g->options->to; at != NULL;) {
        const char *comma = strchr(at, ',');
        at += strspn(at, " ");
        if (s->player_count == SW_SHARE_MOST) {
            return sw_give_fail(error, "a run can be shared among 8 at most", "", "");
        }
        char *name = comma == NULL ? strdup(at) : strndup(at, (size_t)(comma - at));
        sw_share_player *player = &s->players[s->player_count];
        s->names[s->player_count++] = name;
        sw_give_plan one = *g;
        if (!sw_give_find_staves(&one, name, error) || !sw_give_find_entries(&one, error)) {
            return false;
        }
        const sw_instrument *to = one.to.instrument;
        if (to == NULL || !to->has_compass) {
            return sw_give_fail(error, "no compass is known for %s; give it its part by itself", name, "");
        }
        player->low = sw_pitch_semitones(sw_instrument_sounding(to, to->written_low));
        player->high = sw_pitch_semitones(sw_instrument_sounding(to, to->written_high));
        g->from = one.from;
        g->source = one.source;
        at = comma == NULL ? NULL : comma + 1;
    }
    return true;
}

/* Finds who plays what, in the nearest octave in which somebody has each stroke. */
static bool find_shares(sw_give_plan *g, sharing *s, char **error)
{
    for (int octaves = 0; octaves <= 6; octaves = octaves > 0 ? -octaves : 1 - octaves) {
        int by = 12 * (octaves - g->octaves);
        for (size_t i = 0; i < s->count; i++) {
            s->strokes[i].low += by;
            s->strokes[i].high += by;
        }
        g->octaves = octaves;
        if (sw_share_solve(s->strokes, s->count, s->players, s->player_count, s->who) >= 0) {
            return true;
        }
    }
    return sw_give_fail(
        error, "in every octave the run has notes that none of them has; add another instrument", "", "");
}

/* The stroke that begins the note of which a stroke may be a tied value, and the one behind its last value.
 */
static size_t note_begin(const sharing *s, size_t stroke)
{
    while (stroke > 0 && s->strokes[stroke].bound) {
        stroke--;
    }
    return stroke;
}

static size_t note_end(const sharing *s, size_t stroke)
{
    for (stroke++; stroke < s->count && s->strokes[stroke].bound; stroke++) {
    }
    return stroke;
}

/* Plans the copy of the strokes [first, end) for their player, and of one more note that overlaps with the
 * next player's, or with the last one's where that one does not have it. */
static bool plan_share(sw_give_plan *g, const sharing *s, size_t first, size_t end, char **error)
{
    uint8_t player = s->who[first];
    char place[SW_SAY];
    bool begins_early = first > 0 && !sw_share_has(&s->players[s->who[first - 1]], &s->strokes[first]) &&
                        sw_share_has(&s->players[player], &s->strokes[first - 1]);
    first = begins_early ? note_begin(s, first - 1) : first;
    bool overlaps = end < s->count && sw_share_has(&s->players[player], &s->strokes[end]);
    end = overlaps ? note_end(s, end) : end;
    sw_give_plan *part = sw_give_add_part(g, s->firsts[first], s->firsts[end]);
    sw_buffer_format(&g->move->why, "%s: %s has the best register from here on\n",
                     sw_say_place(g->chosen.score, sw_give_event(part, 0)->onset, place), s->names[player]);
    bool done = sw_give_plan_copy(part, s->names[player], SW_CHANGE_COPY_RUN, error);
    sw_give_take_changes(g, part);
    return done;
}

bool sw_give_plan_shared(sw_give_plan *g, char **error)
{
    sharing s = {.count = 0};
    bool done = find_players(g, &s, error);
    if (done) {
        find_strokes(g, &s);
        done = find_shares(g, &s, error);
    }
    g->parts = sw_alloc_zero(s.count + 1, sizeof *g->parts);
    for (size_t first = 0, end; first < s.count && done && g->move->findings.count == 0; first = end) {
        for (end = first + 1; end < s.count && s.who[end] == s.who[first]; end++) {
        }
        done = plan_share(g, &s, first, end, error);
    }
    free_sharing(&s);
    if (done) {
        sw_rational begin = g->parts[0].begin;
        g->begin = begin;
        g->end = g->parts[g->part_count - 1].end;
    }
    return done && (g->options->keep || sw_give_silence_source(g, error));
}

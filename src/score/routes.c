/* Music that changes its voice or staff by itself: \partCombine and \autoChange. Both are first listened
 * to; what was heard decides the turns; then the notes are played along them. */
#include <stdlib.h>

#include "score/part_combine.h"
#include "score/player.h"

static const sw_music *at(const sw_player *p, uint32_t music)
{
    return &p->reader->reading->music[music];
}

/* Listens without leaving frames in the score. */
static sw_recording *listen_briefly(sw_player *p, uint32_t music, const char *id)
{
    size_t frames = p->score->frame_count;
    sw_recording *recording = sw_listen(p, music, sw_names_add(p->reader->reading->names, sw_slice_of(id)));
    p->score->frame_count = frames;
    return recording;
}

/* A moment of the music as a moment of the score. */
static sw_moment in_score(sw_moment inner, sw_moment begin, const sw_spot *here)
{
    return (sw_moment){sw_rational_add(begin.main, sw_rational_mul(inner.main, here->scale)), inner.grace};
}

/* ---- \partCombine ---- */

static sw_context *make_route(sw_player *p, const sw_part_turns *turns, sw_context *const *voices,
                              sw_part_voice first, sw_moment when, const sw_spot *here)
{
    sw_turn *made = sw_alloc((turns->count + 1) * sizeof *made);
    for (size_t i = 0; i < turns->count; i++) {
        made[i] = (sw_turn){in_score(turns->items[i].at, when, here), voices[turns->items[i].voice]};
    }
    sw_context *route = sw_contexts_route(p->contexts, voices[first], made, turns->count);
    free(made);
    return route;
}

sw_moment sw_walk_part_combine(sw_player *p, uint32_t music, sw_moment when, const sw_spot *here)
{
    static const char *const ids[] = {"one", "two", "shared", "solo", "null"};
    uint32_t one = at(p, music)->first;
    uint32_t two = one == SW_NO_INDEX ? SW_NO_INDEX : at(p, one)->next;
    if (two == SW_NO_INDEX) {
        return one == SW_NO_INDEX ? when : sw_walk(p, one, when, here);
    }
    sw_recording *first = listen_briefly(p, one, ids[SW_PART_ONE]);
    sw_recording *second = listen_briefly(p, two, ids[SW_PART_TWO]);
    sw_part_turns turns[2];
    sw_part_combine(first, second, at(p, music)->num, at(p, music)->den, turns);
    sw_recording_free(first);
    sw_recording_free(second);

    sw_context *staff = sw_contexts_staff(p->contexts, here->context, false);
    sw_context *voices[SW_PART_VOICES];
    for (int i = 0; i < SW_PART_VOICES; i++) {
        voices[i] = sw_contexts_named(p->contexts, staff, i == SW_PART_NULL ? "NullVoice" : "Voice", ids[i]);
    }
    sw_moment end = when;
    for (uint32_t part = 0; part < 2; part++) {
        sw_spot inside = *here;
        inside.frame = sw_player_frame(p, here->frame, music, part);
        inside.context = make_route(p, &turns[part], voices, (sw_part_voice)part, when, here);
        sw_moment stop = sw_walk(p, part == 0 ? one : two, when, &inside);
        end = sw_moment_compare(stop, end) > 0 ? stop : end;
        free(turns[part].items);
    }
    return end;
}

/* ---- \autoChange ---- */

typedef struct turns_list {
    sw_turn *items;
    size_t count;
    size_t capacity;
} turns_list;

/* The first note of each moment decides, by its step above or below the reference; a change is made where
 * the rests before that note begin. The context that was made last in the music is the one listened to.
 *
 * The compiler writes the changes down as spans of time from one to the next, but measures each span from the
 * note that asked for the change before, not from the change itself. So with each rest that a change was
 * moved back over, all later changes come so much earlier. What is printed follows that, and so do we. */
static turns_list find_staves(const sw_recording *recording, int reference, sw_context *const staves[2])
{
    turns_list turns = {0};
    uint32_t voice = (uint32_t)recording->context_count - 1;
    int side = 0;
    bool resting = false;
    sw_moment rest = sw_moment_zero();
    sw_moment asked = sw_moment_zero(); /* by the change before ... */
    sw_moment made = sw_moment_zero();  /* ... which came then */
    for (size_t i = 0; i < recording->count;) {
        sw_moment now = recording->heard[i].when;
        const sw_heard *note = NULL;
        bool heard = false;
        for (; i < recording->count && sw_moment_compare(recording->heard[i].when, now) == 0; i++) {
            const sw_heard *h = &recording->heard[i];
            if (h->voice == voice && h->kind != SW_HEARD_TRANSPOSITION) {
                heard = true;
                note = note == NULL && h->kind == SW_HEARD_NOTE ? h : note;
            }
        }
        if (!heard) {
            continue;
        }
        int above = note == NULL ? 0 : sw_pitch_staff_steps(note->pitch) - reference;
        int wanted = (above > 0) - (above < 0);
        if (wanted != 0 && wanted != side) {
            turns.items = sw_grow(turns.items, turns.count, &turns.capacity, sizeof *turns.items);
            sw_moment due = resting ? rest : now;
            made.main = sw_rational_add(made.main, sw_rational_sub(due.main, asked.main));
            made.grace = now.grace;
            turns.items[turns.count++] = (sw_turn){made, staves[wanted < 0]};
            asked = now;
            side = wanted;
        }
        if (note != NULL) {
            resting = false;
        } else if (!resting) {
            resting = true;
            rest = now;
        }
    }
    return turns;
}

sw_moment sw_walk_auto_change(sw_player *p, uint32_t music, sw_moment when, const sw_spot *here)
{
    const sw_music *m = at(p, music);
    if (m->first == SW_NO_INDEX) {
        return when;
    }
    sw_context *staves[2] = {sw_contexts_staff_called(p->contexts, here->context, "up"),
                             sw_contexts_staff_called(p->contexts, here->context, "down")};
    sw_context *voices[2];
    for (int i = 0; i < 2; i++) {
        voices[i] = sw_contexts_new_voice(p->contexts, staves[i]);
    }
    sw_recording *recording = listen_briefly(p, m->first, "");
    turns_list turns = find_staves(recording, sw_pitch_staff_steps(m->pitch), voices);
    sw_recording_free(recording);
    for (size_t i = 0; i < turns.count; i++) {
        turns.items[i].at = in_score(turns.items[i].at, when, here);
    }
    sw_spot inside = *here;
    inside.context = sw_contexts_route(p->contexts, voices[0], turns.items, turns.count);
    free(turns.items);
    return sw_walk(p, m->first, when, &inside);
}

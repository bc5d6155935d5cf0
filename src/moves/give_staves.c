/* The two staves of a passage: whether the one can part with its notes, and the other has room for them. */
#include "checks/say.h"
#include "moves/give_plan.h"

static bool is_note(const sw_event *event)
{
    return event->kind == SW_EVENT_NOTE || event->kind == SW_EVENT_DRUM;
}

bool sw_give_find_staves(sw_give_plan *g, const char *to, char **error)
{
    const sw_score *score = g->chosen.score;
    uint32_t number = 0;
    char text[32];
    if (!sw_staff_find(g->chosen.reading, to, &number, &g->target, error)) {
        return false;
    }
    g->source = score->voices[sw_give_event(g, 0)->voice].staff;
    if (&g->chosen.reading->scores[number] != score) {
        return sw_give_fail(error, "the staves are not in the same score; nothing is changed", "", "");
    }
    if (g->target == g->source) {
        return sw_give_fail(error, "%s has the line already; nothing is changed",
                            sw_give_label(g, g->source, text), "");
    }
    g->begin = sw_give_event(g, 0)->onset;
    g->end = g->begin;
    for (size_t i = 0; i < g->chosen.count; i++) {
        const sw_event *event = sw_give_event(g, i);
        sw_rational end = sw_event_end(event);
        g->end = sw_rational_compare(end, g->end) > 0 ? end : g->end;
        if (event->voice != sw_give_event(g, 0)->voice) {
            return sw_give_fail(error, "%s has two voices here: choose bars with one; nothing is changed",
                                sw_give_label(g, g->source, text), "");
        }
        if (event->kind == SW_EVENT_DRUM) {
            return sw_give_fail(error, "%s has percussion without pitch here; nothing is changed",
                                sw_give_label(g, g->source, text), "");
        }
    }
    return true;
}

bool sw_give_is_whole(const sw_give_plan *g, char **error)
{
    const sw_score *score = g->chosen.score;
    char place[SW_SAY];
    for (uint32_t e = 0; e < score->event_count && !g->options->keep; e++) {
        const sw_event *event = &score->events[e];
        sw_rational end = sw_event_end(event);
        if (is_note(event) && event->voice == sw_give_event(g, 0)->voice &&
            (sw_rational_equal(end, g->begin) || sw_rational_equal(end, g->end)) &&
            sw_give_has_tie(g->chosen.reading, event->chord)) {
            return sw_give_fail(
                error,
                "%s: a tie leads over the edge of the passage; choose bars that hold the whole "
                "note%s",
                sw_say_place(score, event->onset, place), "");
        }
    }
    return true;
}

bool sw_give_clear_target(sw_give_plan *g, char **error)
{
    const sw_score *score = g->chosen.score;
    uint32_t last = SW_NO_INDEX;
    char text[32];
    char place[SW_SAY];
    for (uint32_t e = 0; e < score->event_count; e++) {
        const sw_event *event = &score->events[e];
        if (!is_note(event) || score->voices[event->voice].staff != g->target ||
            (event->flags & (SW_EVENT_CUE | SW_EVENT_HIDDEN)) != 0 ||
            sw_rational_compare(event->onset, g->end) >= 0 ||
            sw_rational_compare(g->begin, sw_event_end(event)) >= 0) {
            continue;
        }
        const char *where = sw_say_place(score, event->onset, place);
        if (!g->options->over) {
            const sw_music *m = sw_event_written(g->chosen.reading, event);
            if (g->chosen.reading != g->move->mains[0]) {
                return sw_give_fail(error, "%s: %s plays there already; --over gives it the line instead",
                                    where, sw_give_label(g, g->target, text));
            }
            sw_findings_add(&g->move->findings, SW_ERROR, g->options->keep ? "double" : "give", m->file,
                            m->start, m->end,
                            "%s: %s plays here already; choose other bars, or give it the line instead with "
                            "--over",
                            where, sw_give_label(g, g->target, text));
            sw_place at = sw_text_place(g->chosen.reading->files[m->file].text, m->start);
            g->move->findings.items[0].line = at.line;
            g->move->findings.items[0].column = at.column + 1;
            return true;
        }
        if (sw_rational_compare(event->onset, g->begin) < 0 ||
            sw_rational_compare(sw_event_end(event), g->end) > 0) {
            return sw_give_fail(error, "%s: a note of %s reaches beyond the passage; nothing is changed",
                                where, sw_give_label(g, g->target, text));
        }
        if (last == SW_NO_INDEX || score->events[last].chord != event->chord ||
            score->events[last].voice != event->voice) {
            if (sw_give_in_hairpin(g, event->voice, g->begin) ||
                sw_give_in_hairpin(g, event->voice, g->end)) {
                return sw_give_fail(
                    error,
                    "%s: a hairpin of %s leads over the edge of the passage; choose bars that "
                    "hold all of it",
                    where, sw_give_label(g, g->target, text));
            }
            sw_give_drop_dynamics(g, e);
            sw_give_add_change(g, (sw_change){.kind = SW_CHANGE_SILENCE, .event = e});
            last = e;
        }
    }
    return true;
}

bool sw_give_find_voice(sw_give_plan *g, char **error)
{
    const sw_score *score = g->chosen.score;
    for (uint32_t e = 0; e < score->event_count; e++) {
        const sw_event *event = &score->events[e];
        if (score->voices[event->voice].staff == g->target && event->kind != SW_EVENT_SKIP &&
            (event->flags & (SW_EVENT_CUE | SW_EVENT_HIDDEN | SW_EVENT_GRACE)) == 0 &&
            sw_rational_compare(event->onset, g->begin) <= 0 &&
            sw_rational_compare(g->begin, sw_event_end(event)) < 0) {
            g->voice = event->voice;
            return true;
        }
    }
    char text[32];
    char place[SW_SAY];
    return sw_give_fail(error, "%s: %s has no rests to write into; nothing is changed",
                        sw_say_place(score, g->begin, place), sw_give_label(g, g->target, text));
}

bool sw_give_silence_source(sw_give_plan *g, char **error)
{
    char text[32];
    if (sw_give_in_hairpin(g, sw_give_event(g, 0)->voice, g->begin) ||
        sw_give_in_hairpin(g, sw_give_event(g, 0)->voice, g->end)) {
        return sw_give_fail(
            error, "a hairpin of %s leads over the edge of the passage; choose bars that hold all of it%s",
            sw_give_label(g, g->source, text), "");
    }
    for (size_t i = 0; i < g->chosen.count; i++) {
        if (i == 0 || sw_give_event(g, i)->chord != sw_give_event(g, i - 1)->chord) {
            sw_give_drop_dynamics(g, g->chosen.events[i]);
            sw_give_add_change(g, (sw_change){.kind = SW_CHANGE_SILENCE, .event = g->chosen.events[i]});
        }
    }
    return true;
}

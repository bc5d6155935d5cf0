/* A fade to nothing on an instrument whose tone breaks off before that. */
#include <string.h>

#include "checks/rules.h"
#include "checks/say.h"

#include "players/loudness.h"

static bool is_niente(const sw_reading *reading, uint32_t mark)
{
    if (sw_music_mark_class(reading, mark) == SW_MARK_DYNAMIC) {
        return sw_loudness(sw_music_slice(reading, mark)) == SW_LOUDNESS_NIENTE;
    }
    return strcasestr(sw_music_mark_text(reading, mark), "niente") != NULL;
}

static void check_score(sw_check *check, const sw_score *score, const sw_playing *playing)
{
    for (size_t i = 0; i < score->event_count; i++) {
        const sw_event *event = &score->events[i];
        uint32_t staff = score->voices[event->voice].staff;
        const sw_limit *limit = sw_limits_of(check->limits, playing->instruments[staff]);
        if (limit == NULL || !limit->known_fade || limit->fades || event->kind == SW_EVENT_SKIP ||
            (event->flags & (SW_EVENT_CUE | SW_EVENT_HIDDEN)) != 0 ||
            !sw_event_has_mark(check->reading, event, is_niente)) {
            continue;
        }
        char place[SW_SAY];
        char label[32];
        const sw_music *m = sw_event_written(check->reading, event);
        sw_findings_add(
            check->findings, SW_WARNING, "no-niente", m->file, m->start, m->end,
            "%s, %s: a fade to nothing, but the %s's tone breaks off before; end it at pp, or give the last "
            "notes to a clarinet, flute or strings",
            sw_say_place(score, event->onset, place), sw_staff_label(check->reading, score, staff, label),
            playing->instruments[staff]->id);
    }
}

static void run(sw_check *check)
{
    for (size_t i = 0; i < check->reading->score_count; i++) {
        if (!check->reading->scores[i].in_markup) {
            check_score(check, &check->reading->scores[i], sw_check_playing(check, i));
        }
    }
}

const sw_rule sw_rule_no_niente = {
    .name = "no-niente",
    .summary = "a fade to nothing on an instrument that can't",
    .severity = SW_WARNING,
    .explain = "The mark n, or a text with \"niente\", asks for a fade to nothing (or a beginning from it). "
               "Clarinets and\n"
               "flutes can fade to a mere breath (Rimsky-Korsakov, Principles of Orchestration), strings and "
               "most brass in\n"
               "their middle register, too; double reeds and recorders stop speaking before (common "
               "practice, no source;\n"
               "src/players/limits.yaml).\n\n"
               "To mend: let these instruments end earlier or at pp, and others go on to nothing.\n",
    .run = run,
};

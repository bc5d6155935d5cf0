/* A fade to nothing on an instrument whose tone breaks off before that. */
#include <stdio.h>

#include "checks/entry.h"
#include "checks/rules.h"
#include "checks/say.h"

#include "players/dynamic_words.h"

static bool is_niente(const sw_reading *reading, uint32_t mark)
{
    sw_dynamic_word word = sw_dynamic_word_of(reading, mark);
    return word.kind == SW_DYNAMIC_LEVEL && word.mark.stays == SW_NIENTE;
}

/* A register of the note that can't fade, however the note is read; NULL: none. */
static const sw_register *stubborn_register(const sw_entry *entry, const sw_event *event)
{
    sw_pitch written[SW_ENTRY_READINGS];
    size_t count = event->kind == SW_EVENT_NOTE ? sw_entry_written(entry, event->pitch, written) : 0;
    const sw_register *found = NULL;
    for (size_t i = 0; i < count; i++) {
        found = sw_instrument_register(entry->instrument, written[i]);
        if (found == NULL || found->niente != SW_NO) {
            return NULL;
        }
    }
    return found;
}

static void report(sw_check *check, const sw_score *score, uint32_t staff, const sw_event *event,
                   const char *what)
{
    char place[SW_SAY];
    char label[32];
    const sw_music *m = sw_event_written(check->reading, event);
    sw_findings_add(check->findings, SW_WARNING, "no-niente", m->file, m->start, m->end,
                    "%s, %s: a fade to nothing, but the %s breaks off before; end it at pp, or give the last "
                    "notes to a clarinet, flute or strings",
                    sw_say_place(score, event->onset, place),
                    sw_staff_label(check->reading, score, staff, label), what);
}

static void check_staff(sw_check *check, const sw_score *score, uint32_t staff)
{
    const sw_entries *entries = &sw_check_entries(check, score)[staff];
    sw_staff_events events = sw_score_staff_events(score, staff);
    for (uint32_t i = events.first; i < events.end; i++) {
        const sw_event *event = &score->events[i];
        if (event->kind == SW_EVENT_SKIP || (event->flags & (SW_EVENT_CUE | SW_EVENT_HIDDEN)) != 0 ||
            !sw_event_has_mark(check->reading, event, is_niente)) {
            continue;
        }
        const sw_entry *entry = sw_entry_of_note(entries, sw_entries_at(entries, event->onset), i);
        const sw_instrument *instrument = entry->instrument;
        const sw_limit *limit = sw_limits_of(check->limits, instrument);
        bool never = limit != NULL && limit->known_fade && !limit->fades;
        const sw_register *reg = stubborn_register(entry, event);
        char what[2 * SW_SAY];
        char name[SW_SAY];
        if (never || reg != NULL) {
            snprintf(what, sizeof what, "%.64s's %s%s", sw_say_instrument(instrument, name),
                     never ? "tone" : reg->name, never ? "" : " register");
            report(check, score, staff, event, what);
        }
    }
}

static void run(sw_check *check)
{
    sw_check_each_staff(check, check_staff);
}

const sw_rule sw_rule_no_niente = {
    .name = "no-niente",
    .summary = "a fade to nothing on an instrument that can't",
    .severity = SW_WARNING,
    .explain =
        "The mark n, or a text with \"niente\", asks for a fade to nothing (or a beginning from it).\n"
        "Clarinets and flutes can fade to a mere breath (Rimsky-Korsakov, Principles of\n"
        "Orchestration), strings and most brass in their middle register, too; double reeds and\n"
        "recorders stop speaking before (common practice, no source; src/players/limits.yaml), and so\n"
        "do the tops of flute, horn, trumpet and trombone (stavewright explain flute).\n\n"
        "To mend: let these instruments end earlier or at pp, and others go on to nothing.\n"
        "To set: limits: [{for: [oboe], fades: true}] in stavewright.yaml.\n",
    .run = run,
};

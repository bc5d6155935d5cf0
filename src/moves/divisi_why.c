/* What is told of the passages: who has what, and what is left as it is. */
#include <stdio.h>

#include "checks/say.h"
#include "moves/divisi_desks.h"
#include "moves/divisi_work.h"

/* What a part has to play: "1st C5 to F5". */
static void tell_part(const sw_divisi_work *w, const sw_divisi_passage *passage, int part, sw_buffer *text)
{
    static const char *const numbers[SW_DIVISI_MOST] = {"1st", "2nd", "3rd", "4th", "5th", "6th"};
    const sw_event *events = w->plan.score->events;
    sw_pitch low = events[sw_divisi_note(&w->plan, passage, passage->first, part)].pitch;
    sw_pitch high = low;
    for (size_t i = passage->first; i <= passage->last; i++) {
        sw_pitch pitch = events[sw_divisi_note(&w->plan, passage, i, part)].pitch;
        low = sw_pitch_compare(pitch, low) < 0 ? pitch : low;
        high = sw_pitch_compare(pitch, high) > 0 ? pitch : high;
    }
    char from[SW_PITCH_TEXT];
    char to[SW_PITCH_TEXT];
    sw_buffer_format(text, ", %s %s", numbers[passage->section.parts - 1 - part], sw_pitch_print(high, to));
    if (!sw_pitch_equal(low, high)) {
        sw_buffer_format(text, " down to %s", sw_pitch_print(low, from));
    }
    if (w->plan.chords[passage->first].players > 0) {
        int players = passage->section.sizes[part];
        sw_buffer_format(text, " (%d %s", players, players == 1 ? "player" : "players");
        const sw_instrument *own = passage->groups.instruments[passage->section.groups[part]];
        if (own != NULL) { /* of several */
            sw_buffer_format(text, ", %s", own->id);
        }
        if (w->instrument->family == SW_STRINGS) {
            sw_divisi_say_desks(&passage->section, part, text);
        }
        sw_buffer_char(text, ')');
    }
}

void sw_divisi_begin_choice(sw_divisi_work *w, const sw_divisi_passage *passage)
{
    const sw_score *score = w->plan.score;
    char place[SW_SAY];
    char end[SW_SAY];
    char label[32];
    sw_buffer text = {0};
    sw_buffer_format(&text, "%s, %s: ", sw_say_place(score, sw_divisi_onset(w, passage->first), place),
                     sw_staff_label(w->plan.reading, score, w->plan.staff, label));
    if (w->options->tremolo_half) {
        sw_buffer_string(&text, "half of them tremolo, half plain");
    } else {
        sw_buffer_format(&text, "divided in %d", passage->section.parts);
    }
    if (passage->last > passage->first) {
        sw_buffer_format(&text, " up to %s", sw_say_place(score, sw_divisi_onset(w, passage->last), end));
    }
    for (int part = w->options->tremolo_half ? 0 : passage->section.parts; part-- > 0;) {
        tell_part(w, passage, part, &text);
    }
    sw_choices_begin(&w->choices, w->plan.chords[passage->first].stroke->event, "%s", sw_buffer_text(&text));
    sw_buffer_free(&text);
}

void sw_divisi_tell_left(sw_divisi_work *w, const sw_divisi_wish *wish)
{
    int most = wish->parts > 0 ? wish->parts : SW_DIVISI_MOST;
    for (size_t i = 0; i < w->plan.count; i++) {
        const sw_divisi_chord *chord = &w->plan.chords[i];
        bool asked = chord->chosen && chord->stroke->alone && (chord->count > 1 || wish->single_too);
        char text[SW_SAY];
        if (asked && chord->count > most) {
            snprintf(text, sizeof text, "%d notes for %d parts: left alone", chord->count, most);
            sw_divisi_tell(w, i, text);
        } else if (asked && sw_divisi_lacks_players(wish, chord)) {
            bool notes = chord->count >= wish->parts && chord->count > 1;
            int wanted = notes ? chord->count : wish->parts > 2 ? wish->parts : 2;
            snprintf(text, sizeof text, "%d %s for %d player%s: left alone", wanted,
                     notes ? "notes" : "parts", chord->players, chord->players == 1 ? "" : "s");
            sw_divisi_tell(w, i, text);
        }
    }
}

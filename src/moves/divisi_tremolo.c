/* Half tremolo, half plain. */
#include "moves/divisi_work.h"

static uint32_t tremolo_at(const sw_divisi_work *w, size_t chord)
{
    const sw_reading *reading = w->plan.reading;
    uint32_t written = w->plan.score->events[w->plan.chords[chord].stroke->event].chord;
    for (uint32_t m = reading->music[written].first; m != SW_NO_INDEX; m = reading->music[m].next) {
        if (reading->music[m].kind == SW_MUSIC_MARK && sw_music_mark_class(reading, m) == SW_MARK_TREMOLO) {
            return m;
        }
    }
    return SW_NO_INDEX;
}

static bool is_plucked(const sw_divisi_work *w, size_t chord)
{
    uint8_t pizzicato = sw_techniques_find(w->techniques, "pizzicato");
    uint8_t group = sw_techniques_get(w->techniques, pizzicato)->group;
    return sw_playing_now(w->playing, w->plan.chords[chord].stroke->event, group) == pizzicato;
}

void sw_divisi_write_halves(sw_divisi_work *w, const sw_divisi_passage *passage)
{
    size_t count = passage->last - passage->first + 1;
    w->tremolos = sw_arena_alloc(w->arena, count * sizeof *w->tremolos);
    w->tremolo_count = 0;
    for (size_t i = passage->first; i <= passage->last; i++) {
        uint32_t mark = tremolo_at(w, i);
        if (mark != SW_NO_INDEX) {
            w->tremolos[w->tremolo_count++] = mark;
        }
    }
    sw_divisi_write_voices(w, passage);
    for (size_t i = passage->first; i <= passage->last; i++) {
        if (tremolo_at(w, i) == SW_NO_INDEX) {
            sw_divisi_add_text(w, i, ":32");
        }
    }
    sw_divisi_add_text(w, passage->first, "^\"half trem.\"");
    size_t next = passage->last + 1;
    if (next < w->plan.count && w->plan.chords[next].stroke->alone) {
        bool trembles = tremolo_at(w, next) != SW_NO_INDEX;
        sw_divisi_add_text(w, next,
                           trembles              ? "^\"tutti trem.\""
                           : is_plucked(w, next) ? "^\"tutti\"" /* "ord." would be the bow */
                                                 : "^\"tutti ord.\"");
    }
}

/* Whether the hand trills a note, which is no tremolo of the bow. */
static bool is_trilled(const sw_divisi_work *w, size_t chord)
{
    const sw_reading *reading = w->plan.reading;
    uint32_t written = w->plan.score->events[w->plan.chords[chord].stroke->event].chord;
    for (uint32_t m = reading->music[written].first; m != SW_NO_INDEX; m = reading->music[m].next) {
        sw_slice text = sw_music_slice(reading, m);
        if (reading->music[m].kind == SW_MUSIC_MARK &&
            (sw_slice_ends(text, "\\trill") || sw_slice_ends(text, "\\startTrillSpan"))) {
            return true;
        }
    }
    return false;
}

void sw_divisi_leave_short_notes(sw_divisi_work *w)
{
    for (size_t i = 0; i < w->plan.count; i++) {
        const sw_stroke *stroke = w->plan.chords[i].stroke;
        sw_rational length = sw_rational_sub(stroke->end, stroke->onset);
        bool is_short = sw_rational_compare(length, sw_rational_make(1, 16)) < 0;
        bool plucked = is_plucked(w, i);
        if (w->plan.chords[i].chosen && (is_short || plucked || is_trilled(w, i))) {
            w->plan.chords[i].left = true;
            sw_divisi_tell(w, i,
                           is_short  ? "too short for a tremolo: left alone"
                           : plucked ? "no tremolo is plucked: left alone"
                                     : "a trill is no tremolo: left alone");
        }
    }
}

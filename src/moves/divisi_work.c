/* What is said and added at a chord. */
#include "moves/divisi_work.h"

sw_rational sw_divisi_onset(const sw_divisi_work *w, size_t chord)
{
    return w->plan.chords[chord].stroke->onset;
}

void sw_divisi_tell(const sw_divisi_work *w, size_t chord, const char *text)
{
    sw_move_tell(w->move, "divisi", w->plan.reading,
                 &w->plan.score->events[w->plan.chords[chord].stroke->event], text);
}

void sw_divisi_add_text(sw_divisi_work *w, size_t chord, const char *text)
{
    sw_choices_add(
        &w->choices,
        (sw_change){.kind = SW_CHANGE_ADD_MARK, .event = w->plan.chords[chord].stroke->event, .text = text});
}

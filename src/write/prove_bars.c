/* The part of an edit's proof that counts bars: where bars have come in (or gone), everything behind them is
 * heard so much later (or earlier), and nothing is heard in those that have come in. */
#include <stdlib.h>

#include "write/edit_rows.h"

static sw_rational inserted(const sw_draft_bars *bars)
{
    return sw_rational_mul(bars->bar, sw_rational_make(bars->count, 1));
}

/* How much later everything behind is heard. */
static sw_rational later(const sw_draft_bars *bars)
{
    return sw_rational_sub(inserted(bars), sw_rational_sub(bars->until, bars->moment));
}

bool sw_prove_goes(const sw_edit_proof *p, sw_rational onset)
{
    return p->bars != NULL && sw_rational_compare(onset, p->bars->moment) >= 0 &&
           sw_rational_compare(onset, p->bars->until) < 0;
}

sw_rational sw_prove_moved(const sw_edit_proof *p, sw_rational onset)
{
    if (sw_prove_goes(p, onset)) {
        return p->bars->moment;
    }
    bool behind = p->bars != NULL && sw_rational_compare(onset, p->bars->until) >= 0;
    return behind ? sw_rational_add(onset, later(p->bars)) : onset;
}

/* What is left of a rest without [from, to): up to two rows, the marks stay where they stand. What lies
 * behind moves by `shift`. */
static void cut_rest(const sw_row *r, sw_rational from, sw_rational to, sw_rational shift, sw_rows *all)
{
    sw_rational end = sw_rational_add(r->onset, r->length);
    bool begins_before = sw_rational_compare(r->onset, from) < 0;
    if (begins_before) {
        sw_row part = *r;
        part.length = sw_rational_sub(sw_rational_min(end, from), r->onset);
        sw_rows_add(all, &part);
    }
    if (sw_rational_compare(end, to) > 0) {
        sw_row part = *r;
        sw_rational begin = sw_rational_max(r->onset, to);
        part.onset = sw_rational_add(begin, shift);
        part.length = sw_rational_sub(end, begin);
        part.mark_count = sw_rational_compare(r->onset, to) >= 0 ? r->mark_count : 0;
        sw_rows_add(all, &part);
    }
}

void sw_rows_open(const sw_edit_proof *p, sw_rows *all, bool before)
{
    if (p->bars == NULL) {
        return;
    }
    sw_rational from = p->bars->moment;
    sw_rational to = before ? p->bars->until : sw_rational_add(from, inserted(p->bars));
    sw_rational shift = before ? later(p->bars) : sw_rational_zero();
    sw_rows opened = {0};
    for (size_t i = 0; i < all->count; i++) {
        sw_row r = all->list[i];
        if (r.kind != 'n' && sw_rational_is_zero(r.grace) && !sw_rational_is_zero(r.length)) {
            cut_rest(&r, from, to, shift, &opened);
        } else if (!(before && sw_prove_goes(p, r.onset))) {
            r.onset = sw_rational_compare(r.onset, to) >= 0 ? sw_rational_add(r.onset, shift) : r.onset;
            sw_rows_add(&opened, &r);
        }
    }
    free(all->list);
    *all = opened;
}

bool sw_prove_bars(const sw_edit_proof *p, const sw_score *before, const sw_score *after)
{
    size_t first = p->bars == NULL ? before->bar_count : p->bars->first;
    size_t more = p->bars == NULL ? 0 : (size_t)p->bars->count;
    size_t less = p->bars == NULL ? 0 : p->bars->gone;
    bool same = before->bar_count + more == after->bar_count + less;
    for (size_t i = 0; i < before->bar_count && same; i++) {
        if (i >= first && i < first + less) {
            continue;
        }
        const sw_bar *a = &before->bars[i];
        const sw_bar *b = &after->bars[i < first ? i : i + more - less];
        /* where \set counts anew, bars keep their numbers */
        int32_t shift = i < first ? 0 : (int32_t)more - (int32_t)less;
        same = (a->number == b->number || a->number + shift == b->number) && a->beats == b->beats &&
               a->beat_value == b->beat_value && sw_rational_equal(sw_prove_moved(p, a->start), b->start) &&
               sw_rational_equal(a->length, b->length);
    }
    for (size_t i = first; i < first + more && same; i++) {
        const sw_bar *b = &after->bars[i];
        same = sw_rational_equal(b->length, p->bars->bar) && sw_rational_equal(b->metre, p->bars->bar) &&
               sw_rational_is_zero(b->first) && b->number == after->bars[i - 1].number + 1;
    }
    return same || sw_prove_refuse(p, "the bars would not be the same");
}

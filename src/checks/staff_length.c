/* Staves that end earlier or later than the others of their score.
 *
 * Without bar checks a bar that does not add up leaves one trace that is certain: its staff has another
 * length than the others. Staves that begin later than the score (an ossia, a second system of names) are no
 * measure, nor are those that hold nothing but skips. A staff with a wrong bar check is left to the rule
 * bar-length, which can name the bar. */
#include <stdlib.h>
#include <string.h>

#include "checks/rules.h"
#include "checks/say.h"

typedef struct extent {
    bool counts; /* has music from the beginning of the score */
    sw_rational end;
    const sw_event *last; /* the note or rest that ends it */
} extent;

/* `wrong[s]`: staff s has a bar check that does not stand on a bar line. */
static void find_wrong_bar_checks(const sw_check *check, const sw_score *score, bool *wrong)
{
    for (size_t i = 0; i < score->setting_count; i++) {
        const sw_setting *setting = &score->settings[i];
        if (setting->staff != SW_NO_INDEX && !sw_rational_is_zero(setting->position) &&
            check->reading->music[setting->music].kind == SW_MUSIC_BAR_CHECK) {
            wrong[setting->staff] = true;
        }
    }
}

/* `extents` has one element a staff, zeroed. */
static void measure(const sw_check *check, const sw_score *score, extent *extents)
{
    bool *left_out = sw_alloc_zero(score->staff_count + 1, sizeof *left_out);
    find_wrong_bar_checks(check, score, left_out);
    bool *begins = sw_alloc_zero(score->staff_count + 1, sizeof *begins);
    for (size_t i = 0; i < score->event_count; i++) {
        const sw_event *e = &score->events[i];
        extent *x = &extents[score->voices[e->voice].staff];
        uint32_t staff = score->voices[e->voice].staff;
        if ((e->flags & SW_EVENT_HIDDEN) != 0) {
            continue;
        }
        sw_rational end = sw_event_end(e);
        begins[staff] = begins[staff] || sw_rational_is_zero(e->onset);
        left_out[staff] = left_out[staff] || (e->flags & SW_EVENT_UNCERTAIN) != 0;
        bool longer = !sw_rational_valid(x->end) || sw_rational_compare(end, x->end) >= 0;
        x->end = longer && (e->flags & SW_EVENT_GRACE) == 0 ? end : x->end;
        if (e->kind != SW_EVENT_SKIP) {
            x->counts = true;
            if (x->last == NULL || sw_rational_compare(end, sw_event_end(x->last)) >= 0) {
                x->last = e;
            }
        }
    }
    for (size_t s = 0; s < score->staff_count; s++) {
        extents[s].counts =
            extents[s].counts && begins[s] && !left_out[s] && sw_rational_valid(extents[s].end);
    }
    free(begins);
    free(left_out);
}

/* The length that most staves have; of equally frequent ones the longest. *agree: how many have it. */
static sw_rational usual_length(const extent *extents, size_t count, size_t *agree)
{
    sw_rational usual = sw_rational_zero();
    *agree = 0;
    for (size_t i = 0; i < count; i++) {
        size_t same = 0;
        for (size_t j = 0; j < count && extents[i].counts; j++) {
            same += extents[j].counts && sw_rational_equal(extents[i].end, extents[j].end);
        }
        if (same > *agree || (same > 0 && same == *agree && sw_rational_compare(extents[i].end, usual) > 0)) {
            usual = extents[i].end;
            *agree = same;
        }
    }
    return usual;
}

/* "2 bars and 1/4" between two moments, in bars of the metre at the earlier one. */
static void say_amount(const sw_score *score, sw_rational from, sw_rational to, sw_buffer *text)
{
    uint32_t bar = sw_score_bar_at(score, from);
    sw_rational metre = bar == SW_NO_INDEX ? sw_rational_make(1, 1) : score->bars[bar].metre;
    sw_rational amount = sw_rational_sub(to, from);
    int64_t bars = sw_rational_floor(sw_rational_div(amount, metre));
    sw_rational rest = sw_rational_sub(amount, sw_rational_mul(metre, sw_rational_make(bars, 1)));
    char words[SW_SAY];
    char fraction[SW_RATIONAL_TEXT];
    if (bars > 0) {
        sw_buffer_string(text, sw_say_count((size_t)bars, "bar", words));
    }
    if (!sw_rational_is_zero(rest)) {
        sw_buffer_format(text, "%s%s of a whole note", bars > 0 ? " and " : "",
                         sw_rational_print(rest, fraction));
    }
}

static void report(sw_check *check, const sw_score *score, uint32_t staff, const extent *x, sw_rational usual,
                   size_t agree)
{
    const sw_music *m = sw_event_written(check->reading, x->last);
    bool shorter = sw_rational_compare(x->end, usual) < 0;
    sw_buffer amount = {0};
    say_amount(score, shorter ? x->end : usual, shorter ? usual : x->end, &amount);
    char label[32];
    char place[SW_SAY];
    char others[SW_SAY];
    sw_findings_add(check->findings, SW_WARNING, "staff-length", m->file, m->start, m->end,
                    "%s is %s %s than %s; this is its last note or rest (%s): %s",
                    sw_staff_label(check->reading, score, staff, label), sw_buffer_text(&amount),
                    shorter ? "shorter" : "longer",
                    agree == 1 ? "the other staff" : sw_say_count(agree, "other stave", others),
                    sw_say_place(score, x->last->onset, place),
                    shorter ? "a bar is too short or missing, or rests are missing at the end"
                            : "a bar is too long or stands there twice");
    sw_buffer_free(&amount);
}

static void run(sw_check *check)
{
    for (size_t s = 0; s < check->reading->score_count; s++) {
        const sw_score *score = &check->reading->scores[s];
        if (score->in_markup || score->staff_count < 2) {
            continue;
        }
        extent *extents = sw_alloc_zero(score->staff_count + 1, sizeof *extents);
        measure(check, score, extents);
        size_t agree;
        sw_rational usual = usual_length(extents, score->staff_count, &agree);
        for (uint32_t staff = 0; staff < score->staff_count; staff++) {
            if (extents[staff].counts && !sw_rational_equal(extents[staff].end, usual)) {
                report(check, score, staff, &extents[staff], usual, agree);
            }
        }
        free(extents);
    }
}

const sw_rule sw_rule_staff_length = {
    .name = "staff-length",
    .summary = "a staff that ends earlier or later than the others",
    .severity = SW_WARNING,
    .explain =
        "All staves of a score end together. A staff that does not has a bar that does not add up, or a bar "
        "too few or\ntoo many; in the parts, its player is out of step with everybody else.\n\n"
        "The figure: the length that most staves of the score have. Staves that begin later than the score "
        "or "
        "hold only\nskips are left out, and so are staves with music whose length is not known.\n\n"
        "To mend: put bar checks into the staff; the rule bar-length then names the bar. If the player is "
        "simply done,\nfill up with full-bar rests.\n",
    .run = run,
};

/* What a register can't give: a dynamic beyond it, or a line that does not come through.
 *
 * A note that can be read in two ways (written or sounding) is reported only if both have the trouble, and
 * then in the milder way. While a hairpin is under way, and behind one that leads to no mark, nothing is
 * said. */
#include <stdlib.h>
#include <string.h>

#include "checks/balance.h"
#include "checks/entry.h"
#include "checks/rules.h"
#include "checks/say.h"

/* Others must be at least so many times as heavy, for a line of so many notes. */
static const double OVERWHELMING = 4;
enum { LINE = 4, APART = 4 }; /* bars without trouble that part two spans */

typedef enum trouble { NO_TROUBLE, TOO_SOFT, TOO_LOUD, COVERED } trouble;

/* One note that a register does not give. */
typedef struct finding {
    trouble trouble;
    const sw_register *reg;
    const sw_event *event;
    sw_dynamic dynamic;
    int steps; /* between the dynamic and what the register gives */
    sw_beside beside;
} finding;

/* Findings of one kind that follow one another. */
typedef struct span {
    finding first;
    uint32_t first_bar;
    uint32_t last_bar;
    size_t notes;
    size_t doubled; /* how many of them another staff has, too */
} span;

typedef struct scene {
    sw_check *check;
    const sw_score *score;
    const sw_dynamics *dynamics;
    const sw_balance *balance;
    const sw_entries *entries;
    const sw_entry *entry; /* that held for the note before */
    uint32_t staff;
    span *told; /* the spans of the staff so far */
    size_t told_count;
    size_t told_capacity;
} scene;

/* ---- one note ----------------------------------------------------------------------------------------- */

/* What is wrong with a dynamic in a register, leaving aside what sounds beside it; *steps: by how much. */
static trouble trouble_of(const sw_register *reg, sw_dynamic dynamic, int *steps)
{
    *steps = 0;
    if (reg != NULL && reg->softest != SW_NO_DYNAMIC && dynamic < reg->softest) {
        *steps = (int)reg->softest - (int)dynamic;
        return TOO_SOFT;
    }
    if (reg != NULL && reg->loudest != SW_NO_DYNAMIC && dynamic > reg->loudest) {
        *steps = (int)dynamic - (int)reg->loudest;
        return TOO_LOUD;
    }
    return reg != NULL && reg->covered ? COVERED : NO_TROUBLE;
}

/* Of all readings of a note the mildest one, if all have the same trouble. `written` gets its pitch. */
static finding mildest(const sw_entry *entry, const sw_event *event, sw_dynamic dynamic, sw_pitch *written)
{
    sw_pitch readings[SW_ENTRY_READINGS];
    size_t count = sw_entry_written(entry, event->pitch, readings);
    finding best = {.event = event, .dynamic = dynamic};
    for (size_t i = 0; i < count; i++) {
        const sw_register *reg = sw_instrument_register(entry->instrument, readings[i]);
        int steps;
        trouble t = trouble_of(reg, dynamic, &steps);
        if (t == NO_TROUBLE || (i > 0 && t != best.trouble)) {
            return (finding){.event = event, .dynamic = dynamic};
        }
        if (i == 0 || steps < best.steps) {
            best.trouble = t;
            best.steps = steps;
            best.reg = reg;
            *written = readings[i];
        }
    }
    return best;
}

static finding judge(scene *s, const sw_event *event)
{
    s->entry = sw_entries_next(s->entries, s->entry, event->onset);
    const sw_entry *entry = sw_entry_of_note(s->entries, s->entry, (uint32_t)(event - s->score->events));
    sw_dynamic_now now = sw_dynamics_at(s->dynamics, event->voice, event->onset);
    if (now.level == SW_NO_DYNAMIC || now.level == SW_NIENTE || now.guessed) {
        return (finding){.event = event};
    }
    sw_pitch written;
    finding f = mildest(entry, event, now.level, &written);
    if (f.trouble == COVERED || f.trouble == TOO_LOUD) {
        f.beside = sw_balance_beside(s->balance, s->staff, event->onset,
                                     sw_instrument_sounding(entry->instrument, written), now.level,
                                     entry->instrument);
    }
    if (f.trouble == COVERED) {
        double own = sw_instrument_weight(entry->instrument, now.level);
        f.trouble = own > 0 && f.beside.weight >= OVERWHELMING * own ? COVERED : NO_TROUBLE;
    }
    return f;
}

/* ---- what to say -------------------------------------------------------------------------------------- */

static void say_span(const scene *s, const span *p, sw_buffer *text)
{
    char words[SW_SAY];
    char label[32];
    sw_buffer_format(text, "%s, %s: ", sw_say_place(s->score, p->first.event->onset, words),
                     sw_staff_label(s->check->reading, s->score, s->staff, label));
    if (p->notes > 1) {
        sw_buffer_string(text, sw_say_count(p->notes, "note", words));
        if (p->last_bar != p->first_bar) {
            sw_buffer_format(text, " up to bar %d", s->score->bars[p->last_bar].number);
        }
        sw_buffer_string(text, " ");
    }
}

static void say_trouble(const scene *s, const span *p, sw_buffer *text)
{
    const finding *f = &p->first;
    const char *dynamic = sw_dynamic_name(f->dynamic);
    const char *range = f->reg->name;
    char label[32];
    switch (f->trouble) {
    case TOO_SOFT:
        sw_buffer_format(text, "at %s in the %s register, where %s is as soft as it goes", dynamic, range,
                         sw_dynamic_name(f->reg->softest));
        sw_buffer_string(text, "; mark it so, or give it to a softer instrument");
        break;
    case TOO_LOUD:
        sw_buffer_format(text, "at %s in the %s register, where %s is as loud as it goes", dynamic, range,
                         sw_dynamic_name(f->reg->loudest));
        sw_buffer_string(text, "; double it, or move it up an octave");
        break;
    default:
        sw_buffer_format(text,
                         "at %s in the %s register won't come through beside %s and others (%.0f times its "
                         "weight); thin them out, or move it up",
                         dynamic, range,
                         sw_staff_label(s->check->reading, s->score, f->beside.heaviest, label),
                         f->beside.weight);
        break;
    }
}

/* One step beyond the register is a question of taste. */
static sw_severity severity_of(const finding *f)
{
    return f->steps > 1 ? SW_WARNING : SW_NOTE;
}

/* A line that others have, too, is there for its colour; and where a little more is asked than a register
 * gives, other instruments in unison give the rest. */
static bool is_worth_it(const span *p)
{
    bool doubled = 2 * p->doubled >= p->notes;
    switch (p->first.trouble) {
    case COVERED:
        return p->notes >= LINE && !doubled;
    case TOO_LOUD:
        return p->first.steps > 1 || !doubled;
    default:
        return true;
    }
}

/* Two voices with one trouble are told once. */
static bool is_told(const scene *s, const span *p)
{
    for (size_t i = 0; i < s->told_count; i++) {
        const span *t = &s->told[i];
        if (t->first.trouble == p->first.trouble && t->first_bar <= p->last_bar &&
            p->first_bar <= t->last_bar) {
            return true;
        }
    }
    return false;
}

static void report(scene *s, const span *p)
{
    if (p->first.trouble == NO_TROUBLE || !is_worth_it(p) || is_told(s, p)) {
        return;
    }
    s->told = sw_grow(s->told, s->told_count, &s->told_capacity, sizeof *s->told);
    s->told[s->told_count++] = *p;
    sw_buffer text = {0};
    say_span(s, p, &text);
    say_trouble(s, p, &text);
    const sw_music *m = sw_event_written(s->check->reading, p->first.event);
    sw_findings_add(s->check->findings, severity_of(&p->first), "register", m->file, m->start, m->end, "%s",
                    sw_buffer_text(&text));
    sw_buffer_free(&text);
}

/* ---- the rule ----------------------------------------------------------------------------------------- */

/* Whether a finding goes on where a span is: the same trouble at the same dynamic, no bar without it between.
 */
static bool goes_on(const span *p, const finding *f, uint32_t bar)
{
    return p->first.trouble == f->trouble && p->first.reg == f->reg && p->first.dynamic == f->dynamic &&
           bar <= p->last_bar + APART;
}

/* Adds a note to the span that is open, or ends it and begins another one. */
static void go_on(scene *s, span *p, const finding *f)
{
    uint32_t bar = sw_score_bar_at(s->score, f->event->onset);
    if (p->first.trouble == NO_TROUBLE || !goes_on(p, f, bar)) {
        report(s, p);
        *p = (span){.first = *f, .first_bar = bar};
    }
    p->last_bar = bar;
    p->notes++;
    p->doubled += f->trouble == TOO_LOUD ? f->beside.in_unison : f->beside.doubled;
}

/* Voice by voice: spans end with their voice. */
static void check_notes(scene *s)
{
    span beyond = {0}; /* beyond what the register gives */
    span covered = {0};
    sw_staff_events events = sw_score_staff_events(s->score, s->staff);
    for (uint32_t i = events.first; i < events.end; i++) {
        const sw_event *event = &s->score->events[i];
        if (i > events.first && event->voice != event[-1].voice) {
            report(s, &beyond);
            report(s, &covered);
            beyond = covered = (span){0};
        }
        if ((event->flags & SW_EVENT_GRACE) != 0 || !sw_event_is_played(s->check->reading, s->score, event)) {
            continue;
        }
        finding f = judge(s, event);
        if (f.trouble == COVERED) {
            go_on(s, &covered, &f);
        } else { /* a line that comes through in between is heard */
            report(s, &covered);
            covered = (span){0};
        }
        if (f.trouble == TOO_SOFT || f.trouble == TOO_LOUD) {
            go_on(s, &beyond, &f);
        }
    }
    report(s, &beyond);
    report(s, &covered);
}

static bool has_registers(const sw_instrument *instrument)
{
    return instrument->can.register_count > 0;
}

static void check_score(sw_check *check, size_t number)
{
    const sw_score *score = &check->reading->scores[number];
    sw_balance *balance = sw_balance_of(check, number);
    for (uint32_t staff = 0; staff < score->staff_count; staff++) {
        const sw_entries *entries = &sw_check_entries(check, score)[staff];
        scene s = {.check = check,
                   .score = score,
                   .dynamics = sw_check_dynamics(check, number),
                   .balance = balance,
                   .entries = entries,
                   .staff = staff};
        if (sw_entries_any(entries, has_registers) && score->bar_count > 0) {
            check_notes(&s);
        }
        free(s.told);
    }
    sw_balance_free(balance);
}

static void run(sw_check *check)
{
    for (size_t i = 0; i < check->reading->score_count; i++) {
        if (!check->reading->scores[i].in_markup) {
            check_score(check, i);
        }
    }
}

const sw_rule sw_rule_register = {
    .name = "register",
    .summary = "a dynamic that the register can't give, or a line that won't come through",
    .severity = SW_WARNING,
    .explain =
        "A dynamic is no volume: each instrument has registers that can't be soft, or can't be loud.\n"
        "The bottom of the oboe and of the bassoon is heavy, the low flute is covered by anything,\n"
        "the top of the trumpet is never a pp. The player will do something else than what stands\n"
        "there, and you did not choose what. This rule follows the dynamics of each line (marks,\n"
        "hairpins, cresc. and dim.) and compares them with the registers of the instrument. In\n"
        "registers that don't carry it also adds up what sounds within an octave on other staves, no\n"
        "softer: from four times the weight of the line on, where nobody doubles it, it says so.\n\n"
        "The figures: registers come from handbooks as far as remembered, many are common practice\n"
        "without a source; stavewright explain flute shows those of the flute, each with its source.\n"
        "Weights: at forte a trumpet, trombone or tuba is two horns, a horn or a section of strings\n"
        "two woodwinds; at piano all are about equal (Rimsky-Korsakov, Principles of Orchestration\n"
        "I). One level beyond a register is a note, more a warning; one level too loud is nothing\n"
        "where other instruments double the notes in unison.\n\n"
        "To mend: mark the dynamic that the register has, move the line by an octave, double it, thin\n"
        "out what is beside it, or choose another instrument.\n",
    .run = run,
};

/* Marks where winds and singers breathe.
 *
 * How long a breath lasts is what the check `breath` says (players/limits.yaml, loudness, register, tempo);
 * where it is taken is the optimum of moves/breath_line.h over each voice. Lines are solved one after
 * another: who holds the same note as a player that breathes there goes on, where that can be. */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "checks/line.h"
#include "checks/say.h"
#include "moves/breath_line.h"
#include "moves/choices.h"
#include "moves/figures.h"
#include "moves/linked.h"
#include "moves/octave_strokes.h"
#include "moves/places.h"

/* A breath that somebody takes. */
typedef struct taken_breath {
    uint32_t staff;
    uint32_t before; /* the note before it: index into the staff's line */
    double seconds;
} taken_breath;

typedef struct plan {
    sw_move *move;
    const sw_breaths_options *options;
    sw_check *check;
    const sw_limits *limits; /* of the check */
    sw_chosen chosen;
    bool *is_chosen;       /* by event */
    uint32_t *stroke_of;   /* by event: the stroke that begins with it, in `strokes` */
    sw_lines strokes;      /* what lies between the notes */
    const sw_line **lines; /* by staff; NULL: nobody breathes there. Of the check */
    taken_breath *breaths; /* existing marks, and what has been planned so far */
    size_t breath_count;
    size_t breath_capacity;
    bool tempo_missing; /* it has been told */
    sw_choices choices;
} plan;

/* The notes of one voice, and what the solver sees of them. */
typedef struct voice_line {
    uint32_t staff;
    size_t first; /* of the staff's line */
    const sw_line_note *notes;
    sw_breath_note *places;
    unsigned *flags; /* of the place before each note */
    double *lasts;   /* seconds that a breath lasts at each note */
    bool *taken;
    size_t count;
} voice_line;

static const sw_event *event_of(const plan *p, const sw_line_note *note)
{
    return &p->chosen.score->events[note->event];
}

/* ---- what a place is ------------------------------------------------------------------------------------
 */

static bool is_slur_end(const sw_reading *reading, uint32_t mark)
{
    return sw_music_mark_class(reading, mark) == SW_MARK_SLUR_END;
}

static bool is_phrase_end(const sw_reading *reading, uint32_t mark)
{
    return sw_music_mark_class(reading, mark) == SW_MARK_PHRASE_END;
}

/* Where a breath before a note would be: before the grace notes that lead to it. SW_NO_INDEX where the note
 * is not written as it is heard. */
static uint32_t stroke_behind(const plan *p, const sw_event *event, uint32_t number)
{
    const sw_score *score = p->chosen.score;
    uint32_t stroke = p->stroke_of[number];
    while (stroke != SW_NO_INDEX && stroke > 0) {
        const sw_event *before = &score->events[p->strokes.strokes[stroke - 1].event];
        if ((before->flags & SW_EVENT_GRACE) == 0 || before->voice != event->voice) {
            break;
        }
        if (!sw_rational_equal(before->onset, event->onset)) {
            return SW_NO_INDEX; /* at the end of the note before */
        }
        stroke--;
    }
    return stroke;
}

static unsigned flags_of_joint(unsigned joint)
{
    static const struct {
        unsigned joint;
        unsigned flag;
    } table[] = {{SW_JOINT_BOUND, SW_BREATH_BOUND},
                 {SW_JOINT_GLISSANDO, SW_BREATH_BOUND},
                 {SW_JOINT_SLUR, SW_BREATH_SLUR},
                 {SW_JOINT_PHRASE, SW_BREATH_PHRASE},
                 {SW_JOINT_BEAT, SW_BREATH_BEAT},
                 {SW_JOINT_LONG, SW_BREATH_LONG},
                 {SW_JOINT_SHORT_REST, SW_BREATH_SHORT_REST},
                 {SW_JOINT_REST, SW_BREATH_SHORT_REST}};
    unsigned flags = 0;
    for (size_t i = 0; i < sizeof table / sizeof table[0]; i++) {
        flags |= (joint & table[i].joint) != 0 ? table[i].flag : 0;
    }
    return flags;
}

/* The key's leading tone with its tonic behind it. */
static bool is_leading(const plan *p, uint32_t staff, const sw_line_note *note, const sw_line_note *next)
{
    const sw_score *score = p->chosen.score;
    const sw_event *event = event_of(p, note);
    int height = sw_pitch_semitones(event->pitch);
    if (sw_pitch_semitones(event_of(p, next)->pitch) != height + 1) {
        return false;
    }
    int tonic = 0;
    for (size_t i = 0; i < score->setting_count; i++) {
        const sw_setting *setting = &score->settings[i];
        if (setting->staff == staff && sw_rational_compare(setting->onset, event->onset) <= 0 &&
            p->chosen.reading->music[setting->music].kind == SW_MUSIC_KEY) {
            tonic = sw_pitch_semitones(setting->pitch);
        }
    }
    return (height + 1 - tonic) % 12 == 0;
}

static bool ends_thought(const char *text)
{
    size_t length = strlen(text);
    return length > 0 && strchr(",.;:!?", text[length - 1]) != NULL;
}

/* What the words say to a breath between two notes. */
static unsigned flags_of_words(const plan *p, const sw_event *note, const sw_event *next)
{
    const sw_score *score = p->chosen.score;
    unsigned flags = 0;
    for (size_t i = 0; i < score->syllable_count; i++) {
        const sw_syllable *s = &score->syllables[i];
        sw_rational end = sw_rational_add(s->onset, s->duration);
        if (s->voice != note->voice || sw_rational_compare(s->onset, note->onset) > 0 ||
            sw_rational_compare(end, sw_event_end(note)) < 0) {
            continue;
        }
        bool goes_on = sw_rational_compare(end, next->onset) > 0;
        bool word = goes_on || (s->flags & SW_SYLLABLE_HYPHEN) != 0;
        const char *text = sw_reading_name(p->chosen.reading, p->chosen.reading->music[s->music].name);
        flags |= word ? SW_BREATH_WORD : ends_thought(text) ? SW_BREATH_PHRASE_END : 0;
    }
    return flags;
}

static unsigned flags_of_time(const plan *p, const sw_line_note *note, sw_rational onset)
{
    const sw_score *score = p->chosen.score;
    uint32_t bar = sw_score_bar_at(score, onset);
    bool on_bar = bar != SW_NO_INDEX && sw_rational_equal(score->bars[bar].start, onset);
    unsigned flags = on_bar ? SW_BREATH_BAR : sw_score_beat(score, onset).den != 1 ? SW_BREATH_OFF_BEAT : 0;
    double needed = 2 * sw_limits_breath(p->limits)->catch_seconds;
    return flags | (note->end - note->begin < needed ? SW_BREATH_SHORT : 0);
}

/* Whether somebody who plays the same note takes a breath within a beat or so. */
static bool is_together(const plan *p, const sw_line_note *note)
{
    static const double NEAR = 0.9; /* seconds */
    for (size_t i = 0; i < p->breath_count; i++) {
        const taken_breath *b = &p->breaths[i];
        double away = b->seconds > note->end ? b->seconds - note->end : note->end - b->seconds;
        const sw_line *line = p->lines[b->staff];
        uint32_t voice = line->items[b->before].voice;
        if (away > NEAR || voice == note->voice) {
            continue;
        }
        for (size_t k = b->before + 1; k-- > 0 && line->items[k].voice == voice;) {
            const sw_line_note *other = &line->items[k];
            int interval =
                sw_pitch_semitones(event_of(p, other)->pitch) - sw_pitch_semitones(event_of(p, note)->pitch);
            if (other->end + NEAR < note->begin) {
                break;
            }
            if (sw_rational_equal(event_of(p, other)->onset, event_of(p, note)->onset) &&
                interval % 12 == 0) {
                return true;
            }
        }
    }
    return false;
}

/* ---- what is written ------------------------------------------------------------------------------------
 */

static bool with_rest(const plan *p)
{
    return !sw_rational_is_zero(p->options->rest);
}

/* Whether the rest that the user wants is long enough behind a note to breathe in it. */
static bool rest_suffices(const plan *p, const sw_event *event)
{
    sw_rational end = sw_event_end(event);
    double seconds = sw_score_seconds(p->chosen.score, end) -
                     sw_score_seconds(p->chosen.score, sw_rational_sub(end, p->options->rest));
    return seconds >= sw_limits_breath(p->limits)->catch_seconds;
}

/* Whether the breath between two notes can be written the way it is wanted. */
static bool is_writable(const plan *p, const sw_line_note *note, unsigned flags)
{
    const sw_event *event = event_of(p, note);
    if (!p->is_chosen[note->event] || (flags & SW_BREATH_BOUND) != 0) {
        return false;
    }
    if (!with_rest(p)) {
        return true;
    }
    sw_rational half = sw_rational_div(event->duration, sw_rational_make(2, 1));
    return sw_rational_compare(p->options->rest, half) <= 0 && (flags & SW_BREATH_SLUR) == 0 &&
           rest_suffices(p, event);
}

/* ---- a voice --------------------------------------------------------------------------------------------
 */

static bool is_free(const plan *p, const sw_line_note *before, const sw_line_note *note)
{
    return note->first || note->breath_before ||
           note->begin - before->end >= sw_limits_breath(p->limits)->catch_seconds;
}

static void look_at_place(const plan *p, voice_line *v, size_t i)
{
    const sw_line_note *note = &v->notes[i];
    const sw_line_note *before = i == 0 ? NULL : &v->notes[i - 1];
    sw_breath_note *place = &v->places[i];
    place->free = i == 0 || is_free(p, before, note);
    place->cost = -1;
    uint32_t stroke = stroke_behind(p, event_of(p, note), note->event);
    if (i == 0 || place->free || stroke == SW_NO_INDEX) {
        return;
    }
    const sw_reading *reading = p->chosen.reading;
    const sw_event *event = event_of(p, note);
    const sw_event *last = event_of(p, before);
    unsigned flags = flags_of_joint(p->strokes.notes[stroke].joint);
    flags |= sw_event_has_mark(reading, last, is_slur_end) ? SW_BREATH_SLUR_END : 0;
    flags |= sw_event_has_mark(reading, last, is_phrase_end) ? SW_BREATH_PHRASE_END : 0;
    flags |= flags_of_words(p, last, event) | flags_of_time(p, before, event->onset);
    int leap = sw_pitch_semitones(event->pitch) - sw_pitch_semitones(last->pitch);
    flags |= abs(leap) >= 5 ? SW_BREATH_LEAP : 0;
    bool leading = is_leading(p, v->staff, before, note) ||
                   (i + 1 < v->count && is_leading(p, v->staff, note, &v->notes[i + 1]));
    flags |= leading ? SW_BREATH_LEADING : 0;
    flags |= is_together(p, before) ? SW_BREATH_TOGETHER : 0;
    v->flags[i] = flags;
    if (is_writable(p, before, flags)) {
        place->cost = sw_breath_place_cost(flags);
    }
}

/* Nobody knows how long a breath lasts where no tempo is told: none is marked. */
static void skip_untimed(plan *p, const sw_line_note *note, sw_breath_note *place)
{
    place->cost = -1;
    if (!p->tempo_missing && p->is_chosen[note->event]) {
        p->tempo_missing = true;
        sw_move_tell(p->move, "breaths", p->chosen.reading, event_of(p, note),
                     "no tempo is told here, so how long a breath lasts is not known, and none is marked; "
                     "write it: \\tempo 4 = 72");
    }
}

/* Air is rounded along the stretch, so that many short notes are not too much together. */
static void look_at_voice(plan *p, voice_line *v)
{
    double used = 0;
    for (size_t i = 0; i < v->count; i++) {
        const sw_line_note *note = &v->notes[i];
        bool told = sw_tempo_is_told(p->chosen.reading, p->chosen.score, event_of(p, note)->onset);
        look_at_place(p, v, i);
        v->lasts[i] = sw_limits_breath_seconds(p->limits, note->limit, note->dynamic, note->low);
        double before = v->places[i].free ? 0 : used;
        used = before + (told ? SW_BREATH_FULL * (note->end - note->begin) / v->lasts[i] : 0);
        int air = (int)(floor(used + 0.5) - floor(before + 0.5));
        v->places[i].air = air < 1 ? 1 : air;
        if (!told) {
            skip_untimed(p, note, &v->places[i]);
        }
    }
}

/* ---- telling --------------------------------------------------------------------------------------------
 */

static void say_reasons(unsigned flags, sw_buffer *text)
{
    static const struct {
        unsigned flag;
        const char *words;
    } table[] = {{SW_BREATH_SHORT_REST, "at a short rest"},
                 {SW_BREATH_SLUR_END, "where a slur ends"},
                 {SW_BREATH_PHRASE_END, "where a phrase ends"},
                 {SW_BREATH_BAR, "at the bar line"},
                 {SW_BREATH_LONG, "behind a long note"},
                 {SW_BREATH_LEAP, "before a leap"},
                 {SW_BREATH_SLUR, "within a slur, there is no better place"},
                 {SW_BREATH_PHRASE, "within a phrase"},
                 {SW_BREATH_BEAT, "within a beat, there is no better place"},
                 {SW_BREATH_WORD, "within a word, there is no better place"},
                 {SW_BREATH_SHORT, "behind a short note"},
                 {SW_BREATH_TOGETHER, "together with another player"}};
    for (size_t i = 0; i < sizeof table / sizeof table[0]; i++) {
        if ((flags & table[i].flag) != 0) {
            sw_buffer_format(text, ", %s", table[i].words);
        }
    }
}

/* Seconds that a breath lasts over the notes [first, end). */
static double lasts(const voice_line *v, size_t first, size_t end)
{
    double used = 0;
    double seconds = 0;
    for (size_t i = first; i < end; i++) {
        double length = v->notes[i].end - v->notes[i].begin;
        seconds += length;
        used += length / v->lasts[i];
    }
    return used > 0 ? seconds / used : v->lasts[first];
}

/* Tells of what goes on too long from one breath to the next. */
static void tell_long(const plan *p, const voice_line *v, size_t first, size_t end)
{
    int64_t air = 0;
    bool wanted = false;
    for (size_t i = first; i < end; i++) {
        air += v->places[i].air;
        wanted = wanted || p->is_chosen[v->notes[i].event];
    }
    if (air <= SW_BREATH_FULL + 1 || !wanted) { /* they were rounded */
        return;
    }
    char words[3][SW_SAY];
    char label[32];
    sw_buffer text = {0};
    sw_buffer_format(
        &text,
        "%s, %s: %s on one breath, which lasts about %s here; there is no place for another: "
        "divide the tie or "
        "slur, or share the line with another player%s",
        sw_say_place(p->chosen.score, event_of(p, &v->notes[first])->onset, words[0]),
        sw_staff_label(p->chosen.reading, p->chosen.score, v->staff, label),
        sw_say_seconds(v->notes[end - 1].end - v->notes[first].begin, words[1]),
        sw_say_seconds(lasts(v, first, end), words[2]),
        !with_rest(p) ? ""
        : rest_suffices(p, event_of(p, &v->notes[first]))
            ? " (without --rest breath marks can stand in slurs)"
            : " (the rest of --rest is too short to breathe in at this tempo: choose a longer one)");
    sw_move_tell(p->move, "breaths", p->chosen.reading, event_of(p, &v->notes[first]), sw_buffer_text(&text));
    sw_buffer_free(&text);
}

static void add_breath(plan *p, uint32_t staff, uint32_t before, double seconds)
{
    p->breaths = sw_grow(p->breaths, p->breath_count, &p->breath_capacity, sizeof *p->breaths);
    p->breaths[p->breath_count++] = (taken_breath){staff, before, seconds};
}

static void choose_breath(plan *p, const voice_line *v, size_t first, size_t i)
{
    const sw_line_note *before = &v->notes[i - 1];
    const sw_event *event = event_of(p, before);
    char words[3][SW_SAY];
    char label[32];
    sw_buffer reasons = {0};
    say_reasons(v->flags[i], &reasons);
    sw_choices_begin(&p->choices, before->event,
                     "%s, %s: a breath before it, %s after the last (one lasts about %s here)%s",
                     sw_say_place(p->chosen.score, sw_event_end(event), words[0]),
                     sw_staff_label(p->chosen.reading, p->chosen.score, v->staff, label),
                     sw_say_seconds(before->end - v->notes[first].begin, words[1]),
                     sw_say_seconds(lasts(v, first, i), words[2]), sw_buffer_text(&reasons));
    sw_change change = {.kind = SW_CHANGE_ADD_MARK, .event = before->event, .text = "\\breathe"};
    if (with_rest(p)) {
        change.kind = SW_CHANGE_END;
        change.moment = sw_rational_sub(sw_event_end(event), p->options->rest);
    }
    sw_choices_add(&p->choices, change);
    sw_buffer_free(&reasons);
    add_breath(p, v->staff, (uint32_t)(v->first + i - 1), before->end);
}

static void solve_voice(plan *p, uint32_t staff, size_t first, size_t count)
{
    voice_line v = {.staff = staff,
                    .first = first,
                    .notes = p->lines[staff]->items + first,
                    .places = sw_alloc_zero(count + 1, sizeof *v.places),
                    .flags = sw_alloc_zero(count + 1, sizeof *v.flags),
                    .lasts = sw_alloc_zero(count + 1, sizeof *v.lasts),
                    .taken = sw_alloc_zero(count + 1, sizeof *v.taken),
                    .count = count};
    look_at_voice(p, &v);
    sw_breath_solve(v.places, count, v.taken);
    size_t begin = 0;
    for (size_t i = 1; i <= count; i++) {
        if (i == count || v.taken[i] || v.places[i].free) {
            if (i < count && v.taken[i]) {
                choose_breath(p, &v, begin, i);
            }
            tell_long(p, &v, begin, i);
            begin = i;
        }
    }
    free(v.places);
    free(v.flags);
    free(v.lasts);
    free(v.taken);
}

/* ---- all ------------------------------------------------------------------------------------------------
 */

static void read_lines(plan *p)
{
    const sw_score *score = p->chosen.score;
    p->lines = sw_alloc_zero(score->staff_count + 1, sizeof *p->lines);
    p->is_chosen = sw_chosen_map(&p->chosen);
    p->stroke_of = sw_alloc((score->event_count + 1) * sizeof *p->stroke_of);
    memset(p->stroke_of, 0xff, (score->event_count + 1) * sizeof *p->stroke_of);
    p->strokes = sw_lines_of(&p->chosen);
    for (uint32_t s = 0; s < p->strokes.count; s++) {
        p->stroke_of[p->strokes.strokes[s].event] = s;
    }
    for (uint32_t staff = 0; staff < score->staff_count; staff++) {
        const sw_line *line = sw_check_line(p->check, score, staff);
        p->lines[staff] = line;
        for (uint32_t i = 1; line != NULL && i < line->count; i++) {
            if (line->items[i].breath_before) {
                add_breath(p, staff, i - 1, line->items[i - 1].end);
            }
        }
    }
}

static bool has_chosen(const plan *p, const sw_line *line, size_t first, size_t end)
{
    for (size_t i = first; i < end; i++) {
        if (p->is_chosen[line->items[i].event]) {
            return true;
        }
    }
    return false;
}

static void make_plan(plan *p)
{
    const sw_score *score = p->chosen.score;
    read_lines(p);
    bool breathing = false;
    for (uint32_t staff = 0; staff < score->staff_count; staff++) {
        const sw_line *line = p->lines[staff];
        for (size_t first = 0, end; line != NULL && first < line->count; first = end) {
            for (end = first + 1; end < line->count && !line->items[end].first; end++) {
            }
            if (!has_chosen(p, line, first, end)) {
                continue;
            }
            breathing = true;
            if (sw_staff_is_combined(p->chosen.reading, score, staff)) {
                sw_move_tell(p->move, "breaths", p->chosen.reading, event_of(p, &line->items[first]),
                             "two parts are combined on this staff, each breathes in its own source: left "
                             "alone");
                break;
            }
            solve_voice(p, staff, first, end - first);
        }
    }
    if (!breathing) {
        sw_buffer_string(&p->move->notes, "note: no wind instrument or singer plays here\n");
    }
}

static void free_plan(plan *p)
{
    free(p->lines);
    free(p->breaths);
    free(p->is_chosen);
    free(p->stroke_of);
    free(p->chosen.events);
    sw_lines_free(&p->strokes);
    sw_choices_free(&p->choices);
}

static bool run(sw_move *move, const sw_breaths_options *options, const sw_read_options *reading_options,
                char **error)
{
    plan p = {.move = move, .options = options, .choices = {.move = "breaths"}};
    if (!sw_places_choose(move, &options->places, &p.chosen, error)) {
        return false;
    }
    sw_figures figures;
    if (!sw_figures_find(&figures, options->film, error)) {
        free(p.chosen.events);
        return false;
    }
    sw_check check = sw_check_begin(p.chosen.reading, figures.film);
    p.check = &check;
    p.limits = check.limits;
    make_plan(&p);
    sw_edit_request request = sw_chosen_request(move, &p.chosen, options->elsewhere, reading_options);
    sw_choices_make(move, &p.choices, &request);
    free_plan(&p);
    sw_check_end(&check);
    sw_figures_free(&figures);
    return true;
}

sw_move *sw_move_breaths(const char *path, const sw_breaths_options *options,
                         const sw_read_options *reading_options, char **error)
{
    sw_move *move = sw_move_open(path, reading_options, error);
    return sw_move_close(move, move != NULL && run(move, options, reading_options, error));
}

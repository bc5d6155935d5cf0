/* The engravers of slurs, ties and beams say that a melisma is on when they come to the end of a moment; the
 * lyrics ask in the middle of it, when the notes have been heard. So what begins with a note holds for the
 * next one, and what ends with a note still holds for it. */
#include <stdlib.h>
#include <string.h>

#include "score/melisma_rules.h"
#include "score/strokes.h"

enum { MAX_SLURS = 8, MAX_TIES = 32 };

/* A setting or empty chord that can matter for a melisma. */
typedef struct heard_setting {
    sw_moment when;
    uint32_t setting;
} heard_setting;

/* A variable that holds a mark: begin = ( */
typedef struct mark_variable {
    uint32_t name;
    sw_mark_class class;
} mark_variable;

/* Grace notes that are slurred to the main note by their command. */
typedef struct slurred_grace {
    uint32_t file;
    uint32_t start;
    uint32_t end;
} slurred_grace;

typedef struct known_strokes {
    const sw_context *target;
    sw_event_range range;
    sw_strokes strokes;
} known_strokes;

struct sw_hearing {
    sw_player *p;
    uint32_t *order; /* events by context, then time, then the order of the walk */
    size_t count;
    heard_setting *settings; /* by time */
    size_t setting_count;
    size_t setting_capacity;
    mark_variable *marks;
    size_t mark_count;
    size_t mark_capacity;
    slurred_grace *graces; /* by place */
    size_t grace_count;
    size_t grace_capacity;
    known_strokes **known;
    size_t known_count;
    size_t known_capacity;
};

static const sw_music *at(const sw_hearing *h, uint32_t music)
{
    return &h->p->reader->reading->music[music];
}

static sw_moment moment_of(const sw_event *event)
{
    return (sw_moment){event->onset, {event->grace_num, event->grace_den}};
}

static const sw_context *owner(const sw_hearing *h, uint32_t event)
{
    return sw_contexts_owner(h->p->contexts, h->p->score->events[event].voice);
}

/* ---- what is heard, in order ---- */

static int compare_events(const void *a, const void *b, void *context)
{
    const sw_hearing *h = context;
    uint32_t x = *(const uint32_t *)a;
    uint32_t y = *(const uint32_t *)b;
    uintptr_t owner_x = (uintptr_t)owner(h, x);
    uintptr_t owner_y = (uintptr_t)owner(h, y);
    if (owner_x != owner_y) {
        return owner_x < owner_y ? -1 : 1;
    }
    int order = sw_moment_compare(moment_of(&h->p->score->events[x]), moment_of(&h->p->score->events[y]));
    return order != 0 ? order : x < y ? -1 : x > y;
}

static int compare_heard(const void *a, const void *b)
{
    const heard_setting *x = a;
    const heard_setting *y = b;
    int order = sw_moment_compare(x->when, y->when);
    return order != 0 ? order : x->setting < y->setting ? -1 : x->setting > y->setting;
}

static sw_slice last_part(const char *path)
{
    const char *dot = strrchr(path, '.');
    return sw_slice_of(dot == NULL ? path : dot + 1);
}

static bool matters(const sw_hearing *h, const sw_music *m, uint32_t music)
{
    sw_melisma_rule rule = {-1, -1, -1};
    if (m->kind == SW_MUSIC_SET) {
        sw_slice property = last_part(sw_reading_name(h->p->reader->reading, m->name));
        return sw_slice_is(property, "melismaBusy") ||
               sw_melisma_rule_set(&rule, property, (sw_slice){"", 0});
    }
    if (m->kind == SW_MUSIC_SETTING) {
        sw_slice text = sw_music_slice(h->p->reader->reading, music);
        return sw_slice_starts(text, "\\melisma") || sw_melisma_rule_command(&rule, text);
    }
    return m->kind == SW_MUSIC_CHORD;
}

static void find_settings(sw_hearing *h)
{
    const sw_score *score = h->p->score;
    for (uint32_t i = 0; i < score->setting_count; i++) {
        const sw_setting *s = &score->settings[i];
        if (matters(h, at(h, s->music), s->music)) {
            h->settings = sw_grow(h->settings, h->setting_count, &h->setting_capacity, sizeof *h->settings);
            sw_rational grace = s->grace ? (sw_rational){-1, 64} : sw_rational_zero();
            h->settings[h->setting_count++] = (heard_setting){{s->onset, grace}, i};
        }
    }
    if (h->setting_count > 1) {
        qsort(h->settings, h->setting_count, sizeof *h->settings, compare_heard);
    }
}

static sw_mark_class class_of(sw_slice text)
{
    while (text.length > 1 && strchr("-^_ ", text.data[0]) != NULL) {
        text = (sw_slice){text.data + 1, text.length - 1};
    }
    static const char signs[] = "()~[]";
    static const sw_mark_class classes[] = {SW_MARK_SLUR_START, SW_MARK_SLUR_END, SW_MARK_TIE,
                                            SW_MARK_BEAM_START, SW_MARK_BEAM_END};
    const char *sign = text.length == 1 ? strchr(signs, text.data[0]) : NULL;
    return sign == NULL ? SW_MARK_ARTICULATION : classes[sign - signs];
}

static void find_marks(sw_hearing *h)
{
    const sw_reading *reading = h->p->reader->reading;
    for (size_t i = 0; i < reading->variable_count; i++) {
        const sw_variable *v = &reading->variables[i];
        sw_mark_class class = class_of(sw_text_slice(reading->files[v->file].text, v->value_start, v->end));
        if (class != SW_MARK_ARTICULATION) {
            h->marks = sw_grow(h->marks, h->mark_count, &h->mark_capacity, sizeof *h->marks);
            h->marks[h->mark_count++] = (mark_variable){v->name, class};
        }
    }
}

static int compare_graces(const void *a, const void *b)
{
    const slurred_grace *x = a;
    const slurred_grace *y = b;
    return x->file != y->file ? (x->file < y->file ? -1 : 1) : x->start < y->start ? -1 : x->start > y->start;
}

static void find_graces(sw_hearing *h)
{
    const sw_reading *reading = h->p->reader->reading;
    for (uint32_t i = 0; i < reading->music_count; i++) {
        const sw_music *m = &reading->music[i];
        if (m->kind != SW_MUSIC_GRACE) {
            continue;
        }
        sw_slice text = sw_music_slice(reading, i);
        if (sw_slice_starts(text, "\\appoggiatura") || sw_slice_starts(text, "\\acciaccatura")) {
            h->graces = sw_grow(h->graces, h->grace_count, &h->grace_capacity, sizeof *h->graces);
            h->graces[h->grace_count++] = (slurred_grace){m->file, m->start, m->end};
        }
    }
    if (h->grace_count > 1) {
        qsort(h->graces, h->grace_count, sizeof *h->graces, compare_graces);
    }
}

sw_hearing *sw_hearing_new(sw_player *p, bool graces)
{
    sw_hearing *h = sw_alloc_zero(1, sizeof *h);
    h->p = p;
    h->count = p->score->event_count;
    h->order = sw_alloc((h->count + 1) * sizeof *h->order);
    for (uint32_t i = 0; i < h->count; i++) {
        h->order[i] = i;
    }
    qsort_r(h->order, h->count, sizeof *h->order, compare_events, h);
    find_settings(h);
    find_marks(h);
    if (graces) {
        find_graces(h);
    }
    return h;
}

void sw_hearing_free(sw_hearing *h)
{
    for (size_t i = 0; i < h->known_count; i++) {
        free(h->known[i]->strokes.items);
        free(h->known[i]);
    }
    free(h->known);
    free(h->order);
    free(h->settings);
    free(h->marks);
    free(h->graces);
    free(h);
}

/* ---- marks ---- */

/* What begins and ends at a moment. */
typedef struct turn {
    uint32_t slur_starts[MAX_SLURS]; /* spanner names */
    uint32_t slur_ends[MAX_SLURS];
    size_t start_count;
    size_t end_count;
    bool beam_start;
    bool beam_end;
    bool tie;
} turn;

static sw_mark_class mark_class(const sw_hearing *h, uint32_t mark, sw_slice text)
{
    sw_mark_class class = sw_music_mark_class(h->p->reader->reading, mark);
    const char *slash = memchr(text.data, '\\', text.length);
    if (class != SW_MARK_ARTICULATION || slash == NULL) {
        return class;
    }
    sw_slice name = {slash + 1, (size_t)(text.data + text.length - slash - 1)};
    uint32_t number = h->mark_count > 0 ? sw_names_find(h->p->reader->reading->names, name) : UINT32_MAX;
    for (size_t i = h->mark_count; i > 0; i--) {
        if (h->marks[i - 1].name == number) {
            return h->marks[i - 1].class;
        }
    }
    return class;
}

static void add_slur(uint32_t *names, size_t *count, uint32_t name)
{
    if (*count < MAX_SLURS) {
        names[(*count)++] = name;
    }
}

/* The marks among the children of a node. `\=name` stands as a mark of its own in front of a slur. */
static void read_marks(sw_hearing *h, uint32_t music, turn *t)
{
    uint32_t slur = 0;
    for (uint32_t c = at(h, music)->first; c != SW_NO_INDEX; c = at(h, c)->next) {
        if (at(h, c)->kind != SW_MUSIC_MARK) {
            continue;
        }
        sw_slice text = sw_music_slice(h->p->reader->reading, c);
        uint32_t name = slur;
        const char *equals = sw_slice_starts(text, "\\tweak") ? NULL : memchr(text.data, '=', text.length);
        slur = equals == NULL ? 0
                              : sw_names_add(h->p->reader->reading->names,
                                             (sw_slice){equals, (size_t)(text.data + text.length - equals)});
        switch (mark_class(h, c, text)) {
        case SW_MARK_SLUR_START:
            add_slur(t->slur_starts, &t->start_count, name);
            break;
        case SW_MARK_SLUR_END:
            add_slur(t->slur_ends, &t->end_count, name);
            break;
        case SW_MARK_BEAM_START:
            t->beam_start = true;
            break;
        case SW_MARK_BEAM_END:
            t->beam_end = true;
            break;
        case SW_MARK_TIE:
            t->tie = true;
            break;
        default:
            break;
        }
    }
}

static bool is_slurred_grace(const sw_hearing *h, const sw_event *event)
{
    const sw_music *m = at(h, event->music);
    size_t low = 0;
    size_t high = h->grace_count;
    slurred_grace place = {m->file, m->start, 0};
    while (low < high) {
        size_t middle = (low + high) / 2;
        if (compare_graces(&h->graces[middle], &place) <= 0) {
            low = middle + 1;
        } else {
            high = middle;
        }
    }
    return low > 0 && h->graces[low - 1].file == m->file && h->graces[low - 1].end >= m->end;
}

/* ---- one voice ---- */

typedef struct tie {
    sw_pitch pitch;
    bool drum;
    sw_moment end;
} tie;

/* How a voice stands between two moments. */
typedef struct voice_state {
    sw_melisma_rules rules;
    bool manual;
    uint32_t slurs[MAX_SLURS]; /* names of the open ones */
    size_t slur_count;
    bool grace_slur;
    bool open_beam[2]; /* of main and of grace notes */
    bool beam;
    tie ties[MAX_TIES]; /* notes that wait for their second half */
    size_t tie_count;
} voice_state;

static bool is_on(const voice_state *s, bool ties)
{
    int on = (s->manual ? SW_COUNTS_MANUAL : 0) | (s->slur_count > 0 || s->grace_slur ? SW_COUNTS_SLUR : 0) |
             (s->beam ? SW_COUNTS_BEAM : 0) | (ties && s->tie_count > 0 ? SW_COUNTS_TIE : 0);
    return (on & sw_melisma_counts(&s->rules)) != 0;
}

/* The context of a setting `Staff.x`, `x`, `Score.x` when it holds for this voice; otherwise NULL. */
static const sw_context *set_context(const sw_hearing *h, const sw_context *voice, const sw_setting *setting,
                                     sw_slice path)
{
    const char *dot = memrchr(path.data, '.', path.length);
    bool inner = setting->voice != SW_NO_INDEX && sw_contexts_owner(h->p->contexts, setting->voice) == voice;
    if (dot == NULL) {
        return inner ? voice : NULL;
    }
    char type[64] = {0};
    size_t length = (size_t)(dot - path.data);
    memcpy(type, path.data, length < sizeof type ? length : 0);
    if (strcmp(type, "Bottom") == 0 || sw_contexts_is(h->p->contexts, voice, type)) {
        return inner ? voice : NULL;
    }
    for (const sw_context *c = voice->parent; c != NULL; c = c->parent) {
        if (sw_contexts_is(h->p->contexts, c, type)) {
            bool around =
                c->level == SW_LEVEL_SCORE ||
                (c->level == SW_LEVEL_STAFF ? setting->staff == c->staff
                                            : setting->staff == SW_NO_INDEX ||
                                                  h->p->score->staves[setting->staff].group == c->group);
            return around ? c : NULL;
        }
    }
    return NULL;
}

static void apply_setting(sw_hearing *h, const sw_context *voice, const sw_setting *setting, voice_state *s,
                          turn *t)
{
    const sw_reading *reading = h->p->reader->reading;
    const sw_music *m = at(h, setting->music);
    sw_slice text = sw_music_slice(reading, setting->music);
    sw_slice path = m->kind == SW_MUSIC_SET ? sw_slice_of(sw_reading_name(reading, m->name)) : text;
    const sw_context *context =
        set_context(h, voice, setting, m->kind == SW_MUSIC_SET ? path : (sw_slice){"", 0});
    if (context == NULL) {
        return;
    }
    if (m->kind == SW_MUSIC_CHORD) {
        read_marks(h, setting->music, t);
    } else if (m->kind == SW_MUSIC_SETTING) {
        if (sw_slice_starts(text, "\\melisma")) {
            s->manual = sw_slice_is(text, "\\melisma");
        } else {
            sw_melisma_rule_command(&s->rules.levels[SW_LEVEL_VOICE], text);
        }
    } else {
        const char *equals = memchr(text.data, '=', text.length);
        sw_slice value = {"", 0};
        if (equals != NULL && !sw_slice_starts(text, "\\unset")) {
            value = (sw_slice){equals + 1, (size_t)(text.data + text.length - equals - 1)};
            while (value.length > 0 && strchr(" \t\r\n", value.data[0]) != NULL) {
                value = (sw_slice){value.data + 1, value.length - 1};
            }
        }
        sw_slice property = last_part(sw_reading_name(reading, m->name));
        if (sw_slice_is(property, "melismaBusy")) {
            s->manual = sw_slice_is(value, "##t");
        } else {
            sw_melisma_rule_set(&s->rules.levels[context->level], property, value);
        }
    }
}

/* What the beginning of a moment does by itself. */
static void begin_moment(voice_state *s, sw_moment when)
{
    size_t kept = 0;
    for (size_t i = 0; i < s->tie_count; i++) {
        if (sw_moment_compare(when, s->ties[i].end) <= 0 || sw_melisma_waiting_ties(&s->rules)) {
            s->ties[kept++] = s->ties[i];
        }
    }
    s->tie_count = kept;
    if ((s->open_beam[0] || s->open_beam[1]) && !sw_melisma_automatic_beams(&s->rules)) {
        s->beam = true;
    }
}

/* A note takes the ties that wait for it; true when there is one. */
static bool take_ties(voice_state *s, const sw_event *note)
{
    size_t kept = 0;
    bool taken = false;
    for (size_t i = 0; i < s->tie_count; i++) {
        bool drum = note->kind == SW_EVENT_DRUM;
        bool same = s->ties[i].drum == drum && (drum || sw_pitch_compare(s->ties[i].pitch, note->pitch) == 0);
        taken = taken || same;
        if (!same) {
            s->ties[kept++] = s->ties[i];
        }
    }
    s->tie_count = kept;
    return taken;
}

static void end_slurs(voice_state *s, const turn *t)
{
    for (size_t e = 0; e < t->end_count; e++) {
        size_t kept = 0;
        for (size_t i = 0; i < s->slur_count; i++) {
            if (s->slurs[i] != t->slur_ends[e]) {
                s->slurs[kept++] = s->slurs[i];
            }
        }
        s->slur_count = kept;
    }
    for (size_t b = 0; b < t->start_count; b++) {
        bool open = false;
        for (size_t i = 0; i < s->slur_count; i++) {
            open = open || s->slurs[i] == t->slur_starts[b];
        }
        if (!open) {
            add_slur(s->slurs, &s->slur_count, t->slur_starts[b]);
        }
    }
}

static void end_beams(voice_state *s, const turn *t, bool grace)
{
    bool automatic = sw_melisma_automatic_beams(&s->rules);
    if (t->beam_start && !s->open_beam[grace]) {
        s->open_beam[grace] = true;
        s->beam = s->beam || !automatic;
    }
    if (t->beam_end && s->open_beam[grace]) {
        s->open_beam[grace] = false;
        s->beam = s->beam && automatic;
    }
}

static bool is_note(const sw_event *event)
{
    return event->kind == SW_EVENT_NOTE || event->kind == SW_EVENT_DRUM;
}

/* The events [begin, end) of the order happen at one moment: what they do to the voice. */
static void end_moment(sw_hearing *h, size_t begin, size_t end, sw_moment when, sw_event_range range,
                       voice_state *s, turn *t)
{
    tie begun[MAX_TIES];
    size_t begun_count = 0;
    bool taken = false;
    bool all_tied = t->tie; /* by an empty chord */
    bool grace = !sw_rational_is_zero(when.grace);
    bool slurred = false;
    for (size_t i = begin; i < end; i++) {
        if (h->order[i] < range.from || h->order[i] >= range.end) {
            continue;
        }
        const sw_event *event = &h->p->score->events[h->order[i]];
        uint8_t kind = at(h, event->chord)->kind;
        t->tie = false;
        read_marks(h, event->chord, t);
        if (event->chord != event->music && kind != SW_MUSIC_REPEAT_CHORD && kind != SW_MUSIC_BARE) {
            read_marks(h, event->music, t);
        }
        if (!is_note(event)) {
            continue;
        }
        slurred = slurred || (grace && h->grace_count > 0 && is_slurred_grace(h, event));
        taken = take_ties(s, event) || taken;
        if ((t->tie || all_tied) && begun_count < MAX_TIES) {
            sw_moment over = sw_later(when, event->duration, grace);
            begun[begun_count++] = (tie){event->pitch, event->kind == SW_EVENT_DRUM, over};
        }
    }
    if ((taken || begun_count > 0) && !sw_melisma_waiting_ties(&s->rules)) {
        s->tie_count = 0;
    }
    for (size_t i = 0; i < begun_count && s->tie_count < MAX_TIES; i++) {
        s->ties[s->tie_count++] = begun[i];
    }
    end_slurs(s, t);
    s->grace_slur = slurred || (grace && s->grace_slur);
    end_beams(s, t, grace);
}

static void set_notes(const sw_hearing *h, size_t begin, size_t end, sw_event_range range, sw_stroke *stroke)
{
    for (size_t i = begin; i < end; i++) {
        const sw_event *event = &h->p->score->events[h->order[i]];
        if (is_note(event) && h->order[i] >= range.from && h->order[i] < range.end) {
            bool grace = event->grace_num != 0;
            sw_rational over = grace ? event->onset : sw_event_end(event);
            stroke->end = stroke->sung ? sw_rational_max(stroke->end, over) : over;
            stroke->event = stroke->sung && stroke->event < h->order[i] ? stroke->event : h->order[i];
            stroke->sung = true;
        }
    }
}

static void add_stroke(sw_strokes *strokes, const sw_stroke *stroke)
{
    strokes->items = sw_grow(strokes->items, strokes->count, &strokes->capacity, sizeof *strokes->items);
    strokes->items[strokes->count++] = *stroke;
}

/* The events of a context in the order: from where to where. */
static size_t first_event(const sw_hearing *h, uintptr_t context)
{
    size_t low = 0;
    size_t high = h->count;
    while (low < high) {
        size_t middle = (low + high) / 2;
        if ((uintptr_t)owner(h, h->order[middle]) < context) {
            low = middle + 1;
        } else {
            high = middle;
        }
    }
    return low;
}

static sw_strokes strokes_of_voice(sw_hearing *h, const sw_context *voice, sw_event_range range)
{
    const sw_score *score = h->p->score;
    sw_strokes strokes = {0};
    voice_state state = {.rules = sw_melisma_rules_of(h->p, voice)};
    bool deaf = sw_contexts_is(h->p->contexts, voice, "Devnull"); /* no engravers */
    size_t event = first_event(h, (uintptr_t)voice);
    size_t end = first_event(h, (uintptr_t)voice + 1);
    for (size_t setting = 0; event < end || setting < h->setting_count;) {
        sw_moment when = event < end ? moment_of(&score->events[h->order[event]]) : h->settings[setting].when;
        if (setting < h->setting_count && sw_moment_compare(h->settings[setting].when, when) < 0) {
            when = h->settings[setting].when;
        }
        turn t = {.tie = false};
        begin_moment(&state, when);
        for (; setting < h->setting_count && sw_moment_compare(h->settings[setting].when, when) <= 0;
             setting++) {
            apply_setting(h, voice, &score->settings[h->settings[setting].setting], &state, &t);
        }
        size_t begin = event;
        while (event < end && sw_moment_compare(moment_of(&score->events[h->order[event]]), when) == 0) {
            event++;
        }
        sw_stroke stroke = {.when = when, .event = SW_NO_INDEX, .busy = !deaf && is_on(&state, true)};
        set_notes(h, begin, event, range, &stroke);
        end_moment(h, begin, event, when, range, &state, &t);
        stroke.stays = !deaf && is_on(&state, false);
        stroke.tied = !deaf && is_on(&state, true);
        stroke.tied_until = state.tie_count > 0 ? state.ties[0].end : when;
        add_stroke(&strokes, &stroke);
    }
    return strokes;
}

/* ---- several voices ---- */

typedef struct part {
    const sw_context *voice;
    const sw_strokes *strokes;
    size_t at;
} part;

/* A voice that is over, or not there yet, doesn't count. */
static bool is_alive(const sw_hearing *h, const sw_context *voice, sw_moment when)
{
    size_t count;
    const sw_life *lives = sw_contexts_lives(h->p->contexts, &count);
    bool has_any = false;
    for (size_t i = 0; i < count; i++) {
        if (lives[i].context == voice) {
            has_any = true;
            if (sw_moment_compare(lives[i].begin, when) <= 0 && sw_moment_compare(when, lives[i].end) <= 0) {
                return true;
            }
        }
    }
    return !has_any; /* made by its notes */
}

/* Whether a melisma is on in a part at a moment; its next stroke is not before it. */
static bool part_is_busy(const part *voice, sw_moment when)
{
    const sw_strokes *s = voice->strokes;
    if (voice->at < s->count && sw_moment_compare(s->items[voice->at].when, when) == 0) {
        return s->items[voice->at].busy;
    }
    if (voice->at == 0) {
        return true; /* not there yet, so it does not ask for a syllable */
    }
    const sw_stroke *before = &s->items[voice->at - 1];
    return before->stays || (before->tied && sw_moment_compare(when, before->tied_until) <= 0);
}

/* Notes of all parts; a melisma is on while it is on in each of them. */
static sw_strokes merge(const sw_hearing *h, part *parts, size_t count)
{
    sw_strokes merged = {0};
    for (;;) {
        const sw_stroke *next = NULL;
        for (size_t i = 0; i < count; i++) {
            const sw_strokes *s = parts[i].strokes;
            if (parts[i].at < s->count &&
                (next == NULL || sw_moment_compare(s->items[parts[i].at].when, next->when) < 0)) {
                next = &s->items[parts[i].at];
            }
        }
        if (next == NULL) {
            return merged;
        }
        sw_stroke stroke = {.when = next->when, .event = SW_NO_INDEX, .busy = true};
        for (size_t i = 0; i < count; i++) {
            stroke.busy = stroke.busy &&
                          (part_is_busy(&parts[i], stroke.when) || !is_alive(h, parts[i].voice, stroke.when));
            const sw_strokes *s = parts[i].strokes;
            if (parts[i].at < s->count && sw_moment_compare(s->items[parts[i].at].when, stroke.when) == 0) {
                const sw_stroke *own = &s->items[parts[i].at++];
                if (own->sung) {
                    stroke.event = stroke.sung && stroke.event < own->event ? stroke.event : own->event;
                    stroke.end = stroke.sung ? sw_rational_max(stroke.end, own->end) : own->end;
                    stroke.sung = true;
                }
            }
        }
        add_stroke(&merged, &stroke);
    }
}

static bool stands_in(const sw_context *context, const sw_context *target)
{
    while (context != NULL && context != target) {
        context = context->parent;
    }
    return context != NULL;
}

static known_strokes *find_known(const sw_hearing *h, const sw_context *target, sw_event_range range)
{
    for (size_t i = 0; i < h->known_count; i++) {
        const known_strokes *known = h->known[i];
        if (known->target == target && known->range.from == range.from && known->range.end == range.end) {
            return h->known[i];
        }
    }
    return NULL;
}

static const sw_strokes *keep(sw_hearing *h, const sw_context *target, sw_event_range range,
                              sw_strokes strokes)
{
    known_strokes *known = sw_alloc(sizeof *known);
    *known = (known_strokes){target, range, strokes};
    h->known = sw_grow(h->known, h->known_count, &h->known_capacity, sizeof *h->known);
    h->known[h->known_count++] = known;
    return &known->strokes;
}

static const sw_strokes *voice_strokes(sw_hearing *h, const sw_context *voice, sw_event_range range)
{
    known_strokes *known = find_known(h, voice, range);
    return known != NULL ? &known->strokes : keep(h, voice, range, strokes_of_voice(h, voice, range));
}

const sw_strokes *sw_hearing_strokes(sw_hearing *h, const sw_context *target, sw_event_range range)
{
    if (target->level == SW_LEVEL_VOICE) {
        return voice_strokes(h, target, range);
    }
    known_strokes *known = find_known(h, target, range);
    if (known != NULL) {
        return &known->strokes;
    }
    part *parts = NULL;
    size_t count = 0;
    size_t capacity = 0;
    for (uint32_t v = 0; v < h->p->score->voice_count; v++) {
        const sw_context *voice = sw_contexts_owner(h->p->contexts, v);
        bool twice = false; /* a voice that went to another staff and back */
        const sw_strokes *strokes = stands_in(voice, target) ? voice_strokes(h, voice, range) : NULL;
        for (size_t i = 0; i < count; i++) {
            twice = twice || parts[i].strokes == strokes;
        }
        if (strokes != NULL && !twice) {
            parts = sw_grow(parts, count, &capacity, sizeof *parts);
            parts[count++] = (part){voice, strokes, 0};
        }
    }
    const sw_strokes *merged = keep(h, target, range, merge(h, parts, count));
    free(parts);
    return merged;
}

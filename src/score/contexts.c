#include <stdlib.h>
#include <string.h>

#include "score/contexts.h"

struct sw_contexts {
    sw_reader *reader;
    sw_score *score;
    sw_arena *arena;
    sw_context *top;
    sw_context **owners; /* by voice of the score */
    size_t owner_capacity;
    sw_life *lives;
    size_t life_count;
    size_t life_capacity;
};

/* ---- kinds of contexts ---- */

static bool is_in(sw_slice name, const char *const *list)
{
    for (; *list != NULL; list++) {
        if (sw_slice_is(name, *list)) {
            return true;
        }
    }
    return false;
}

static sw_context_level level_of(const char *type)
{
    static const char *const groups[] = {"PianoStaff",      "GrandStaff",      "StaffGroup", "ChoirStaff",
                                         "InnerStaffGroup", "InnerChoirStaff", "OneStaff",   NULL};
    sw_slice name = sw_slice_of(type);
    if (sw_slice_is(name, "Score") || sw_slice_is(name, "Global") || sw_slice_is(name, "Timing")) {
        return SW_LEVEL_SCORE;
    }
    if (is_in(name, groups) || sw_slice_ends(name, "Group")) {
        return SW_LEVEL_GROUP;
    }
    if (sw_slice_ends(name, "Voice") || sw_slice_is(name, "Bottom")) {
        return SW_LEVEL_VOICE;
    }
    return SW_LEVEL_STAFF; /* staves, and lines such as Lyrics or ChordNames that stand like one */
}

static const char *text_of(const sw_contexts *contexts, uint32_t name)
{
    return sw_reading_name(contexts->reader->reading, name);
}

static uint32_t name_of(const sw_contexts *contexts, const char *text)
{
    return sw_names_add(contexts->reader->reading->names, sw_slice_of(text));
}

/* What the language lets a context stand for (its \alias). */
static void set_aliases(sw_contexts *contexts, sw_context *context)
{
    static const char *const both[] = {"Devnull", "Dynamics", "NullVoice", NULL};
    static const char *const staves[] = {"ChordGrid", "ChordNames", "FretBoards", "NoteNames", NULL};
    sw_slice type = sw_slice_of(text_of(contexts, context->type));
    bool is_both = is_in(type, both);
    if (is_both || is_in(type, staves) ||
        (sw_slice_ends(type, "Staff") && context->level == SW_LEVEL_STAFF)) {
        context->aliases[0] = name_of(contexts, "Staff");
    }
    if (is_both || sw_slice_ends(type, "Voice")) {
        context->aliases[1] = name_of(contexts, "Voice");
    }
    if (sw_slice_is(type, "PianoStaff")) {
        context->aliases[0] = name_of(contexts, "GrandStaff");
    }
}

static bool is_a(const sw_context *context, uint32_t type)
{
    return context->type == type ||
           (type != 0 && (context->aliases[0] == type || context->aliases[1] == type));
}

static bool is_silent(const char *type)
{
    static const char *const silent[] = {"ChordNames", "Lyrics",         "FiguredBass", "FretBoards",
                                         "Devnull",    "NullVoice",      "Dynamics",    "NoteNames",
                                         "ChordGrid",  "ChordGridScore", NULL};
    return is_in(sw_slice_of(type), silent);
}

/* ---- making ---- */

static uint32_t add_staff(sw_contexts *contexts, const sw_context *context, uint32_t music)
{
    sw_score *score = contexts->score;
    score->staves = sw_grow(score->staves, score->staff_count, &score->staff_capacity, sizeof(sw_staff));
    score->staves[score->staff_count] = (sw_staff){
        .type = context->type,
        .id = context->id,
        .group = context->group,
        .music = music,
        .frame = context->frame,
    };
    return (uint32_t)score->staff_count++;
}

static uint32_t add_group(sw_contexts *contexts, const sw_context *context, uint32_t music)
{
    sw_score *score = contexts->score;
    score->groups = sw_grow(score->groups, score->group_count, &score->group_capacity, sizeof(sw_group));
    score->groups[score->group_count] = (sw_group){
        .type = context->type, .id = context->id, .parent = context->parent->group, .music = music};
    return (uint32_t)score->group_count++;
}

static sw_context *make(sw_contexts *contexts, sw_context *parent, uint32_t type, uint32_t id, uint32_t music,
                        uint32_t frame)
{
    sw_context *context = sw_arena_alloc(contexts->arena, sizeof *context);
    context->parent = parent;
    context->type = type;
    context->id = id;
    context->level = parent->level == SW_LEVEL_STAFF ? SW_LEVEL_VOICE : level_of(text_of(contexts, type));
    context->group = parent->group;
    context->staff = parent->staff;
    context->voice = SW_NO_INDEX;
    context->frame = frame;
    context->with = SW_NO_INDEX;
    context->lyrics = sw_slice_ends(sw_slice_of(text_of(contexts, type)), "Lyrics");
    set_aliases(contexts, context);
    context->silent = parent->silent || is_silent(text_of(contexts, type));
    context->sibling = parent->children;
    parent->children = context;
    if (context->level == SW_LEVEL_STAFF) {
        context->staff = add_staff(contexts, context, music);
    } else if (context->level == SW_LEVEL_GROUP) {
        context->group = add_group(contexts, context, music);
    }
    return context;
}

sw_contexts *sw_contexts_new(sw_reader *reader, sw_score *score)
{
    sw_contexts *contexts = sw_alloc_zero(1, sizeof *contexts);
    contexts->reader = reader;
    contexts->score = score;
    contexts->arena = sw_arena_new();
    contexts->top = sw_arena_alloc(contexts->arena, sizeof(sw_context));
    *contexts->top = (sw_context){
        .level = SW_LEVEL_SCORE,
        .type = name_of(contexts, "Score"),
        .group = SW_NO_INDEX,
        .staff = SW_NO_INDEX,
        .voice = SW_NO_INDEX,
        .frame = SW_NO_INDEX,
        .with = SW_NO_INDEX,
    };
    return contexts;
}

void sw_contexts_free(sw_contexts *contexts)
{
    sw_arena_free(contexts->arena);
    free(contexts->owners);
    free(contexts->lives);
    free(contexts);
}

sw_context *sw_contexts_top(sw_contexts *contexts)
{
    return contexts->top;
}

/* ---- finding ---- */

/* The newest context below (or at) `root` with this type and, unless 0, this id. */
static sw_context *find_below(sw_context *root, uint32_t type, uint32_t id)
{
    if (is_a(root, type) && (id == 0 || root->id == id)) {
        return root;
    }
    for (sw_context *child = root->children; child != NULL; child = child->sibling) {
        sw_context *found = find_below(child, type, id);
        if (found != NULL) {
            return found;
        }
    }
    return NULL;
}

static sw_context *upwards(sw_context *here, sw_context_level highest)
{
    while (here->level > highest && here->parent != NULL) {
        here = here->parent;
    }
    return here;
}

sw_context *sw_contexts_staff(sw_contexts *contexts, sw_context *here, bool drum)
{
    sw_context *staff = upwards(here, SW_LEVEL_STAFF);
    if (staff->level == SW_LEVEL_STAFF) {
        return staff;
    }
    if (staff->implicit == NULL) {
        staff->implicit = make(contexts, staff, name_of(contexts, drum ? "DrumStaff" : "Staff"), 0,
                               SW_NO_INDEX, staff->frame);
    }
    return staff->implicit;
}

/* The \new of a staff to which a \change has already led: it is that staff. */
static sw_context *claim(sw_contexts *contexts, sw_context *staff, sw_context *here, uint32_t music,
                         uint32_t frame)
{
    staff->awaited = false;
    staff->frame = frame;
    staff->group = upwards(here, SW_LEVEL_GROUP)->group;
    sw_staff *s = &contexts->score->staves[staff->staff];
    s->music = music;
    s->frame = frame;
    s->group = staff->group;
    return staff;
}

sw_context *sw_contexts_enter(sw_contexts *contexts, sw_context *here, uint32_t music, uint32_t frame,
                              bool *begins)
{
    const sw_music *m = &contexts->reader->reading->music[music];
    bool is_new = (m->flags & SW_MUSIC_NEW) != 0;
    uint32_t type = m->name;
    uint32_t id = m->name2;
    bool bottom = strcmp(text_of(contexts, type), "Bottom") == 0;
    if (bottom) {
        const char *staff_type = text_of(contexts, upwards(here, SW_LEVEL_STAFF)->type);
        type = name_of(contexts, strcmp(staff_type, "DrumStaff") == 0  ? "DrumVoice"
                                 : strcmp(staff_type, "TabStaff") == 0 ? "TabVoice"
                                                                       : "Voice");
    }
    sw_context_level level = level_of(text_of(contexts, type));
    if (level == SW_LEVEL_SCORE) {
        *begins = contexts->top->children == NULL;
        return contexts->top;
    }
    *begins = false;
    if (!is_new) {
        for (sw_context *c = here; c != NULL; c = c->parent) {
            if (is_a(c, type) && (id == 0 || c->id == id)) {
                return c;
            }
        }
        /* A voice of that name in another staff is another voice. */
        bool in_staff = bottom || level == SW_LEVEL_VOICE;
        sw_context *root = in_staff ? upwards(here, SW_LEVEL_STAFF) : contexts->top;
        sw_context *found = id != 0 || !bottom ? find_below(id == 0 ? here : root, type, id) : NULL;
        if (found != NULL) {
            return found;
        }
    }
    *begins = true;
    if (level == SW_LEVEL_STAFF && id != 0) {
        sw_context *awaited = find_below(contexts->top, type, id);
        if (awaited != NULL && awaited->awaited) {
            return claim(contexts, awaited, here, music, frame);
        }
    }
    sw_context *parent;
    if (level == SW_LEVEL_VOICE) {
        /* Outside of a staff a voice brings a staff of its own. */
        bool drum = strcmp(text_of(contexts, type), "DrumVoice") == 0;
        parent = upwards(here, SW_LEVEL_STAFF);
        if (parent->level != SW_LEVEL_STAFF) {
            parent = make(contexts, parent, name_of(contexts, drum ? "DrumStaff" : "Staff"), 0, SW_NO_INDEX,
                          parent->frame);
        }
    } else {
        parent = upwards(here, SW_LEVEL_GROUP);
    }
    return make(contexts, parent, type, id, music, frame);
}

sw_context *sw_contexts_voice(sw_contexts *contexts, sw_context *here, bool drum)
{
    if (here->level == SW_LEVEL_VOICE) {
        return here;
    }
    sw_context *staff = sw_contexts_staff(contexts, here, drum);
    if (staff->implicit == NULL) {
        const char *type = text_of(contexts, staff->type);
        uint32_t voice = staff->silent                    ? staff->type /* itself what hears the notes */
                         : strcmp(type, "DrumStaff") == 0 ? name_of(contexts, "DrumVoice")
                         : strcmp(type, "TabStaff") == 0  ? name_of(contexts, "TabVoice")
                                                          : name_of(contexts, "Voice");
        staff->implicit = make(contexts, staff, voice, 0, SW_NO_INDEX, staff->frame);
    }
    return staff->implicit;
}

sw_context *sw_contexts_named(sw_contexts *contexts, sw_context *parent, const char *type, const char *id)
{
    uint32_t type_name = name_of(contexts, type);
    uint32_t id_name = name_of(contexts, id);
    sw_context *found = find_below(parent, type_name, id_name);
    return found != NULL ? found : make(contexts, parent, type_name, id_name, SW_NO_INDEX, parent->frame);
}

sw_context *sw_contexts_staff_called(sw_contexts *contexts, sw_context *here, const char *id)
{
    uint32_t type = name_of(contexts, "Staff");
    uint32_t name = name_of(contexts, id);
    for (sw_context *c = here; c != NULL; c = c->parent) {
        sw_context *found = find_below(c, type, name);
        if (found != NULL) {
            return found;
        }
    }
    return make(contexts, upwards(here, SW_LEVEL_GROUP), type, name, SW_NO_INDEX, here->frame);
}

sw_context *sw_contexts_new_voice(sw_contexts *contexts, sw_context *staff)
{
    return make(contexts, staff, name_of(contexts, "Voice"), 0, SW_NO_INDEX, staff->frame);
}

sw_context *sw_contexts_route(sw_contexts *contexts, sw_context *first, const sw_turn *turns, size_t count)
{
    sw_context *route = sw_arena_alloc(contexts->arena, sizeof *route);
    sw_turn *copy = sw_arena_alloc(contexts->arena, (count + 1) * sizeof *copy);
    copy[0] = (sw_turn){sw_moment_zero(), first};
    if (count > 0) {
        memcpy(copy + 1, turns, count * sizeof *copy);
    }
    *route = *first;
    route->children = NULL;
    route->turns = copy;
    route->turn_count = count + 1;
    return route;
}

sw_context *sw_contexts_at(sw_context *here, sw_moment when)
{
    if (here->turn_count == 0) {
        return here;
    }
    size_t low = 1; /* turn 0 holds until turn 1, whenever that is */
    size_t high = here->turn_count;
    while (low < high) {
        size_t middle = (low + high) / 2;
        if (sw_moment_compare(here->turns[middle].at, when) <= 0) {
            low = middle + 1;
        } else {
            high = middle;
        }
    }
    return here->turns[low - 1].to;
}

uint32_t sw_contexts_voice_index(sw_contexts *contexts, sw_context *voice)
{
    if (voice->voice == SW_NO_INDEX) {
        sw_score *score = contexts->score;
        score->voices = sw_grow(score->voices, score->voice_count, &score->voice_capacity, sizeof(sw_voice));
        score->voices[score->voice_count] = (sw_voice){voice->staff, voice->type, voice->id};
        contexts->owners =
            sw_grow(contexts->owners, score->voice_count, &contexts->owner_capacity, sizeof(sw_context *));
        contexts->owners[score->voice_count] = voice;
        voice->voice = (uint32_t)score->voice_count++;
    }
    return voice->voice;
}

sw_context *sw_contexts_owner(const sw_contexts *contexts, uint32_t voice)
{
    return contexts->owners[voice];
}

bool sw_contexts_is(const sw_contexts *contexts, const sw_context *context, const char *type)
{
    return is_a(context, name_of(contexts, type));
}

void sw_contexts_lived(sw_contexts *contexts, sw_context *context, sw_moment begin, sw_moment end)
{
    if (context->level != SW_LEVEL_VOICE && context->aliases[1] == 0) {
        return;
    }
    contexts->lives =
        sw_grow(contexts->lives, contexts->life_count, &contexts->life_capacity, sizeof(sw_life));
    contexts->lives[contexts->life_count++] = (sw_life){context, begin, end};
}

const sw_life *sw_contexts_lives(const sw_contexts *contexts, size_t *count)
{
    *count = contexts->life_count;
    return contexts->lives;
}

uint32_t sw_contexts_staff_index(const sw_contexts *contexts, const sw_context *here)
{
    (void)contexts;
    return here->staff;
}

void sw_contexts_change(sw_contexts *contexts, sw_context *here, uint32_t type, uint32_t id)
{
    sw_context *staff = find_below(contexts->top, type, id);
    if (staff == NULL) { /* the compiler makes it beside the present one when it is written later */
        staff = make(contexts, upwards(here, SW_LEVEL_GROUP), type, id, SW_NO_INDEX, here->frame);
        staff->awaited = true;
    }
    if (staff->level != SW_LEVEL_STAFF) {
        return; /* the compiler says that it can't, and goes on */
    }
    sw_context *voice = sw_contexts_voice(contexts, here, false);
    voice->staff = staff->staff;
    voice->voice = SW_NO_INDEX;
    const sw_score *score = contexts->score;
    for (uint32_t v = 0; v < score->voice_count; v++) { /* back on a staff where it was before */
        if (score->voices[v].staff == voice->staff && score->voices[v].id == voice->id &&
            score->voices[v].type == voice->type) {
            voice->voice = v;
        }
    }
}

/* ---- names of instruments ---- */

static void set_instrument(sw_contexts *contexts, sw_context *context, const char *property, uint32_t text)
{
    sw_score *score = contexts->score;
    bool short_name = strcmp(property, "shortInstrumentName") == 0;
    sw_slice name = sw_slice_of(text_of(contexts, text));
    while (name.length > 0 &&
           name.data[name.length - 1] == ' ') { /* blanks that keep the name off its staff */
        name.length--;
    }
    text = sw_names_add(contexts->reader->reading->names, name);
    if (text == 0 || (!short_name && strcmp(property, "instrumentName") != 0)) {
        return;
    }
    if (context->level == SW_LEVEL_GROUP) {
        if (context->group != SW_NO_INDEX && !short_name && score->groups[context->group].instrument == 0) {
            score->groups[context->group].instrument = text;
        }
    } else if (context->staff != SW_NO_INDEX) {
        sw_staff *staff = &score->staves[context->staff];
        uint32_t *field = short_name ? &staff->short_instrument : &staff->instrument;
        if (*field == 0) {
            *field = text;
        }
    }
}

void sw_contexts_set(sw_contexts *contexts, sw_context *here, uint32_t path, uint32_t text)
{
    const char *full = text_of(contexts, path);
    const char *dot = strrchr(full, '.');
    const char *property = dot == NULL ? full : dot + 1;
    if (strstr(property, "nstrumentName") == NULL) {
        return;
    }
    sw_context *target = here;
    if (dot != NULL) {
        for (sw_context *c = here; c != NULL; c = c->parent) {
            const char *type = text_of(contexts, c->type);
            if (strlen(type) == (size_t)(dot - full) && strncmp(type, full, strlen(type)) == 0) {
                target = c;
                break;
            }
        }
        if (target == here && strncmp(full, "Staff.", 6) == 0) {
            target = sw_contexts_staff(contexts, here, false);
        }
    }
    set_instrument(contexts, target, property, text);
}

void sw_contexts_name_staff(sw_contexts *contexts, sw_context *voice, uint32_t frame)
{
    voice->named = true;
    sw_score *score = contexts->score;
    sw_staff *staff = &score->staves[voice->staff];
    if (staff->variable != 0) {
        return;
    }
    for (uint32_t f = frame; f != SW_NO_INDEX && f != staff->frame; f = score->frames[f].parent) {
        const sw_music *m = &contexts->reader->reading->music[score->frames[f].music];
        if (m->kind == SW_MUSIC_REFERENCE) {
            staff->variable = m->name;
        }
    }
}

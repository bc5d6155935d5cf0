/* Lyrics on the walk through the music. */
#include <string.h>

#include "score/lyrics.h"

static const sw_music *at(const sw_player *p, uint32_t music)
{
    return &p->reader->reading->music[music];
}

static sw_lyrics *lyrics_of(sw_player *p)
{
    if (p->lyrics == NULL) {
        p->lyrics = sw_alloc_zero(1, sizeof *p->lyrics);
    }
    return p->lyrics;
}

/* ---- lines ---- */

static uint32_t add_line(sw_player *p, uint32_t id, uint32_t music)
{
    sw_lyrics *lyrics = lyrics_of(p);
    sw_score *score = p->score;
    score->lines = sw_grow(score->lines, score->line_count, &score->line_capacity, sizeof(sw_lyric_line));
    lyrics->states =
        sw_grow(lyrics->states, score->line_count, &lyrics->state_capacity, sizeof(sw_line_state));
    score->lines[score->line_count] = (sw_lyric_line){id, music};
    lyrics->states[score->line_count] =
        (sw_line_state){.last_item = SW_NO_INDEX, .last_syllable = SW_NO_INDEX};
    return (uint32_t)score->line_count++;
}

/* The settings of a WITH node, or none. */
static void hold_all(sw_player *p, uint32_t line, uint32_t with)
{
    for (uint32_t c = with == SW_NO_INDEX ? with : at(p, with)->first; c != SW_NO_INDEX; c = at(p, c)->next) {
        sw_lyrics_hold(p, &p->lyrics->states[line], c);
    }
}

/* The line of a Lyrics context. */
static uint32_t line_of(sw_player *p, sw_context *context)
{
    if (context->line == 0) {
        uint32_t staff = context->staff;
        uint32_t music = staff == SW_NO_INDEX ? SW_NO_INDEX : p->score->staves[staff].music;
        uint32_t line = add_line(p, context->id, music);
        context->line = line + 1;
        hold_all(p, line, context->with);
    }
    return context->line - 1;
}

uint32_t sw_lyrics_enter(sw_player *p, uint32_t music, uint32_t here)
{
    const sw_music *m = at(p, music);
    if (!sw_slice_ends(sw_slice_of(sw_reading_name(p->reader->reading, m->name)), "Lyrics")) {
        return here;
    }
    for (uint32_t i = 0; (m->flags & SW_MUSIC_NEW) == 0 && i < p->score->line_count; i++) {
        if (m->name2 == 0 || p->score->lines[i].id == m->name2) {
            return m->name2 == 0 ? here : i;
        }
    }
    uint32_t line = add_line(p, m->name2, music);
    hold_all(p, line, sw_music_with(p->reader->reading, music));
    return line;
}

/* ---- what a text consists of ---- */

static void add_item(sw_player *p, sw_text_kind kind, uint32_t music, sw_moment when, const sw_spot *here,
                     uint32_t flags)
{
    sw_lyrics *lyrics = p->lyrics;
    lyrics->items = sw_grow(lyrics->items, lyrics->item_count, &lyrics->item_capacity, sizeof(sw_text_item));
    lyrics->items[lyrics->item_count] =
        (sw_text_item){when, kind, music, here->frame, here->recorded, flags, (uint32_t)lyrics->item_count};
    lyrics->item_count++;
    p->too_many = p->too_many || lyrics->item_count > p->event_limit;
}

static uint32_t syllable_flags(const sw_player *p, uint32_t music)
{
    sw_slice text = sw_music_slice(p->reader->reading, music);
    return text.length > 0 && text.data[0] == '_' &&
                   strcmp(sw_reading_name(p->reader->reading, at(p, music)->name), " ") == 0
               ? SW_SYLLABLE_EMPTY
               : 0;
}

void sw_lyrics_syllable(sw_player *p, uint32_t music, sw_moment when, sw_moment end, const sw_spot *here)
{
    uint32_t flags = syllable_flags(p, music);
    if (p->in_text) {
        p->lyrics->states[here->recorded].last_item = (uint32_t)p->lyrics->item_count;
        add_item(p, SW_TEXT_SYLLABLE, music, when, here, flags);
        add_item(p, SW_TEXT_PAUSE, music, end, here, 0);
        return;
    }
    uint32_t line = line_of(p, here->context);
    sw_score *score = p->score;
    p->lyrics->states[line].last_syllable = (uint32_t)score->syllable_count;
    score->syllables =
        sw_grow(score->syllables, score->syllable_count, &score->syllable_capacity, sizeof(sw_syllable));
    score->syllables[score->syllable_count++] = (sw_syllable){
        .onset = when.main,
        .duration = sw_rational_sub(end.main, when.main),
        .grace_num = (int32_t)when.grace.num,
        .grace_den = when.grace.den == 0 ? 1 : (int32_t)when.grace.den,
        .music = music,
        .frame = here->frame,
        .line = line,
        .event = SW_NO_INDEX,
        .voice = SW_NO_INDEX,
        .flags = flags | SW_SYLLABLE_OWN_LENGTH,
    };
}

void sw_lyrics_pause(sw_player *p, uint32_t music, sw_moment when, sw_moment end, const sw_spot *here)
{
    add_item(p, SW_TEXT_PAUSE, music, when, here, 0);
    add_item(p, SW_TEXT_PAUSE, music, end, here, 0);
}

static uint32_t connection(sw_slice text)
{
    return sw_slice_is(text, "--") ? SW_SYLLABLE_HYPHEN : sw_slice_is(text, "__") ? SW_SYLLABLE_EXTENDER : 0;
}

void sw_lyrics_hold(const sw_player *p, sw_line_state *state, uint32_t music)
{
    const sw_music *m = at(p, music);
    if (m->kind != SW_MUSIC_SET) {
        return;
    }
    const char *path = sw_reading_name(p->reader->reading, m->name);
    const char *dot = strrchr(path, '.');
    sw_slice property = sw_slice_of(dot == NULL ? path : dot + 1);
    sw_slice text = sw_music_slice(p->reader->reading, music);
    bool on = sw_slice_ends(text, "##t");
    if (sw_slice_is(property, "ignoreMelismata")) {
        state->ignores_melismata = on;
    } else if (sw_slice_is(property, "includeGraceNotes")) {
        state->takes_graces = on;
    } else if (sw_slice_is(property, "associatedVoice")) {
        state->voice = sw_slice_starts(text, "\\unset") ? 0 : m->name2;
    }
}

void sw_lyrics_setting(sw_player *p, uint32_t music, sw_moment when, const sw_spot *here)
{
    uint32_t flag =
        at(p, music)->kind == SW_MUSIC_SETTING ? connection(sw_music_slice(p->reader->reading, music)) : 0;
    if (p->in_text) {
        uint32_t last = p->lyrics->states[here->recorded].last_item;
        if (flag != 0 && last != SW_NO_INDEX) {
            p->lyrics->items[last].flags |= flag;
        } else {
            add_item(p, SW_TEXT_SETTING, music, when, here, 0);
        }
        return;
    }
    sw_line_state *state = NULL;
    if (flag != 0 || at(p, music)->kind == SW_MUSIC_SET) {
        uint32_t line = line_of(p, here->context);
        state = &p->lyrics->states[line];
    }
    if (flag != 0 && state->last_syllable != SW_NO_INDEX) {
        p->score->syllables[state->last_syllable].flags |= flag;
    } else if (state != NULL) {
        sw_lyrics_hold(p, state, music);
    }
}

/* ---- verses ---- */

/* Goes through a text with a clock of its own and adds the verse. */
static void read_text(sw_player *p, uint32_t music, const sw_spot *here, sw_verse verse)
{
    sw_lyrics *lyrics = lyrics_of(p);
    verse.first_item = lyrics->item_count;
    lyrics->states[verse.line].last_item = SW_NO_INDEX;
    sw_spot inside = *here;
    inside.scale = (sw_rational){1, 1};
    inside.grace = false;
    inside.recorded = verse.line;
    size_t reached = p->reached;
    uint32_t step = p->step;
    if (at(p, music)->first != SW_NO_INDEX) {
        sw_walk_muted(p, at(p, music)->first, &inside, true);
    }
    p->reached = reached;
    p->step = step;
    verse.end_item = lyrics->item_count;
    verse.step = step;
    verse.after = SW_NO_INDEX;
    for (size_t i = lyrics->verse_count; i > 0 && verse.target == NULL; i--) {
        const sw_verse *before = &lyrics->verses[i - 1];
        if (before->line == verse.line && sw_moment_compare(before->start, verse.start) == 0) {
            verse.after = before->step != verse.step ? (uint32_t)(i - 1) : SW_NO_INDEX;
            break;
        }
    }
    lyrics->verses = sw_grow(lyrics->verses, lyrics->verse_count, &lyrics->verse_capacity, sizeof(sw_verse));
    lyrics->verses[lyrics->verse_count++] = verse;
}

void sw_lyrics_follow(sw_player *p, uint32_t music, sw_moment when, const sw_spot *here)
{
    if (!here->context->lyrics) {
        return; /* nothing sings it */
    }
    read_text(p, music, here,
              (sw_verse){.line = line_of(p, here->context),
                         .name = at(p, music)->name,
                         .range = {0, SW_NO_INDEX},
                         .start = when,
                         .behind = (uint32_t)p->score->event_count,
                         .reached = (uint32_t)p->reached});
}

/* The context that an \addlyrics belongs to: of `\new Staff \new Voice { ... } \addlyrics ...` the voice; of
 * a variable the outermost one. SW_NO_INDEX when the music brings none. */
static uint32_t innermost_context(const sw_player *p, uint32_t music)
{
    if (at(p, music)->kind == SW_MUSIC_REFERENCE) {
        music = at(p, music)->first;
        return music != SW_NO_INDEX && at(p, music)->kind == SW_MUSIC_CONTEXT ? music : SW_NO_INDEX;
    }
    uint32_t found = SW_NO_INDEX;
    while (music != SW_NO_INDEX && at(p, music)->kind == SW_MUSIC_CONTEXT) {
        found = music;
        music = at(p, music)->first;
    }
    return found;
}

/* The line of an \addlyrics. */
static uint32_t add_verse_line(sw_player *p, uint32_t music, sw_moment when, const sw_spot *here)
{
    uint32_t line = add_line(p, 0, music);
    uint32_t with = sw_music_with(p->reader->reading, music);
    if (with != SW_NO_INDEX) {
        sw_spot beside = *here; /* the line is a context beside the staff */
        beside.context = sw_contexts_top(p->contexts);
        sw_player_begin_with(p, with, when, &beside);
        hold_all(p, line, with);
    }
    return line;
}

sw_moment sw_lyrics_add(sw_player *p, uint32_t music, sw_moment when, const sw_spot *here)
{
    uint32_t outer_sung = p->sung;
    sw_context *outer_context = p->sung_context;
    uint32_t from = (uint32_t)p->score->event_count;
    uint32_t reached = (uint32_t)p->reached;
    p->sung = innermost_context(p, music);
    p->sung_context = NULL;
    sw_moment end = sw_walk(p, music, when, here);
    bool own = p->sung == SW_NO_INDEX; /* music in the voice that is there already */
    sw_context *target = own ? sw_contexts_at(here->context, when) : p->sung_context;
    while (own && target->level != SW_LEVEL_VOICE && target->implicit != NULL) {
        target = target->implicit;
    }
    p->sung = outer_sung;
    p->sung_context = outer_context;
    for (uint32_t c = at(p, music)->next; c != SW_NO_INDEX && target != NULL; c = at(p, c)->next) {
        if (at(p, c)->kind != SW_MUSIC_ADD_LYRICS || (at(p, c)->flags & SW_MUSIC_NEW) == 0) {
            break;
        }
        uint32_t line = add_verse_line(p, c, when, here);
        read_text(p, c, here,
                  (sw_verse){.line = line,
                             .target = target,
                             .range = {own ? from : 0, own ? (uint32_t)p->score->event_count : SW_NO_INDEX},
                             .start = when,
                             .behind = (uint32_t)p->score->event_count,
                             .reached = reached});
    }
    return end;
}

/* From music to what is heard: goes through the music of one score with a clock and a context, and makes
 * events.
 *
 * A sequence passes the clock from item to item; simultaneous parts all begin at the same time and the whole
 * ends with the longest. Time is kept as main time and grace offset. Contexts (staves, voices) are made as
 * the compiler makes them: \new always, \context when there is none of that name, and implicitly when notes
 * come where no voice is yet. */
#include <stdlib.h>
#include <string.h>

#include "score/layouts.h"
#include "score/lyrics.h"
#include "score/player.h"

static const sw_music *at(const sw_player *p, uint32_t music)
{
    return &p->reader->reading->music[music];
}

uint32_t sw_player_frame(sw_player *p, uint32_t parent, uint32_t music, uint32_t pass)
{
    sw_score *score = p->score;
    score->frames = sw_grow(score->frames, score->frame_count, &score->frame_capacity, sizeof(sw_frame));
    score->frames[score->frame_count] = (sw_frame){parent, music, pass};
    return (uint32_t)score->frame_count++;
}

sw_moment sw_later(sw_moment when, sw_rational length, bool grace)
{
    if (grace) {
        when.grace = sw_rational_add(when.grace, length);
    } else {
        when.main = sw_rational_add(when.main, length);
    }
    return when;
}

/* ---- lengths ---- */

static sw_rational note_length(const sw_music *m, const sw_spot *here)
{
    sw_duration d = {m->log, m->dots, m->num, m->den};
    d.log = (int8_t)(d.log - here->tremolo_shift);
    d.dots = (uint8_t)(d.dots + here->tremolo_dots);
    sw_rational length = sw_duration_length(d);
    if (here->scale.num == here->scale.den) {
        return length;
    }
    return sw_rational_mul(length, here->scale);
}

sw_moment sw_walk_muted(sw_player *p, uint32_t music, const sw_spot *here, bool in_text)
{
    bool was_muted = p->muted;
    bool was_in_text = p->in_text;
    sw_played chord = p->last_chord;
    sw_played note = p->last_note;
    p->muted = true;
    p->in_text = in_text;
    sw_moment end = sw_walk(p, music, sw_moment_zero(), here);
    p->muted = was_muted;
    p->in_text = was_in_text;
    p->last_chord = chord;
    p->last_note = note;
    return end;
}

/* The length of some music. */
static sw_rational measure(sw_player *p, uint32_t music, const sw_spot *here)
{
    if (music == SW_NO_INDEX) {
        return sw_rational_zero();
    }
    sw_moment end = sw_walk_muted(p, music, here, false);
    return here->grace ? end.grace : end.main;
}

sw_rational sw_music_length(sw_reader *reader, uint32_t music)
{
    sw_score nothing = {0}; /* muted, only the frames of repeats go there */
    sw_player p = {.reader = reader,
                   .score = &nothing,
                   .last_chord = {SW_NO_INDEX, SW_NO_INDEX},
                   .last_note = {SW_NO_INDEX, SW_NO_INDEX},
                   .event_limit = SIZE_MAX,
                   .step_limit = sw_reader_bound(reader, SW_MAX_STEPS)};
    sw_spot here = {.scale = {1, 1}, .frame = SW_NO_INDEX};
    sw_rational length = measure(&p, music, &here);
    free(nothing.frames);
    return p.too_many ? (sw_rational){0, 0} : length;
}

/* ---- pitch ---- */

sw_pitch sw_player_note_pitch(const sw_player *p, uint32_t note, const sw_spot *here)
{
    uint32_t frame = here->repeated != NULL ? here->repeated->frame : here->frame;
    return sw_score_pitch(p->reader->reading, p->score, frame, at(p, note)->pitch);
}

/* ---- events ---- */

sw_event *sw_player_event(sw_player *p, sw_event_kind kind, uint32_t music, uint32_t chord, sw_moment when,
                          sw_rational length, const sw_spot *here)
{
    if (p->muted) {
        return NULL;
    }
    if (p->recording != NULL) {
        sw_listen_event(p, kind, music, chord, when, length, here);
        return NULL;
    }
    sw_score *score = p->score;
    if (score->event_count >= p->event_limit) {
        p->too_many = true;
        return NULL;
    }
    sw_context *voice =
        sw_contexts_voice(p->contexts, sw_contexts_at(here->context, when), kind == SW_EVENT_DRUM);
    score->events = sw_grow(score->events, score->event_count, &score->event_capacity, sizeof(sw_event));
    sw_event *event = &score->events[score->event_count++];
    *event = (sw_event){
        .onset = when.main,
        .duration = length,
        .grace_num = (int32_t)when.grace.num,
        .grace_den = when.grace.den == 0 ? 1 : (int32_t)when.grace.den,
        .music = music,
        .chord = chord,
        .frame = here->frame,
        .voice = sw_contexts_voice_index(p->contexts, voice),
        .kind = (uint8_t)kind,
        .flags = here->flags | (here->grace ? SW_EVENT_GRACE : 0u),
    };
    if (voice->silent) {
        event->flags |= SW_EVENT_HIDDEN;
    }
    if (voice->early != 0) {
        sw_player_settle_voice(p, voice);
    }
    if (!voice->named && kind != SW_EVENT_SKIP) {
        sw_contexts_name_staff(p->contexts, voice, here->frame);
    }
    if (kind == SW_EVENT_NOTE) {
        event->pitch = sw_player_note_pitch(p, music, here);
    }
    return event;
}

/* Plays the notes of a chord as if they were written at `written` (the chord itself, or the q that repeats
 * it). */
static void play_chord(sw_player *p, uint32_t chord, uint32_t written, sw_moment when, sw_rational length,
                       const sw_spot *here)
{
    for (uint32_t child = at(p, chord)->first; child != SW_NO_INDEX; child = at(p, child)->next) {
        uint32_t note = child;
        bool passes = true;
        while (at(p, note)->kind == SW_MUSIC_TAG && at(p, note)->first != SW_NO_INDEX) {
            passes = passes && sw_tag_filter_passes(here->filter, p->reader->reading, at(p, note)->list);
            note = at(p, note)->first;
        }
        uint8_t kind = at(p, note)->kind;
        if (!passes || (kind != SW_MUSIC_NOTE && kind != SW_MUSIC_DRUM)) {
            continue;
        }
        sw_spot inside = *here;
        inside.flags |= SW_EVENT_CHORD;
        sw_player_event(p, kind == SW_MUSIC_NOTE ? SW_EVENT_NOTE : SW_EVENT_DRUM, note, written, when, length,
                        &inside);
    }
}

static bool has_notes(const sw_player *p, uint32_t chord)
{
    for (uint32_t child = at(p, chord)->first; child != SW_NO_INDEX; child = at(p, child)->next) {
        if (at(p, child)->kind != SW_MUSIC_MARK) {
            return true;
        }
    }
    return false;
}

static void walk_setting(sw_player *p, uint32_t music, sw_moment when, const sw_spot *here)
{
    if (sw_listens(p)) {
        sw_listen_setting(p, music, when, here);
        return;
    }
    sw_player_setting(p, music, when, here);
    if (p->in_text || (!p->muted && here->context->lyrics)) {
        sw_lyrics_setting(p, music, when, here);
    }
}

/* ---- compounds ---- */

static sw_moment latest(sw_moment a, sw_moment b)
{
    int order = sw_rational_compare(a.main, b.main);
    if (order != 0) {
        return order > 0 ? a : b;
    }
    return sw_rational_compare(a.grace, b.grace) >= 0 ? a : b;
}

/* True when a node (or the music that it leads to) consists of grace notes only. */
static bool is_grace(const sw_player *p, uint32_t music)
{
    for (int steps = 0; music != SW_NO_INDEX && steps < 32; steps++) {
        const sw_music *m = at(p, music);
        if (m->kind == SW_MUSIC_GRACE) {
            return true;
        }
        if (m->kind != SW_MUSIC_REFERENCE && m->kind != SW_MUSIC_RELATIVE && m->kind != SW_MUSIC_FIXED &&
            m->kind != SW_MUSIC_TRANSPOSE && m->kind != SW_MUSIC_CALL && m->kind != SW_MUSIC_TAG &&
            m->kind != SW_MUSIC_SCALE) {
            return false;
        }
        music = m->first;
    }
    return false;
}

bool sw_takes_no_time(const sw_music *m)
{
    return m->kind == SW_MUSIC_EMPTY || m->kind == SW_MUSIC_ADD_LYRICS || m->kind >= SW_MUSIC_BAR_CHECK;
}

/* The same through variables and calls: `\x` for `x = \override ...`. */
static bool is_timeless(const sw_player *p, uint32_t music)
{
    for (int steps = 0; music != SW_NO_INDEX && steps < 32; steps++) {
        const sw_music *m = at(p, music);
        if (m->kind != SW_MUSIC_REFERENCE) {
            return sw_takes_no_time(m);
        }
        music = m->first;
    }
    return music == SW_NO_INDEX;
}

/* Grace notes directly behind one another (`\grace c8 \grace d8`) form one run before the main note. */
static sw_rational grace_run(sw_player *p, uint32_t music, const sw_spot *here)
{
    sw_rational total = sw_rational_zero();
    sw_spot inside = *here;
    inside.grace = true;
    for (; music != SW_NO_INDEX; music = at(p, music)->next) {
        if (is_timeless(p, music)) {
            continue;
        }
        if (!is_grace(p, music)) {
            break;
        }
        total = sw_rational_add(total, measure(p, music, &inside));
    }
    return total;
}

/* The music from here on that takes time, or is grace notes. */
static uint32_t next_timed(sw_player *p, uint32_t music)
{
    while (music != SW_NO_INDEX && is_timeless(p, music)) {
        music = at(p, music)->next;
    }
    return music;
}

sw_moment sw_walk_sequence(sw_player *p, uint32_t first, sw_moment when, const sw_spot *here)
{
    bool in_run = false; /* of grace notes, with what stands directly before them and between them */
    uint32_t timed = SW_NO_INDEX;
    bool passed = true;
    for (uint32_t child = first; child != SW_NO_INDEX; child = at(p, child)->next) {
        if (!here->grace && passed) {
            timed = next_timed(p, child);
            passed = false;
            if (timed == SW_NO_INDEX || !is_grace(p, timed)) {
                if (in_run) {
                    when.grace = sw_rational_zero();
                }
                in_run = false;
            } else if (!in_run) {
                when.grace = sw_rational_sub(sw_rational_zero(), grace_run(p, child, here));
                in_run = true;
            }
        }
        if (child != first) {
            p->reached = p->score->event_count;
            p->step++;
        }
        passed = child == timed;
        when = sw_walk_sung(p, child, when, here);
    }
    if (in_run) {
        when.grace = sw_rational_zero();
    }
    return when;
}

/* The grace offset at which some music begins. */
sw_rational sw_player_start(sw_player *p, uint32_t music, const sw_spot *here)
{
    if (music == SW_NO_INDEX || here->grace) {
        return sw_rational_zero();
    }
    if (is_grace(p, music)) {
        return sw_rational_sub(sw_rational_zero(), grace_run(p, music, here));
    }
    const sw_music *m = at(p, music);
    sw_rational start = sw_rational_zero();
    if (m->kind == SW_MUSIC_NOTE || m->kind == SW_MUSIC_CHORD) {
        return start;
    }
    for (uint32_t child = m->first; child != SW_NO_INDEX; child = at(p, child)->next) {
        if (!sw_takes_no_time(at(p, child))) {
            start = sw_rational_min(start, sw_player_start(p, child, here));
            if (m->kind != SW_MUSIC_SIMULTANEOUS) {
                break;
            }
        }
    }
    return start;
}

static sw_moment walk_simultaneous(sw_player *p, uint32_t first, sw_moment when, const sw_spot *here)
{
    sw_moment end = when;
    size_t reached = p->reached;
    uint32_t step = p->step;
    for (uint32_t child = first; child != SW_NO_INDEX; child = at(p, child)->next) {
        p->reached = reached;
        p->step = step;
        end = latest(end, sw_walk_sung(p, child, when, here));
    }
    return end;
}

/* Grace notes of their own, that no sequence has placed: they end at the main note. */
static sw_moment walk_grace(sw_player *p, uint32_t music, sw_moment when, const sw_spot *here)
{
    sw_spot inside = *here;
    inside.grace = true;
    inside.scale = here->scale;
    inside.among_graces = true;
    if (here->among_graces) { /* among grace notes they have no length of their own */
        uint32_t first = at(p, music)->first;
        bool list = first != SW_NO_INDEX && at(p, first)->kind == SW_MUSIC_SEQUENCE;
        walk_simultaneous(p, list ? at(p, first)->first : first, when, &inside);
        return when;
    }
    if (here->grace) { /* a run of grace notes is being measured */
        return sw_walk_sequence(p, at(p, music)->first, when, &inside);
    }
    if (sw_rational_is_zero(when.grace)) {
        when.grace = sw_rational_sub(sw_rational_zero(), measure(p, at(p, music)->first, &inside));
    }
    sw_listen_grace(p, music, when, here, true);
    sw_moment end = sw_walk_sequence(p, at(p, music)->first, when, &inside);
    sw_listen_grace(p, music, end, here, false);
    return (sw_moment){when.main, end.grace};
}

static sw_moment walk_after_grace(sw_player *p, uint32_t music, sw_moment when, const sw_spot *here)
{
    uint32_t main_note = at(p, music)->first;
    if (main_note == SW_NO_INDEX) {
        return when;
    }
    uint32_t graces = at(p, main_note)->next;
    sw_rational fraction = sw_rational_make(at(p, music)->num, at(p, music)->den);
    sw_moment end = sw_walk(p, main_note, when, here);
    if (graces != SW_NO_INDEX) {
        sw_rational length = sw_rational_sub(end.main, when.main);
        sw_spot inside = *here;
        inside.grace = true;
        sw_moment begin = {sw_rational_add(when.main, sw_rational_mul(length, fraction)), sw_rational_zero()};
        begin.grace = sw_rational_sub(sw_rational_zero(), measure(p, graces, &inside));
        sw_listen_moment(p, begin, here);
        sw_listen_moment(p, sw_walk(p, graces, begin, &inside), here);
    }
    return end;
}

static sw_moment walk_context(sw_player *p, uint32_t music, sw_moment when, const sw_spot *here)
{
    const sw_music *m = at(p, music);
    sw_spot inside = *here;
    if (p->recording != NULL) {
        inside.recorded = sw_recording_enter(p->recording, here->recorded, music);
    } else if (p->in_text) {
        inside.recorded = sw_lyrics_enter(p, music, here->recorded);
    } else if (!p->muted) {
        bool begins;
        inside.context =
            sw_contexts_enter(p->contexts, sw_contexts_at(here->context, when), music, here->frame, &begins);
        if (music == p->sung) {
            p->sung_context = inside.context;
        }
        uint32_t with = sw_music_with(p->reader->reading, music);
        if (begins && with != SW_NO_INDEX) {
            inside.context->with = with;
            sw_player_begin_with(p, with, when, &inside);
        }
    }
    sw_moment end = m->first == SW_NO_INDEX ? when : sw_walk_sung(p, m->first, when, &inside);
    if (!p->muted && p->recording == NULL) {
        sw_contexts_lived(p->contexts, inside.context, when, end);
    }
    return end;
}

/* A node that the walk goes into by a frame of its own. */
static uint32_t step_into(sw_player *p, uint32_t music, const sw_spot *here)
{
    return p->muted && !p->in_text ? here->frame : sw_player_frame(p, here->frame, music, 0);
}

sw_moment sw_walk_sung(sw_player *p, uint32_t music, sw_moment when, const sw_spot *here)
{
    uint32_t next = at(p, music)->next;
    bool is_sung = next != SW_NO_INDEX && at(p, next)->kind == SW_MUSIC_ADD_LYRICS &&
                   (at(p, next)->flags & SW_MUSIC_NEW) != 0 && !p->muted && p->recording == NULL;
    return is_sung ? sw_lyrics_add(p, music, when, here) : sw_walk(p, music, when, here);
}

sw_moment sw_walk(sw_player *p, uint32_t music, sw_moment when, const sw_spot *here)
{
    p->too_deep = p->too_deep || p->depth > SW_MAX_DEPTH;
    p->too_many = p->too_many || ++p->reader->steps > p->step_limit;
    if (p->depth > SW_MAX_DEPTH || p->too_many) {
        return when;
    }
    p->depth++;
    const sw_music *m = at(p, music);
    sw_moment end = when;
    sw_spot inside = *here;
    switch ((sw_music_kind)m->kind) {
    case SW_MUSIC_NOTE:
    case SW_MUSIC_DRUM:
    case SW_MUSIC_REST:
    case SW_MUSIC_FULL_REST:
    case SW_MUSIC_SKIP: {
        static const sw_event_kind kinds[] = {
            [SW_MUSIC_NOTE] = SW_EVENT_NOTE, [SW_MUSIC_DRUM] = SW_EVENT_DRUM,
            [SW_MUSIC_REST] = SW_EVENT_REST, [SW_MUSIC_FULL_REST] = SW_EVENT_FULL_REST,
            [SW_MUSIC_SKIP] = SW_EVENT_SKIP,
        };
        sw_rational length = note_length(m, here);
        bool as_rest = (m->flags & SW_MUSIC_AS_REST) != 0;
        sw_player_event(p, as_rest ? SW_EVENT_REST : kinds[m->kind], music, music, when, length, here);
        sw_listen_marks(p, music, when, here);
        if (m->kind == SW_MUSIC_NOTE || m->kind == SW_MUSIC_DRUM) {
            p->last_note = (sw_played){music, here->frame};
        }
        end = sw_later(when, length, here->grace);
        if (p->in_text) {
            sw_lyrics_pause(p, music, when, end, here);
        }
        break;
    }
    case SW_MUSIC_CHORD: {
        sw_listen_marks(p, music, when, here);
        if (m->num == 0) { /* <> only carries marks */
            sw_player_setting(p, music, when, here);
            break;
        }
        sw_rational length = note_length(m, here);
        if (has_notes(p, music)) {
            p->last_chord = (sw_played){music, here->frame};
            p->last_note = p->last_chord;
        }
        play_chord(p, music, music, when, length, here);
        end = sw_later(when, length, here->grace);
        break;
    }
    case SW_MUSIC_REPEAT_CHORD:
    case SW_MUSIC_BARE: {
        sw_played played = m->kind == SW_MUSIC_BARE ? p->last_note : p->last_chord;
        uint32_t source = played.music;
        inside.repeated = &played;
        sw_rational length = note_length(m, here);
        sw_listen_marks(p, music, when, here);
        if (source != SW_NO_INDEX) {
            if (at(p, source)->kind == SW_MUSIC_CHORD) {
                play_chord(p, source, music, when, length, &inside);
                p->last_note = played;
            } else {
                sw_player_event(p, at(p, source)->kind == SW_MUSIC_DRUM ? SW_EVENT_DRUM : SW_EVENT_NOTE,
                                source, music, when, length, &inside);
            }
        } else if (m->kind == SW_MUSIC_BARE) {
            sw_player_event(p, SW_EVENT_DRUM, music, music, when, length, here);
        }
        end = sw_later(when, length, here->grace);
        break;
    }
    case SW_MUSIC_LYRIC:
        end = sw_later(when, note_length(m, here), here->grace);
        if (p->in_text || (!p->muted && p->recording == NULL && here->context->lyrics)) {
            sw_lyrics_syllable(p, music, when, end, here);
        }
        break;
    case SW_MUSIC_SPAN:
        end = sw_later(when, measure(p, m->reference, here), here->grace);
        if (p->in_text) {
            sw_lyrics_pause(p, music, when, end, here);
        }
        break;
    case SW_MUSIC_SEQUENCE:
        end = sw_walk_sequence(p, m->first, when, here);
        break;
    case SW_MUSIC_CALL:
        inside.flags |= (m->flags & SW_MUSIC_AS_REST) != 0 ? SW_EVENT_HIDDEN : 0u;
        end = sw_walk_sequence(p, m->first, when, &inside);
        break;
    case SW_MUSIC_UNCERTAIN:
        inside.flags |= (m->flags & SW_MUSIC_NEW) == 0 ? SW_EVENT_UNCERTAIN : 0u;
        end = sw_walk_sequence(p, m->first, when, &inside);
        break;
    case SW_MUSIC_SIMULTANEOUS:
        end = walk_simultaneous(p, m->first, when, here);
        break;
    case SW_MUSIC_PART_COMBINE:
        if (sw_listens(p)) {
            inside.recorded = SW_NO_INDEX; /* voices of its own */
        }
        end = p->muted || p->recording != NULL ? walk_simultaneous(p, m->first, when, &inside)
                                               : sw_walk_part_combine(p, music, when, here);
        break;
    case SW_MUSIC_CONTEXT:
        end = walk_context(p, music, when, here);
        break;
    case SW_MUSIC_CHANGE:
        if (!p->muted && p->recording == NULL) {
            sw_contexts_change(p->contexts, sw_contexts_at(here->context, when), m->name, m->name2);
        }
        break;
    case SW_MUSIC_SCALE:
        inside.scale = sw_rational_mul(here->scale, sw_rational_make(m->num, m->den));
        inside.frame = step_into(p, music, here);
        end = sw_walk_sequence(p, m->first, when, &inside);
        sw_listen_scale(p, music, when, end, here);
        break;
    case SW_MUSIC_GRACE:
        end = walk_grace(p, music, when, here);
        break;
    case SW_MUSIC_AFTER_GRACE:
        end = walk_after_grace(p, music, when, here);
        break;
    case SW_MUSIC_REPEAT:
        end = sw_walk_repeat(p, music, when, here);
        break;
    case SW_MUSIC_ALTERNATIVES:
        end = sw_walk_alternatives(p, music, when, here);
        break;
    case SW_MUSIC_KILL_CUES:
        inside.no_cues = true;
        end = sw_walk_sequence(p, m->first, when, &inside);
        break;
    case SW_MUSIC_UNFOLD:
        inside.unfold |= sw_unfold_mask(sw_reading_name(p->reader->reading, m->list));
        end = sw_walk_sequence(p, m->first, when, &inside);
        break;
    case SW_MUSIC_TRANSPOSE:
    case SW_MUSIC_FIXED:
    case SW_MUSIC_REFERENCE:
    case SW_MUSIC_RELATIVE:
        if (m->first != SW_NO_INDEX) {
            inside.frame = step_into(p, music, here);
            end = sw_walk_sung(p, m->first, when, &inside);
        }
        break;
    case SW_MUSIC_CUE:
    case SW_MUSIC_QUOTE:
        end = sw_walk_quote(p, music, when, here);
        break;
    case SW_MUSIC_TAG:
        if (sw_tag_filter_passes(here->filter, p->reader->reading, m->list)) {
            end = sw_walk_sequence(p, m->first, when, here);
        }
        break;
    case SW_MUSIC_KEEP:
    case SW_MUSIC_DROP: {
        sw_tag_filter filter = sw_tag_filter_of(m, here->filter);
        inside.filter = &filter;
        end = sw_walk_sequence(p, m->first, when, &inside);
        break;
    }
    case SW_MUSIC_VOLTA:
        if (sw_volta_is_heard(p, music, here)) {
            end = sw_walk_sequence(p, m->first, when, here);
        }
        break;
    case SW_MUSIC_AUTO_CHANGE:
        end = p->muted || p->recording != NULL ? sw_walk_sequence(p, m->first, when, here)
                                               : sw_walk_auto_change(p, music, when, here);
        break;
    case SW_MUSIC_ADD_LYRICS:
        if (!p->muted && p->recording == NULL && (m->flags & SW_MUSIC_NEW) == 0) {
            sw_lyrics_follow(p, music, when, here);
        }
        break;
    case SW_MUSIC_EMPTY:
    case SW_MUSIC_MARK:
        break;
    default:
        walk_setting(p, music, when, here);
        break;
    }
    p->depth--;
    return end;
}

/* How many events the next score may have. */
static size_t events_left(const sw_reader *reader)
{
    size_t bound = sw_reader_bound(reader, SW_MAX_EVENTS);
    return reader->events < bound ? bound - reader->events : 0;
}

void sw_play(sw_reader *reader, const sw_pending *pending, sw_score *score)
{
    sw_player p = {
        .reader = reader,
        .score = score,
        .contexts = sw_contexts_new(reader, score),
        .quote_count = pending->quote_count,
        .last_chord = {SW_NO_INDEX, SW_NO_INDEX},
        .last_note = {SW_NO_INDEX, SW_NO_INDEX},
        .sung = SW_NO_INDEX,
        .event_limit = events_left(reader),
        .step_limit = sw_reader_bound(reader, SW_MAX_STEPS),
    };
    sw_spot top = {
        .context = sw_contexts_top(p.contexts),
        .scale = {1, 1},
        .frame = SW_NO_INDEX,
    };
    sw_moment begin = {sw_rational_zero(), sw_rational_zero()};
    sw_moment end = sw_walk_sung(&p, pending->music, begin, &top);
    score->length = end.main;
    reader->events += score->event_count;
    if (p.too_many) {
        sw_findings_add(&reader->reading->findings, SW_ERROR, "unresolved", pending->file, pending->start,
                        pending->end,
                        "the score is endless, or longer than any real one, when its repeats and variables "
                        "are written out; the "
                        "rest is not read");
    }
    if (p.too_deep) {
        sw_findings_add(
            &reader->reading->findings, SW_ERROR, "unresolved", pending->file, pending->start, pending->end,
            "variables and blocks are used more than %d deep; what lies deeper is not heard", SW_MAX_DEPTH);
    }
    sw_player_settle_settings(&p);
    sw_quotes_end(&p);
    if (p.lyrics != NULL) {
        sw_lyrics_align(&p);
    }
    score->first_number = sw_layout_first_number(&p);
    sw_contexts_free(p.contexts);
    free(p.layouts);
    sw_sort_events(score);
}

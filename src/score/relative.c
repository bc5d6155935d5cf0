/* Octaves in \relative: each pitch lies within a fourth of the one before it in the order of the text.
 *
 * The pitches are resolved in the music nodes themselves. A variable's music is shared by all its uses, so
 * where open pitches are reached through a variable, that use gets a copy of its own first. What is already
 * settled (an inner \relative, \fixed, \transpose) is passed over and does not move the reference. */
#include "score/reader.h"
#include "score/tags.h"

typedef struct state {
    sw_reader *reader;
    sw_pitch last;
    uint32_t note; /* the note that `last` is the pitch of, SW_NO_INDEX for the start pitch */
    const sw_tag_filter *filter;
    uint32_t depth;
} state;

static void resolve_note(state *s, uint32_t music)
{
    sw_music *m = sw_music_at(s->reader, music);
    m->pitch = sw_pitch_relative(s->last, m->pitch, m->octave_marks);
    if ((m->flags & SW_MUSIC_CHECKED) != 0 && m->pitch.octave != m->check) {
        m->pitch.octave = m->check; /* the compiler warns and follows the check */
    }
    m->reference = s->note;
    m->flags = (uint8_t)((m->flags | SW_MUSIC_RELATIVE_ENTRY) & ~SW_MUSIC_FREE);
    s->last = m->pitch;
    s->note = music;
}

static void resolve(state *s, uint32_t music);

static void resolve_children(state *s, uint32_t music)
{
    for (uint32_t child = sw_music_at(s->reader, music)->first; child != SW_NO_INDEX;
         child = sw_music_at(s->reader, child)->next) {
        resolve(s, child);
    }
}

/* In a chord each note refers to the one before it; what follows the chord refers to its first. */
static void resolve_chord(state *s, uint32_t chord)
{
    bool first = true;
    sw_pitch first_pitch = s->last;
    uint32_t first_note = s->note;
    for (uint32_t child = sw_music_at(s->reader, chord)->first; child != SW_NO_INDEX;
         child = sw_music_at(s->reader, child)->next) {
        if (sw_music_at(s->reader, child)->kind == SW_MUSIC_MARK) {
            continue;
        }
        resolve(s, child);
        if (first) {
            first_pitch = s->last;
            first_note = s->note;
            first = false;
        }
    }
    s->last = first_pitch;
    s->note = first_note;
}

static void resolve(state *s, uint32_t music)
{
    sw_music *m = sw_music_at(s->reader, music);
    if (s->depth > SW_MAX_DEPTH) {
        return;
    }
    s->depth++;
    switch ((sw_music_kind)m->kind) {
    case SW_MUSIC_NOTE:
        if ((m->flags & SW_MUSIC_FREE) != 0) {
            resolve_note(s, music);
        }
        break;
    case SW_MUSIC_CHORD:
        resolve_chord(s, music);
        break;
    case SW_MUSIC_OCTAVE_CHECK: {
        if ((m->flags & SW_MUSIC_CHECKED) == 0) {
            s->last = m->pitch;
            s->note = music;
            break;
        }
        /* The last note is taken for as many octaves off as the check finds; the compiler warns. */
        sw_pitch near = sw_pitch_relative(s->last, m->pitch, 0);
        if (near.octave != m->pitch.octave) {
            s->last.octave = (int8_t)(s->last.octave + m->pitch.octave - near.octave);
            s->note = music;
        }
        break;
    }
    case SW_MUSIC_REFERENCE:
        if (m->first != SW_NO_INDEX && (sw_music_at(s->reader, m->first)->flags & SW_MUSIC_FREE) != 0) {
            uint32_t copy = sw_music_copy(s->reader, m->first);
            sw_music_at(s->reader, music)->first = copy;
            resolve(s, copy);
        }
        break;
    case SW_MUSIC_RELATIVE:
    case SW_MUSIC_FIXED:
    case SW_MUSIC_TRANSPOSE:
        break;
    case SW_MUSIC_TAG:
        if (sw_tag_filter_passes(s->filter, s->reader->reading, m->list)) {
            resolve_children(s, music);
        }
        break;
    case SW_MUSIC_KEEP:
    case SW_MUSIC_DROP: {
        sw_tag_filter inner = sw_tag_filter_of(m, s->filter);
        s->filter = &inner;
        resolve_children(s, music);
        s->filter = inner.outer;
        break;
    }
    default:
        if ((m->flags & SW_MUSIC_FREE) != 0) {
            resolve_children(s, music);
        }
        break;
    }
    s->depth--;
    m = sw_music_at(s->reader, music);
    m->flags &= (uint8_t)~SW_MUSIC_FREE;
}

sw_pitch sw_relative(sw_reader *reader, uint32_t music, sw_pitch start)
{
    state s = {.reader = reader, .last = start, .note = SW_NO_INDEX};
    resolve(&s, music);
    return s.last;
}

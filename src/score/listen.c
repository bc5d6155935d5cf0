/* Listening: what the walk does instead of making events when some music is to be recorded. */
#include "score/player.h"

/* Repeats written out inside one another can be endless; no real part comes near this. */
enum { MAX_HEARD = 1000000 };

static const sw_music *at(const sw_player *p, uint32_t music)
{
    return &p->reader->reading->music[music];
}

static bool begins_with(const sw_player *p, uint32_t music, const char *command)
{
    return sw_slice_starts(sw_music_slice(p->reader->reading, music), command);
}

bool sw_listens(const sw_player *p)
{
    return p->recording != NULL && !p->muted;
}

static sw_heard heard_at(sw_moment when, const sw_spot *here)
{
    return (sw_heard){.when = when,
                      .length = sw_rational_zero(),
                      .factor = here->scale,
                      .voice = here->recorded,
                      .music = SW_NO_INDEX,
                      .chord = SW_NO_INDEX,
                      .frame = here->frame};
}

void sw_listen_event(sw_player *p, sw_event_kind kind, uint32_t music, uint32_t chord, sw_moment when,
                     sw_rational length, const sw_spot *here)
{
    static const sw_heard_kind kinds[] = {
        [SW_EVENT_NOTE] = SW_HEARD_NOTE, [SW_EVENT_DRUM] = SW_HEARD_DRUM,
        [SW_EVENT_REST] = SW_HEARD_REST, [SW_EVENT_FULL_REST] = SW_HEARD_FULL_REST,
        [SW_EVENT_SKIP] = SW_HEARD_SKIP,
    };
    if (kind == SW_EVENT_SKIP && begins_with(p, music, "\\skip")) {
        return; /* unlike `s`, no event */
    }
    if (p->recording->count >= MAX_HEARD) {
        p->too_many = true;
        return;
    }
    const sw_music *value = at(p, chord);
    sw_heard heard = heard_at(when, here);
    heard.kind = (uint8_t)kinds[kind];
    heard.length = length;
    heard.factor = sw_rational_mul(sw_rational_make(value->num, value->den), here->scale);
    heard.log = (int8_t)(value->log - here->tremolo_shift);
    heard.dots = (uint8_t)(value->dots + here->tremolo_dots);
    heard.music = music;
    heard.chord = chord;
    heard.flags = here->flags | (here->grace ? SW_EVENT_GRACE : 0u);
    if (kind == SW_EVENT_NOTE) {
        heard.pitch = sw_player_note_pitch(p, music, here);
    }
    sw_recording_add(p->recording, &heard);
}

void sw_listen_marks(sw_player *p, uint32_t music, sw_moment when, const sw_spot *here)
{
    if (sw_listens(p)) {
        sw_heard heard = heard_at(when, here);
        sw_recording_marks(p->recording, &heard, music);
    }
}

void sw_listen_setting(sw_player *p, uint32_t music, sw_moment when, const sw_spot *here)
{
    sw_heard heard = heard_at(when, here);
    heard.pitch = at(p, music)->pitch; /* a \transposition is not transposed */
    sw_recording_setting(p->recording, &heard, music);
}

void sw_listen_moment(sw_player *p, sw_moment when, const sw_spot *here)
{
    if (sw_listens(p)) {
        sw_heard heard = heard_at(when, here);
        sw_recording_touch(p->recording, &heard);
    }
}

void sw_listen_grace(sw_player *p, uint32_t music, sw_moment when, const sw_spot *here, bool start)
{
    sw_listen_moment(p, when, here);
    if (sw_listens(p) &&
        (begins_with(p, music, "\\appoggiatura") || begins_with(p, music, "\\acciaccatura"))) {
        sw_heard heard = heard_at(when, here);
        sw_recording_span(p->recording, &heard, SW_SPAN_SLUR, start);
    }
}

void sw_listen_scale(sw_player *p, uint32_t music, sw_moment begin, sw_moment end, const sw_spot *here)
{
    if (sw_listens(p) && !begins_with(p, music, "\\scale")) {
        sw_listen_moment(p, begin, here);
        sw_listen_moment(p, end, here);
    }
}

sw_recording *sw_listen(sw_player *p, uint32_t music, uint32_t id)
{
    sw_player listener = *p;
    listener.recording = sw_recording_new(p->reader, id);
    listener.muted = false;
    sw_spot top = {.scale = {1, 1}, .frame = SW_NO_INDEX};
    sw_recording_end(listener.recording, sw_walk(&listener, music, sw_moment_zero(), &top));
    p->too_many = listener.too_many;
    p->too_deep = listener.too_deep;
    return listener.recording;
}

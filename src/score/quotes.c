/* Quotes and cues: \quoteDuring, \cueDuring and their kin play, beside some music, what another part plays
 * at the same time of the score.
 *
 * The quoted music is listened to once a score, by itself, from the beginning of the score on. It is the
 * first context in it that hears anything which is quoted. At each quote those of its events are played that
 * begin within the music beside it, at their own places in the source. What began before is not heard.
 *
 * A quoted pitch is moved from the quoted instrument's \transposition to that of the staff it is quoted on.
 * The latter may stand in music that is played later in the walk, so it is settled at the end of the score.
 */
#include <stdlib.h>

#include "score/player.h"

/* Some quoted music, listened to. */
typedef struct source {
    uint32_t music;
    sw_recording *recording;
    uint32_t voice;        /* the context in the recording that is quoted */
    uint32_t frames_first; /* the score's frames that the listening made ... */
    uint32_t frames_end;
    uint32_t *copies; /* ... and for each its copy below the quote that is being played, SW_NO_INDEX */
} source;

/* An event whose pitch still has to be moved. */
typedef struct unsettled {
    size_t event;
    sw_pitch sounding; /* what has been moved to concert pitch */
} unsettled;

typedef struct sw_quotes {
    source *sources;
    size_t source_count;
    size_t source_capacity;
    unsettled *unsettled;
    size_t unsettled_count;
    size_t unsettled_capacity;
} sw_quotes;

static const sw_music *at(const sw_player *p, uint32_t music)
{
    return &p->reader->reading->music[music];
}

/* ---- sources ---- */

/* What \addQuote has defined under a name before the score was read; SW_NO_INDEX when nothing. */
static uint32_t definition(const sw_player *p, uint32_t name)
{
    for (size_t i = p->quote_count; i-- > 0;) {
        if (p->reader->quotes[i].name == name) {
            return p->reader->quotes[i].music;
        }
    }
    return SW_NO_INDEX;
}

static uint32_t first_voice_heard(const sw_recording *recording)
{
    uint32_t first = SW_NO_INDEX;
    for (size_t i = 0; i < recording->count; i++) {
        if (recording->heard[i].kind != SW_HEARD_TRANSPOSITION && recording->heard[i].voice < first) {
            first = recording->heard[i].voice;
        }
    }
    return first;
}

static source *find_source(sw_player *p, uint32_t music)
{
    if (p->quotes == NULL) {
        p->quotes = sw_alloc_zero(1, sizeof *p->quotes);
    }
    sw_quotes *quotes = p->quotes;
    for (size_t i = 0; i < quotes->source_count; i++) {
        if (quotes->sources[i].music == music) {
            return &quotes->sources[i];
        }
    }
    uint32_t first = (uint32_t)p->score->frame_count;
    sw_recording *recording = sw_listen(p, music, 0);
    uint32_t end = (uint32_t)p->score->frame_count;
    quotes->sources =
        sw_grow(quotes->sources, quotes->source_count, &quotes->source_capacity, sizeof *quotes->sources);
    source *made = &quotes->sources[quotes->source_count++];
    *made = (source){
        .music = music,
        .recording = recording,
        .voice = first_voice_heard(recording),
        .frames_first = first,
        .frames_end = end,
        .copies = sw_alloc((end - first + 1) * sizeof *made->copies),
    };
    return made;
}

/* ---- playing ---- */

/* The frame of something quoted, as reached through the quote. */
static uint32_t copy_frame(sw_player *p, source *s, uint32_t frame, uint32_t quote_frame)
{
    if (frame == SW_NO_INDEX) {
        return quote_frame;
    }
    uint32_t *copy = &s->copies[frame - s->frames_first];
    if (*copy == SW_NO_INDEX) {
        sw_frame original = p->score->frames[frame];
        uint32_t parent = copy_frame(p, s, original.parent, quote_frame);
        *copy = sw_player_frame(p, parent, original.music, original.pass);
    }
    return *copy;
}

static void forget_copies(source *s)
{
    for (uint32_t i = 0; i < s->frames_end - s->frames_first; i++) {
        s->copies[i] = SW_NO_INDEX;
    }
}

static void settle_later(sw_player *p, const sw_event *event, sw_pitch sounding)
{
    sw_quotes *quotes = p->quotes;
    quotes->unsettled = sw_grow(quotes->unsettled, quotes->unsettled_count, &quotes->unsettled_capacity,
                                sizeof *quotes->unsettled);
    quotes->unsettled[quotes->unsettled_count++] = (unsettled){(size_t)(event - p->score->events), sounding};
}

static void play_one(sw_player *p, uint32_t quote, const sw_heard *heard, sw_pitch transposition,
                     const sw_spot *there)
{
    static const sw_event_kind kinds[] = {
        [SW_HEARD_NOTE] = SW_EVENT_NOTE,
        [SW_HEARD_DRUM] = SW_EVENT_DRUM,
        [SW_HEARD_REST] = SW_EVENT_REST,
        [SW_HEARD_FULL_REST] = SW_EVENT_FULL_REST,
    };
    sw_event *event =
        sw_player_event(p, kinds[heard->kind], heard->music, heard->chord, heard->when, heard->length, there);
    if (event == NULL || heard->kind != SW_HEARD_NOTE) {
        return;
    }
    const sw_music *m = at(p, quote);
    sw_pitch sounding = sw_pitch_transpose(heard->pitch, transposition);
    if ((m->flags & SW_MUSIC_PITCHED) != 0) { /* \transposedCueDuring says where to */
        event->pitch = sw_pitch_transpose(
            sounding, sw_score_pitch(p->reader->reading, p->score, there->frame, m->pitch));
    } else {
        event->pitch = sounding;
        settle_later(p, event, sounding);
    }
}

/* Plays what begins in the source from `begin` up to the main time `end`. */
static void play_span(sw_player *p, uint32_t quote, source *s, sw_moment begin, sw_rational end,
                      const sw_spot *here)
{
    bool cue = at(p, quote)->kind == SW_MUSIC_CUE;
    const sw_recording *recording = s->recording;
    sw_pitch transposition = {0, 0, 0};
    size_t told = 0; /* transpositions before this one are known */
    sw_spot there = *here;
    there.grace = false;
    uint32_t quote_frame = here->frame;
    forget_copies(s);
    for (size_t i = 0; i < recording->count; i++) {
        const sw_heard *heard = &recording->heard[i];
        if (sw_rational_compare(heard->when.main, end) >= 0) {
            break;
        }
        if (heard->voice != s->voice || heard->kind > SW_HEARD_FULL_REST ||
            (cue && heard->kind == SW_HEARD_FULL_REST) || sw_moment_compare(heard->when, begin) < 0) {
            continue;
        }
        for (; told < recording->count && sw_moment_compare(recording->heard[told].when, heard->when) <= 0;
             told++) {
            if (recording->heard[told].kind == SW_HEARD_TRANSPOSITION) {
                transposition = recording->heard[told].pitch;
            }
        }
        there.frame = copy_frame(p, s, heard->frame, quote_frame);
        there.flags = here->flags | heard->flags | SW_EVENT_CUE;
        play_one(p, quote, heard, transposition, &there);
    }
}

static void report_missing(sw_player *p, uint32_t quote)
{
    const sw_music *m = at(p, quote);
    sw_findings *findings = &p->reader->reading->findings;
    for (size_t i = 0; i < findings->count; i++) {
        if (findings->items[i].file == m->file && findings->items[i].start == m->start) {
            return; /* already said in another pass or score */
        }
    }
    sw_findings_add(findings, SW_WARNING, "unresolved", m->file, m->start, m->end,
                    "there is no \\addQuote \"%s\" before this score; nothing is quoted",
                    sw_reading_name(p->reader->reading, m->name));
}

sw_moment sw_walk_quote(sw_player *p, uint32_t music, sw_moment when, const sw_spot *here)
{
    const sw_music *m = at(p, music);
    if (m->first == SW_NO_INDEX) {
        return when;
    }
    if (p->muted || p->recording != NULL || (here->no_cues && m->kind == SW_MUSIC_CUE)) {
        return sw_walk(p, m->first, when, here);
    }
    sw_spot inside = *here;
    inside.frame = sw_player_frame(p, here->frame, music, 0);
    sw_rational grace = sw_player_start(p, m->first, here);
    sw_moment begin = when;
    if (sw_rational_compare(grace, begin.grace) < 0) {
        begin.grace = grace;
    }
    sw_moment end = sw_walk(p, m->first, when, &inside);
    uint32_t quoted = definition(p, m->name);
    if (quoted == SW_NO_INDEX) {
        report_missing(p, music);
        return end;
    }
    inside.context = sw_contexts_at(here->context, when);
    if (m->kind == SW_MUSIC_CUE) {
        sw_context *staff = sw_contexts_staff(p->contexts, inside.context, false);
        inside.context = sw_contexts_named(p->contexts, staff, "CueVoice", "cue");
    }
    play_span(p, music, find_source(p, quoted), begin, end.main, &inside);
    return end;
}

/* ---- at the end of the score ---- */

/* The \transposition in force on a staff at a moment. */
static sw_pitch transposition_at(const sw_player *p, uint32_t staff, sw_rational onset)
{
    const sw_score *score = p->score;
    sw_pitch pitch = {0, 0, 0};
    sw_rational latest = sw_rational_make(-1, 1);
    for (size_t i = 0; i < score->setting_count; i++) {
        const sw_setting *setting = &score->settings[i];
        if (at(p, setting->music)->kind == SW_MUSIC_TRANSPOSITION &&
            (setting->staff == staff || setting->staff == SW_NO_INDEX) &&
            sw_rational_compare(setting->onset, onset) <= 0 &&
            sw_rational_compare(setting->onset, latest) >= 0) {
            latest = setting->onset;
            pitch = setting->pitch;
        }
    }
    return pitch;
}

void sw_quotes_end(sw_player *p)
{
    static const sw_pitch middle_c = {0, 0, 0};
    sw_quotes *quotes = p->quotes;
    if (quotes == NULL) {
        return;
    }
    for (size_t i = 0; i < quotes->unsettled_count; i++) {
        const unsettled *u = &quotes->unsettled[i];
        sw_event *event = &p->score->events[u->event];
        uint32_t staff = p->score->voices[event->voice].staff;
        sw_pitch own = transposition_at(p, staff, event->onset);
        event->pitch = sw_pitch_transpose(u->sounding, sw_pitch_interval(own, middle_c));
    }
    for (size_t i = 0; i < quotes->source_count; i++) {
        sw_recording_free(quotes->sources[i].recording);
        free(quotes->sources[i].copies);
    }
    free(quotes->sources);
    free(quotes->unsettled);
    free(quotes);
    p->quotes = NULL;
}

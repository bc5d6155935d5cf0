/* Repeats of every kind: written out, or heard once. */
#include <stdlib.h>
#include <string.h>

#include "score/player.h"

static const sw_music *at(const sw_player *p, uint32_t music)
{
    return &p->reader->reading->music[music];
}

static bool list_has_number(const char *list, uint32_t number)
{
    for (const char *c = list; *c != '\0';) {
        char *end;
        unsigned long n = strtoul(c, &end, 10);
        if (end == c) {
            c++;
            continue;
        }
        if (n == number) {
            return true;
        }
        c = end;
    }
    return false;
}

/* The alternative for a pass: where \volta says which, that one; otherwise the first ones are for all passes
 * but the last ones. */
static uint32_t alternative_for(const sw_player *p, uint32_t alternatives, uint32_t pass, uint32_t times)
{
    uint32_t count = 0;
    for (uint32_t c = at(p, alternatives)->first; c != SW_NO_INDEX; c = at(p, c)->next) {
        if (at(p, c)->kind == SW_MUSIC_VOLTA &&
            list_has_number(sw_reading_name(p->reader->reading, at(p, c)->list), pass)) {
            return c;
        }
        count++;
    }
    if (count == 0) {
        return SW_NO_INDEX;
    }
    uint32_t extra = times > count ? times - count : 0;
    uint32_t wanted = pass > extra ? pass - extra : 1;
    uint32_t c = at(p, alternatives)->first;
    for (uint32_t n = 1; n < wanted && at(p, c)->next != SW_NO_INDEX; n++) {
        c = at(p, c)->next;
    }
    return c;
}

static sw_moment walk_unfolded(sw_player *p, uint32_t music, sw_moment when, const sw_spot *here)
{
    const sw_music *m = at(p, music);
    uint32_t times = m->num > 0 ? (uint32_t)m->num : 1;
    uint32_t body = m->first;
    uint32_t alternatives = body == SW_NO_INDEX ? SW_NO_INDEX : at(p, body)->next;
    sw_played chord = p->last_chord;
    sw_played note = p->last_note;
    for (uint32_t pass = 1; pass <= times && body != SW_NO_INDEX && !p->too_many; pass++) {
        sw_spot inside = *here;
        inside.pass = pass;
        inside.frame = sw_player_frame(p, here->frame, music, pass - 1);
        p->last_chord = chord; /* q means the same in each pass */
        p->last_note = note;
        when = sw_walk(p, body, when, &inside);
        if (alternatives != SW_NO_INDEX) {
            uint32_t chosen = alternative_for(p, alternatives, pass, times);
            if (chosen != SW_NO_INDEX) {
                when = sw_walk(p, chosen, when, &inside);
            }
        }
    }
    return when;
}

/* `\repeat tremolo 4 { c16 e }`: each note is written with the value of the whole figure and sounds its share
 * of it; the arithmetic with dots is that of the language (note values are shifted by powers of two, a dot is
 * added where the number of strokes has two bits). */
static sw_moment walk_tremolo(sw_player *p, uint32_t music, sw_moment when, const sw_spot *here)
{
    const sw_music *m = at(p, music);
    uint32_t body = m->first;
    if (body == SW_NO_INDEX) {
        return when;
    }
    uint32_t count = 0;
    uint32_t inner = body;
    while (at(p, inner)->kind == SW_MUSIC_RELATIVE || at(p, inner)->kind == SW_MUSIC_REFERENCE ||
           at(p, inner)->kind == SW_MUSIC_FIXED || at(p, inner)->kind == SW_MUSIC_TRANSPOSE) {
        if (at(p, inner)->first == SW_NO_INDEX) {
            break;
        }
        inner = at(p, inner)->first;
    }
    bool silent = false; /* rests and skips in brackets are not repeated at all: so the compiler has it */
    if (at(p, inner)->kind == SW_MUSIC_SEQUENCE) {
        silent = true;
        for (uint32_t c = at(p, inner)->first; c != SW_NO_INDEX; c = at(p, c)->next) {
            uint8_t kind = at(p, c)->kind;
            count += !sw_takes_no_time(at(p, c));
            silent = silent && (sw_takes_no_time(at(p, c)) || kind == SW_MUSIC_REST ||
                                kind == SW_MUSIC_FULL_REST || kind == SW_MUSIC_SKIP);
        }
    }
    if (silent) {
        return sw_walk(p, body, when, here);
    }
    if (count == 0) {
        count = 1;
    }
    uint32_t strokes = (uint32_t)m->num * count;
    int dots = __builtin_popcount(strokes) - 1;
    int64_t multiple = ((int64_t)strokes << dots) / (((int64_t)2 << dots) - 1);
    int shift = 0;
    while (((int64_t)2 << shift) <= multiple) {
        shift++;
    }
    sw_spot inside = *here;
    inside.pass = 0;
    inside.tremolo_shift = (int8_t)(here->tremolo_shift + shift);
    inside.tremolo_dots = (uint8_t)(here->tremolo_dots + dots);
    inside.scale = sw_rational_mul(here->scale, sw_rational_make(1, count));
    inside.frame = sw_player_frame(p, here->frame, music, 0);
    sw_moment end = sw_walk(p, body, when, &inside);
    if (count > 1) {
        sw_listen_moment(p, when, here);
        sw_listen_moment(p, end, here);
    }
    return end;
}

static const char *const foldable[] = {"volta", "segno", "percent", "tremolo"};

uint8_t sw_unfold_mask(const char *kinds)
{
    unsigned mask = 0;
    for (size_t i = 0; i < sizeof foldable / sizeof foldable[0]; i++) {
        mask |= *kinds == '\0' || sw_tags_count(kinds, foldable[i]) > 0 ? 1u << i : 0u;
    }
    return (uint8_t)mask;
}

static bool is_unfolded(const char *kind, const sw_spot *here)
{
    if (strcmp(kind, "unfold") == 0) {
        return true;
    }
    for (size_t i = 0; i < sizeof foldable / sizeof foldable[0]; i++) {
        if (strcmp(kind, foldable[i]) == 0) {
            return (here->unfold >> i & 1u) != 0;
        }
    }
    return (here->unfold & 1u) != 0; /* of a kind that is not known: as volta */
}

bool sw_volta_is_heard(const sw_player *p, uint32_t music, const sw_spot *here)
{
    const sw_music *m = at(p, music);
    if ((m->flags & SW_MUSIC_NEW) != 0) {
        return here->pass > 0;
    }
    return here->pass == 0 || list_has_number(sw_reading_name(p->reader->reading, m->list), here->pass);
}

sw_moment sw_walk_repeat(sw_player *p, uint32_t music, sw_moment when, const sw_spot *here)
{
    const sw_music *m = at(p, music);
    const char *kind = sw_reading_name(p->reader->reading, m->name);
    if (is_unfolded(kind, here)) {
        return walk_unfolded(p, music, when, here);
    }
    if (strcmp(kind, "tremolo") == 0) {
        return walk_tremolo(p, music, when, here);
    }
    if (strcmp(kind, "percent") == 0) {
        sw_spot inside = *here;
        inside.pass = 0;
        inside.frame = sw_player_frame(p, here->frame, music, 0);
        sw_moment end = sw_walk(p, m->first == SW_NO_INDEX ? music : m->first, when, &inside);
        sw_rational length = sw_rational_sub(end.main, when.main);
        for (int32_t pass = 1; sw_listens(p) && pass < at(p, music)->num; pass++) {
            sw_listen_moment(p, sw_later(when, sw_rational_mul(length, sw_rational_make(pass, 1)), false),
                             here);
        }
        sw_rational rest = sw_rational_mul(length, sw_rational_make(at(p, music)->num - 1, 1));
        return sw_later(end, rest, false);
    }
    sw_spot inside = *here;
    inside.frame = sw_player_frame(p, here->frame, music, 0);
    inside.pass = 0;
    sw_listen_moment(p, when, here);
    sw_moment end = sw_walk_sequence(p, m->first, when, &inside);
    sw_listen_moment(p, end, here);
    return end;
}

/* How often the innermost repeat is played: alternatives beyond that are dropped. */
static uint32_t repeats_around(const sw_player *p, const sw_spot *here)
{
    for (uint32_t f = here->frame; f != SW_NO_INDEX; f = p->score->frames[f].parent) {
        const sw_music *m = at(p, p->score->frames[f].music);
        if (m->kind == SW_MUSIC_REPEAT) {
            return m->num > 0 ? (uint32_t)m->num : 1;
        }
    }
    return UINT32_MAX;
}

/* Inside the body of a repeat: written out, only the alternative of this pass; otherwise all, one after
 * another. */
sw_moment sw_walk_alternatives(sw_player *p, uint32_t music, sw_moment when, const sw_spot *here)
{
    if (here->pass > 0) {
        uint32_t chosen = alternative_for(p, music, here->pass, repeats_around(p, here));
        return chosen == SW_NO_INDEX ? when : sw_walk(p, chosen, when, here);
    }
    uint32_t times = repeats_around(p, here);
    sw_spot inside = *here;
    inside.frame = sw_player_frame(p, here->frame, music, 0);
    for (uint32_t c = at(p, music)->first; c != SW_NO_INDEX && times > 0; c = at(p, c)->next, times--) {
        sw_listen_moment(p, when, here);
        sw_player_setting(p, music, when, &inside);
        when = sw_walk(p, c, when, &inside);
        sw_listen_moment(p, when, here);
    }
    return when;
}

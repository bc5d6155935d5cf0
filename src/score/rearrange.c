#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "score/rearrange.h"
#include "score/tags.h"

/* ---- copies ---- */

static uint32_t copy_tree(sw_reader *reader, uint32_t music, uint32_t depth)
{
    sw_music copy = *sw_music_at(reader, music);
    uint32_t made = sw_music_add(reader, (sw_music_kind)copy.kind, copy.file, copy.start, copy.end);
    copy.next = SW_NO_INDEX;
    uint32_t child = copy.first;
    copy.first = SW_NO_INDEX;
    *sw_music_at(reader, made) = copy;
    if (sw_reader_is_full(reader, copy.file, copy.start, copy.end)) {
        return made;
    }
    if (copy.kind == SW_MUSIC_REFERENCE || depth > SW_MAX_DEPTH) {
        sw_music_at(reader, made)->first = child; /* copied in its turn when the resolving gets there */
        return made;
    }
    uint32_t last = SW_NO_INDEX;
    for (; child != SW_NO_INDEX; child = sw_music_at(reader, child)->next) {
        uint32_t twin = copy_tree(reader, child, depth + 1);
        if (last == SW_NO_INDEX) {
            sw_music_at(reader, made)->first = twin;
        } else {
            sw_music_at(reader, last)->next = twin;
        }
        last = twin;
    }
    return made;
}

uint32_t sw_music_copy(sw_reader *reader, uint32_t music)
{
    return copy_tree(reader, music, 0);
}

/* ---- additions to tagged music ---- */

static void add_child(sw_reader *reader, uint32_t music, uint32_t more, bool front)
{
    uint32_t added = sw_music_copy(reader, more);
    sw_music *m = sw_music_at(reader, music);
    m->flags |= sw_music_at(reader, added)->flags & SW_MUSIC_FREE;
    if (front || m->first == SW_NO_INDEX) {
        sw_music_at(reader, added)->next = m->first;
        m->first = added;
        return;
    }
    uint32_t last = m->first;
    while (sw_music_at(reader, last)->next != SW_NO_INDEX) {
        last = sw_music_at(reader, last)->next;
    }
    sw_music_at(reader, last)->next = added;
}

/* A variable's music is shared with its other uses; this use gets its own. */
static uint32_t own_music(sw_reader *reader, uint32_t reference)
{
    uint32_t shared = sw_music_at(reader, reference)->first;
    uint32_t own = shared == SW_NO_INDEX ? SW_NO_INDEX : sw_music_copy(reader, shared);
    sw_music_at(reader, reference)->first = own;
    return own;
}

/* The block or chord that a tag marks takes the addition, through whatever is wrapped around it. */
static void add_inside(sw_reader *reader, uint32_t music, uint32_t more, bool front)
{
    for (int steps = 0; music != SW_NO_INDEX && steps < 100; steps++) {
        const sw_music *m = sw_music_at(reader, music);
        uint8_t added = sw_music_at(reader, more)->kind;
        switch ((sw_music_kind)m->kind) {
        case SW_MUSIC_SEQUENCE:
        case SW_MUSIC_SIMULTANEOUS:
            add_child(reader, music, more, front);
            return;
        case SW_MUSIC_CHORD:
            if (added == SW_MUSIC_NOTE || added == SW_MUSIC_DRUM) {
                add_child(reader, music, more, true);
            }
            return;
        case SW_MUSIC_NOTE:
        case SW_MUSIC_DRUM:
        case SW_MUSIC_REST:
        case SW_MUSIC_FULL_REST:
        case SW_MUSIC_SKIP:
            return;
        case SW_MUSIC_REFERENCE:
            music = own_music(reader, music);
            break;
        default:
            music = m->first;
            break;
        }
    }
}

static void insert(sw_reader *reader, uint32_t music, const char *tag, uint32_t more, bool front,
                   uint32_t depth)
{
    if (depth > SW_MAX_DEPTH) {
        return;
    }
    uint32_t child = sw_music_at(reader, music)->kind == SW_MUSIC_REFERENCE
                         ? own_music(reader, music)
                         : sw_music_at(reader, music)->first;
    for (; child != SW_NO_INDEX; child = sw_music_at(reader, child)->next) {
        insert(reader, child, tag, more, front, depth + 1);
    }
    const sw_music *m = sw_music_at(reader, music);
    if (m->kind == SW_MUSIC_TAG && sw_tags_share(sw_reading_name(reader->reading, m->list), tag)) {
        add_inside(reader, m->first, more, front);
    }
    uint8_t free_flag = 0;
    for (child = sw_music_at(reader, music)->first; child != SW_NO_INDEX;
         child = sw_music_at(reader, child)->next) {
        free_flag |= sw_music_at(reader, child)->flags & SW_MUSIC_FREE;
    }
    uint8_t kind = sw_music_at(reader, music)->kind;
    if (kind != SW_MUSIC_RELATIVE && kind != SW_MUSIC_FIXED && kind != SW_MUSIC_TRANSPOSE) {
        sw_music_at(reader, music)->flags |= free_flag;
    }
}

void sw_insert_at_tag(sw_reader *reader, uint32_t music, uint32_t tag, uint32_t more, bool front)
{
    if (music != SW_NO_INDEX && more != SW_NO_INDEX) {
        insert(reader, music, sw_reading_name(reader->reading, tag), more, front, 0);
    }
}

/* ---- parallel music ---- */

static bool has_bar_check(const sw_reader *reader, uint32_t first)
{
    for (uint32_t c = first; c != SW_NO_INDEX; c = sw_music_at(reader, c)->next) {
        if (sw_music_at(reader, c)->kind == SW_MUSIC_BAR_CHECK) {
            return true;
        }
    }
    return false;
}

static bool deal(sw_reader *reader, uint32_t music, size_t count, uint32_t *parts, uint32_t depth);

/* Deals the children: bars at bar checks; a child that can itself be dealt gives one bar to each part. */
static void deal_children(sw_reader *reader, uint32_t first, size_t count, sw_children *lists, uint32_t depth)
{
    uint32_t *pieces = sw_alloc(count * sizeof *pieces);
    size_t turn = 0;
    uint32_t next;
    for (uint32_t child = first; child != SW_NO_INDEX; child = next) {
        next = sw_music_at(reader, child)->next;
        sw_music_at(reader, child)->next = SW_NO_INDEX;
        if (deal(reader, child, count, pieces, depth + 1)) {
            for (size_t i = 0; i < count; i++) {
                sw_children_add(reader, &lists[turn], pieces[i]);
                turn = (turn + 1) % count;
            }
        } else if (sw_music_at(reader, child)->kind == SW_MUSIC_BAR_CHECK) {
            if (next != SW_NO_INDEX) { /* a part may end within a bar */
                sw_children_add(reader, &lists[turn], child);
            }
            turn = (turn + 1) % count;
        } else {
            sw_children_add(reader, &lists[turn], child);
        }
    }
    free(pieces);
}

/* Without a bar check of its own: what can be dealt is, everything else is for all parts. */
static bool deal_among(sw_reader *reader, uint32_t first, size_t count, sw_children *lists, uint32_t depth)
{
    uint32_t *pieces = sw_alloc(count * sizeof *pieces);
    bool dealt = false;
    uint32_t next;
    for (uint32_t child = first; child != SW_NO_INDEX; child = next) {
        next = sw_music_at(reader, child)->next;
        bool split = deal(reader, child, count, pieces, depth + 1);
        dealt = dealt || split;
        for (size_t i = 0; i < count; i++) {
            sw_children_add(reader, &lists[i], split ? pieces[i] : sw_music_copy(reader, child));
        }
    }
    free(pieces);
    return dealt;
}

static bool deal(sw_reader *reader, uint32_t music, size_t count, uint32_t *parts, uint32_t depth)
{
    uint32_t first = sw_music_at(reader, music)->first;
    if (depth > SW_MAX_DEPTH || first == SW_NO_INDEX || sw_music_at(reader, music)->kind <= SW_MUSIC_LYRIC) {
        return false;
    }
    if (sw_music_at(reader, music)->kind == SW_MUSIC_REFERENCE) {
        first = own_music(reader, music);
    }
    sw_children *lists = sw_alloc_zero(count, sizeof *lists);
    bool dealt = true;
    if (has_bar_check(reader, first)) {
        deal_children(reader, first, count, lists, depth);
    } else {
        dealt = deal_among(reader, first, count, lists, depth);
    }
    for (size_t i = 0; dealt && i < count; i++) {
        sw_music model = *sw_music_at(reader, music);
        parts[i] = sw_music_add(reader, (sw_music_kind)model.kind, model.file, model.start, model.end);
        model.first = lists[i].count > 0 ? lists[i].first : SW_NO_INDEX;
        model.next = SW_NO_INDEX;
        *sw_music_at(reader, parts[i]) = model;
    }
    free(lists);
    return dealt;
}

bool sw_deal_bars(sw_reader *reader, uint32_t music, size_t count, uint32_t *parts)
{
    return music != SW_NO_INDEX && count > 0 && deal(reader, music, count, parts, 0);
}

/* ---- voices ---- */

static void name_voices(sw_reader *reader, uint32_t music, uint32_t bottom, const char *list, uint32_t depth)
{
    if (music == SW_NO_INDEX || depth > SW_MAX_DEPTH) {
        return;
    }
    uint32_t child = sw_music_at(reader, music)->kind == SW_MUSIC_REFERENCE
                         ? own_music(reader, music)
                         : sw_music_at(reader, music)->first;
    const char *ids = list;
    unsigned more = 0; /* behind the end of the list they count from 1 */
    for (; child != SW_NO_INDEX; child = sw_music_at(reader, child)->next) {
        name_voices(reader, child, bottom, list, depth + 1);
        sw_music *m = sw_music_at(reader, child);
        if (m->kind != SW_MUSIC_CONTEXT || m->name != bottom) {
            continue;
        }
        char number[16];
        sw_slice id = {ids, strcspn(ids, " ")};
        if (*ids == '\0') {
            id = (sw_slice){number, (size_t)snprintf(number, sizeof number, "%u", ++more)};
        }
        m->name2 = sw_names_add(reader->reading->names, id);
        ids += *ids == '\0' ? 0 : id.length + (ids[id.length] == ' ');
    }
}

void sw_name_voices(sw_reader *reader, uint32_t music, uint32_t list)
{
    sw_names *names = reader->reading->names;
    const char *copy = sw_arena_copy(reader->arena, sw_slice_of(sw_names_text(names, list)));
    name_voices(reader, music, sw_names_add(names, sw_slice_of("Bottom")), copy, 0);
}

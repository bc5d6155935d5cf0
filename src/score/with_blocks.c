/* The \with blocks of contexts: what a context begins with, as settings. */
#include "score/with_blocks.h"

/* `Staff.` in front of a path, as a \set in the music would have it. */
static uint32_t path_in(sw_reader *reader, uint32_t type, uint32_t path)
{
    if (type == 0) {
        return path;
    }
    sw_buffer full = {0};
    sw_buffer_format(&full, "%s.%s", sw_reading_name(reader->reading, type),
                     sw_reading_name(reader->reading, path));
    uint32_t name = sw_names_add(reader->reading->names, sw_buffer_slice(&full));
    sw_buffer_free(&full);
    return name;
}

/* Adds the settings that some music consists of, or those of a WITH node; anything else is no setting of a
 * context. Variables and templates may be used several times: each use gets nodes of its own. */
static void collect(sw_reader *reader, sw_children *children, uint32_t type, uint32_t music, uint32_t depth)
{
    const sw_music *m = sw_music_at(reader, music);
    if (sw_reader_is_full(reader, m->file, m->start, m->end) || depth > SW_MAX_DEPTH) {
        return;
    }
    if (m->kind != SW_MUSIC_SET && m->kind != SW_MUSIC_SETTING) {
        bool holds_settings = m->kind == SW_MUSIC_WITH || m->kind == SW_MUSIC_SEQUENCE ||
                              m->kind == SW_MUSIC_SIMULTANEOUS || m->kind == SW_MUSIC_REFERENCE ||
                              m->kind == SW_MUSIC_CALL;
        for (uint32_t c = holds_settings ? m->first : SW_NO_INDEX; c != SW_NO_INDEX;
             c = sw_music_at(reader, c)->next) {
            collect(reader, children, type, c, depth + 1);
        }
        return;
    }
    uint32_t own = sw_music_copy(reader, music);
    sw_music *setting = sw_music_at(reader, own);
    setting->flags |= SW_MUSIC_NEW;
    if (setting->kind == SW_MUSIC_SET) {
        uint32_t path = path_in(reader, type, setting->name);
        sw_music_at(reader, own)->name = path;
    }
    sw_children_add(reader, children, own);
}

/* `property = value`: the cursor stands at the property. */
static uint32_t read_assignment(sw_reader *reader, sw_cursor *cursor)
{
    uint32_t start = sw_cursor_node(cursor)->start;
    uint32_t end = sw_cursor_node(cursor)->end;
    uint32_t path = sw_read_plain_text(reader, cursor->file, cursor->at);
    sw_cursor_next(cursor);
    uint32_t text = sw_read_set_value(reader, cursor, &end);
    uint32_t music = sw_music_add(reader, SW_MUSIC_SET, cursor->file, start, end);
    sw_music_at(reader, music)->name = path;
    sw_music_at(reader, music)->name2 = text;
    return music;
}

/* `\consists "Merge_rests_engraver"` and the like: what the context is made of. */
static bool is_about_kind(sw_slice command)
{
    static const char *const commands[] = {"\\accepts",      "\\alias",  "\\consists",
                                           "\\defaultchild", "\\denies", "\\description",
                                           "\\name",         "\\remove", "\\type"};
    for (size_t i = 0; i < sizeof commands / sizeof commands[0]; i++) {
        if (sw_slice_is(command, commands[i])) {
            return true;
        }
    }
    return false;
}

/* The settings that a command or expression gives; SW_NO_INDEX when it gives none. */
static uint32_t read_named(sw_reader *reader, sw_cursor *cursor)
{
    sw_value value = sw_read_item(reader, cursor);
    bool holds = value.kind == SW_VALUE_MUSIC || value.kind == SW_VALUE_OUTPUT;
    return holds ? value.music : SW_NO_INDEX;
}

/* The next item of a block: a SET or SETTING, or what holds some; SW_NO_INDEX when it is neither. */
static uint32_t read_setting(sw_reader *reader, sw_cursor *cursor)
{
    sw_node_kind kind = sw_cursor_kind(cursor);
    bool is_command = kind == SW_NODE_COMMAND;
    sw_cursor after = *cursor;
    sw_cursor_next(&after);
    if ((kind == SW_NODE_WORD || kind == SW_NODE_LYRIC_WORD || kind == SW_NODE_STRING) &&
        sw_cursor_is_mark(&after, '=')) {
        return read_assignment(reader, cursor);
    }
    if (is_command && is_about_kind(sw_cursor_text(cursor))) {
        uint32_t start = sw_cursor_node(cursor)->start;
        uint32_t end = sw_cursor_node(sw_cursor_more(&after) ? &after : cursor)->end;
        *cursor = after;
        if (sw_cursor_more(cursor)) {
            sw_cursor_next(cursor);
        }
        return sw_music_add(reader, SW_MUSIC_SETTING, cursor->file, start, end);
    }
    if (is_command || kind == SW_NODE_SCHEME) {
        return read_named(reader, cursor);
    }
    *cursor = after;
    return SW_NO_INDEX;
}

static void read_block(sw_reader *reader, sw_cursor *cursor, sw_children *children, uint32_t type)
{
    if (sw_cursor_kind(cursor) != SW_NODE_BLOCK) { /* \with \variable */
        uint32_t music = read_named(reader, cursor);
        if (music != SW_NO_INDEX) {
            collect(reader, children, type, music, 0);
        }
        return;
    }
    sw_cursor inside = sw_cursor_inside(reader, cursor->file, cursor->at);
    sw_cursor_next(cursor);
    if (reader->depth >= SW_MAX_DEPTH) {
        return;
    }
    reader->depth++;
    while (sw_cursor_more(&inside)) {
        uint32_t music = read_setting(reader, &inside);
        if (music != SW_NO_INDEX) {
            collect(reader, children, type, music, 0);
        }
    }
    reader->depth--;
}

/* The end of the item at the cursor, unless an abbreviation has it from elsewhere. */
static uint32_t end_behind(sw_cursor *cursor, uint32_t file, uint32_t end)
{
    uint32_t behind = sw_cursor_node(cursor)->end;
    return cursor->file == file && behind > end ? behind : end;
}

uint32_t sw_read_with_block(sw_reader *reader, sw_cursor *cursor, uint32_t file, uint32_t start,
                            uint32_t *end)
{
    sw_children children = {.first = SW_NO_INDEX};
    if (sw_cursor_more(cursor)) {
        *end = end_behind(cursor, file, *end);
        read_block(reader, cursor, &children, 0);
    }
    uint32_t with = sw_music_add(reader, SW_MUSIC_WITH, file, start, *end);
    sw_music_at(reader, with)->first = children.first;
    return with;
}

uint32_t sw_read_with_blocks(sw_reader *reader, sw_cursor *cursor, uint32_t type, uint32_t id)
{
    sw_children children = {.first = SW_NO_INDEX};
    uint32_t file = cursor->file;
    uint32_t start = SW_NO_INDEX;
    uint32_t end = 0;
    while (sw_cursor_more(cursor) && sw_cursor_kind(cursor) == SW_NODE_COMMAND &&
           sw_slice_is(sw_cursor_text(cursor), "\\with")) {
        if (start == SW_NO_INDEX) {
            start = sw_cursor_node(cursor)->start;
            end = sw_cursor_node(cursor)->end;
        }
        sw_cursor_next(cursor);
        if (sw_cursor_more(cursor)) {
            end = end_behind(cursor, file, end);
            read_block(reader, cursor, &children, type);
        }
    }
    if (start == SW_NO_INDEX) {
        return SW_NO_INDEX;
    }
    uint32_t with = sw_music_add(reader, SW_MUSIC_WITH, file, start, end);
    sw_music *m = sw_music_at(reader, with);
    m->first = children.first;
    m->name = type;
    m->name2 = id;
    return with;
}

void sw_set_with(sw_reader *reader, uint32_t music, uint32_t with)
{
    sw_music_at(reader, music)->num = with == SW_NO_INDEX ? SW_NONE : (int32_t)with;
}

uint32_t sw_music_with(const sw_reading *reading, uint32_t music)
{
    const sw_music *m = &reading->music[music];
    bool may_have = m->kind == SW_MUSIC_CONTEXT || m->kind == SW_MUSIC_ADD_LYRICS;
    return may_have && m->num != SW_NONE ? (uint32_t)m->num : SW_NO_INDEX;
}

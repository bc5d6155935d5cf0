/* Variables, commands, scores: the outer levels of the sources. */
#include <stdlib.h>
#include <string.h>

#include "score/prelude.h"
#include "score/reader.h"

/* ---- names and variables ---- */

sw_value *sw_lookup(const sw_reader *reader, uint32_t name)
{
    return name < reader->value_count ? reader->values[name] : NULL;
}

void sw_define(sw_reader *reader, uint32_t name, const sw_value *value)
{
    if (name >= reader->value_count) {
        size_t count = (size_t)name + 64;
        reader->values = sw_realloc(reader->values, count * sizeof *reader->values);
        memset(reader->values + reader->value_count, 0,
               (count - reader->value_count) * sizeof *reader->values);
        reader->value_count = count;
    }
    if (value == NULL) {
        reader->values[name] = NULL;
        return;
    }
    sw_value *kept = sw_arena_alloc(reader->arena, sizeof *kept);
    *kept = *value;
    reader->values[name] = kept;
}

size_t sw_reader_bound(const sw_reader *reader, size_t bound)
{
    return bound + bound / SW_MAX_EVENTS * reader->source_bytes;
}

bool sw_reader_is_full(sw_reader *reader, uint32_t file, uint32_t start, uint32_t end)
{
    size_t bound = sw_reader_bound(reader, SW_MAX_MUSIC);
    if (reader->reading->music_count < bound && reader->inner.count < bound) {
        return false;
    }
    if (!reader->full) {
        reader->full = true;
        sw_findings_add(
            &reader->reading->findings, SW_ERROR, "unresolved", file, start, end,
            "variables and functions used here and before make more than %zu notes and other items; "
            "from here on, copies of music are left out",
            bound);
    }
    return true;
}

void sw_unresolved(sw_reader *reader, const sw_value *where, uint32_t name, const char *what)
{
    for (size_t i = 0; i < reader->reported_count; i++) {
        if (reader->reported[i] == name) {
            return;
        }
    }
    reader->reported = sw_grow(reader->reported, reader->reported_count, &reader->reported_capacity,
                               sizeof *reader->reported);
    reader->reported[reader->reported_count++] = name;
    sw_findings_add(&reader->reading->findings, SW_WARNING, "unresolved", where->file, where->start,
                    where->end, "\\%s: %s", sw_reading_name(reader->reading, name), what);
}

/* ---- commands ---- */

/* The music of a variable at one of its uses. A note that is all the music there is has the place of the use;
 * notes inside of music keep the place where they are written. */
static uint32_t used_music(sw_reader *reader, uint32_t music, const sw_value *where)
{
    uint32_t note = music;
    while (note != SW_NO_INDEX && sw_music_at(reader, note)->kind == SW_MUSIC_REFERENCE) {
        note = sw_music_at(reader, note)->first;
    }
    if (note == SW_NO_INDEX || !sw_music_has_origin(sw_music_at(reader, note)) ||
        sw_music_at(reader, note)->kind == SW_MUSIC_SKIP) {
        return music;
    }
    uint32_t copy = sw_music_copy(reader, note);
    if (copy == SW_NO_INDEX) {
        return music;
    }
    sw_set_origin(reader, sw_music_at(reader, copy), where->file, where->start);
    return copy;
}

/* A variable with points in its name, `\violin.1`, of which `*name` is the beginning. The longest one that is
 * defined; then the cursor stands behind it, and *where ends there. */
static const sw_value *take_points(sw_reader *reader, sw_cursor *cursor, sw_slice name, uint32_t *number,
                                   sw_value *where)
{
    const sw_value *found = NULL;
    sw_cursor at = *cursor;
    uint32_t end = where->end;
    sw_buffer path = {0};
    while (sw_cursor_is_mark(&at, '.') && sw_cursor_node(&at)->start == end) {
        sw_cursor_next(&at);
        if (!sw_cursor_more(&at) || sw_cursor_node(&at)->start != end + 1) {
            break;
        }
        if (path.length == 0) {
            sw_buffer_append(&path, name);
        }
        sw_buffer_char(&path, '.');
        sw_buffer_append(&path, sw_cursor_text(&at));
        end = sw_cursor_node(&at)->end;
        sw_cursor_next(&at);
        uint32_t longer = sw_names_find(reader->reading->names, sw_buffer_slice(&path));
        const sw_value *variable = sw_lookup(reader, longer);
        if (variable != NULL) {
            found = variable;
            *number = longer;
            *cursor = at;
            where->end = end;
        }
    }
    sw_buffer_free(&path);
    return found;
}

static sw_value read_command(sw_reader *reader, sw_cursor *cursor)
{
    const sw_node *node = sw_cursor_node(cursor);
    sw_slice text = sw_cursor_text(cursor);
    sw_value where = {.kind = SW_VALUE_NONE,
                      .music = SW_NO_INDEX,
                      .number = {.duration = {.factor_num = 1, .factor_den = 1}},
                      .file = cursor->file,
                      .start = node->start,
                      .end = node->end};
    if (cursor->abbreviated != NULL) { /* what it stands for has the place of the use */
        where.file = cursor->abbreviated->file;
        where.start = cursor->abbreviated->start;
        where.end = cursor->abbreviated->end;
    }
    bool directed = text.data[0] != '\\'; /* `^\trill`: whatever it gives belongs to a note */
    size_t skip = directed ? 2 : 1;
    sw_slice name = {text.data + skip, text.length - skip};
    if (name.length >= 2 && name.data[0] == '"') {
        name = (sw_slice){name.data + 1, name.length - 2};
    }
    sw_cursor_next(cursor);
    sw_value result;
    uint32_t number = sw_names_find(reader->reading->names, name);
    const sw_value *variable = take_points(reader, cursor, name, &number, &where);
    variable = variable == NULL ? sw_lookup(reader, number) : variable;
    result = where;
    const sw_command *command;
    if (variable != NULL) {
        result = *variable;
        result.file = where.file;
        result.start = where.start;
        result.end = where.end;
        if (variable->kind == SW_VALUE_FUNCTION) {
            result = sw_call(reader, cursor, variable->function, number, &where);
        } else if (variable->kind == SW_VALUE_ABBREVIATION) {
            result = sw_use_abbreviation(reader, cursor, variable->items, &where);
        } else if (variable->kind == SW_VALUE_MUSIC && variable->music != SW_NO_INDEX) {
            result.music = sw_music_wrap(reader, SW_MUSIC_REFERENCE, &where,
                                         used_music(reader, variable->music, &where), true);
            sw_music_at(reader, result.music)->name = number;
        } else if (variable->kind == SW_VALUE_POST) {
            result.music = sw_music_add(reader, SW_MUSIC_MARK, where.file, where.start, where.end);
            sw_mark_stands_for(reader, result.music, variable->music);
        }
        if (variable->inner_count > 0 && !sw_reader_is_full(reader, where.file, where.start, where.end)) {
            sw_repeat_inner_scores(reader, variable->inner_first, variable->inner_count);
        }
    } else if (sw_read_keyword(reader, cursor, name, &where, &result)) {
        /* done */
    } else if ((command = sw_command_find(name)) != NULL) {
        switch (command->kind) {
        case SW_COMMAND_POST_EVENT:
            result.kind = SW_VALUE_POST;
            result.music = sw_music_add(reader, SW_MUSIC_MARK, where.file, where.start, where.end);
            break;
        case SW_COMMAND_SETTING: {
            bool cadenza = sw_slice_starts(name, "cadenzaO");
            result.kind = SW_VALUE_MUSIC;
            result.music = sw_music_add(reader, cadenza ? SW_MUSIC_CADENZA : SW_MUSIC_SETTING, where.file,
                                        where.start, where.end);
            sw_music_at(reader, result.music)->num = sw_slice_is(name, "cadenzaOn");
            sw_music_at(reader, result.music)->check =
                sw_slice_is(name, "fine") ? SW_LABEL_FINE : SW_LABEL_NONE;
            break;
        }
        case SW_COMMAND_DURATION:
            result.kind = SW_VALUE_DURATION;
            sw_word_duration((sw_slice){text.data + skip - 1, text.length - skip + 1}, &result.number);
            break;
        case SW_COMMAND_VALUE:
            result.kind = SW_VALUE_SYMBOL;
            result.text = sw_names_add(reader->reading->names, name);
            break;
        default: {
            sw_value arguments[SW_MAX_ARGUMENTS];
            size_t count = sw_read_arguments(reader, cursor, command->signature, arguments);
            for (size_t i = 0; i < count; i++) {
                if (arguments[i].kind != SW_VALUE_NONE && arguments[i].file == where.file &&
                    arguments[i].end > where.end) {
                    where.end = arguments[i].end;
                }
            }
            result = sw_apply(reader, command, arguments, count, &where);
            break;
        }
        }
    } else if (name.length > 0) {
        sw_unresolved(reader, &where, sw_names_add(reader->reading->names, name),
                      "it is not defined here, in an included file or in the language");
    }
    if (directed && result.kind != SW_VALUE_POST) {
        result.kind = SW_VALUE_POST;
        result.music = sw_music_add(reader, SW_MUSIC_MARK, where.file, where.start,
                                    result.end > where.end ? result.end : where.end);
    } else if (directed) {
        sw_music_at(reader, result.music)->start = where.start;
    }
    return result;
}

sw_value sw_read_command(sw_reader *reader, sw_cursor *cursor)
{
    if (reader->depth >=
        SW_MAX_DEPTH) { /* `\once \once \once ...`: each argument is read inside the one before */
        sw_value nothing = {.kind = SW_VALUE_NONE, .music = SW_NO_INDEX, .file = cursor->file};
        nothing.start = sw_cursor_node(cursor)->start;
        nothing.end = sw_cursor_node(cursor)->end;
        sw_slice text = sw_cursor_text(cursor);
        sw_unresolved(reader, &nothing,
                      sw_names_add(reader->reading->names, (sw_slice){text.data + 1, text.length - 1}),
                      "calls are nested too deep; what stands inside is not read");
        sw_cursor_next(cursor);
        return nothing;
    }
    reader->depth++;
    sw_value value = read_command(reader, cursor);
    reader->depth--;
    return value;
}

/* ---- scores and books ---- */

void sw_pending_add(sw_pending_list *list, const sw_pending *pending)
{
    list->items = sw_grow(list->items, list->count, &list->capacity, sizeof *list->items);
    list->items[list->count++] = *pending;
}

sw_pending sw_read_score_block(sw_reader *reader, uint32_t file, uint32_t node)
{
    sw_cursor cursor = sw_cursor_inside(reader, file, node);
    const sw_node *n = &cursor.syntax->nodes[node];
    sw_pending pending = {
        .music = SW_NO_INDEX, .file = file, .start = n->start, .end = n->end, .heard = true};
    bool layout = false;
    bool midi = false;
    sw_children children = {0};
    while (sw_cursor_more(&cursor)) {
        sw_slice text = sw_cursor_text(&cursor);
        if (sw_cursor_kind(&cursor) == SW_NODE_WORD) { /* `piece = "..."` of old sources */
            sw_cursor after = cursor;
            sw_cursor_next(&after);
            if (sw_cursor_is_mark(&after, '=')) {
                sw_cursor_next(&after);
                if (sw_cursor_more(&after)) {
                    sw_cursor_next(&after);
                }
                cursor = after;
                continue;
            }
        }
        if (sw_cursor_kind(&cursor) == SW_NODE_COMMAND) {
            layout = layout || sw_slice_is(text, "\\layout");
            midi = midi || sw_slice_is(text, "\\midi");
        }
        sw_value value = sw_read_item(reader, &cursor);
        if (value.kind == SW_VALUE_SCORE && pending.music == SW_NO_INDEX) {
            pending.music = value.score->music;
        } else if (value.kind == SW_VALUE_OUTPUT && value.text != 0) {
            layout = layout || strcmp(sw_reading_name(reader->reading, value.text), "layout") == 0;
            midi = midi || strcmp(sw_reading_name(reader->reading, value.text), "midi") == 0;
        } else if (value.kind == SW_VALUE_MUSIC && value.music != SW_NO_INDEX) {
            if (children.count > 0 && sw_music_at(reader, value.music)->kind != SW_MUSIC_ADD_LYRICS) {
                continue; /* a score holds one music expression */
            }
            sw_children_add(reader, &children, value.music);
        }
    }
    if (children.count > 0) {
        pending.music = children.first;
    }
    pending.heard = layout || !midi;
    pending.quote_count = reader->quote_count;
    return pending;
}

static void add_toplevel_music(sw_reader *reader, sw_pending_list *scores, const sw_value *value)
{
    const sw_music *m = sw_music_at(reader, value->music);
    if (m->kind == SW_MUSIC_ADD_LYRICS) {
        if (scores->count > 0) {
            sw_music_add_lyrics(reader, scores->items[scores->count - 1].music, value->music);
        }
        return;
    }
    if (m->kind == SW_MUSIC_MARK || m->kind == SW_MUSIC_BAR_CHECK || m->kind == SW_MUSIC_SETTING ||
        m->kind == SW_MUSIC_EMPTY) {
        return; /* a \pageBreak between scores */
    }
    sw_pending pending = {.music = value->music,
                          .file = value->file,
                          .start = value->start,
                          .end = value->end,
                          .heard = true,
                          .quote_count = reader->quote_count,
                          .inner_first = value->inner_first,
                          .inner_count = value->inner_count};
    sw_pending_add(scores, &pending);
}

static uint32_t keyword_block(sw_cursor *cursor)
{
    sw_cursor after = *cursor;
    sw_cursor_next(&after);
    return sw_cursor_more(&after) && sw_cursor_kind(&after) == SW_NODE_BLOCK ? after.at : SW_NO_INDEX;
}

/* \book { ... } and \bookpart { ... }. */
static void read_book(sw_reader *reader, sw_cursor *cursor, sw_pending_list *scores)
{
    uint32_t block = keyword_block(cursor);
    sw_cursor_next(cursor);
    if (block == SW_NO_INDEX) {
        return;
    }
    sw_cursor inside = sw_cursor_inside(reader, cursor->file, block);
    sw_cursor_next(cursor);
    if (reader->depth < SW_MAX_DEPTH) {
        reader->depth++;
        sw_read_toplevel(reader, &inside, scores);
        reader->depth--;
    }
}

/* The incipits of a score of the book. */
static void finish_incipits(sw_reader *reader, const sw_pending *score)
{
    for (uint32_t i = 0; i < score->inner_count; i++) {
        const sw_pending *inner = &reader->inner.items[score->inner_first + i];
        if (inner->late) {
            sw_pending_add(&reader->scores, inner);
        }
    }
}

/* What stands in markups is played when the pages are made, after all scores of the book; incipits when the
 * lines are, after those. */
static void finish_book(sw_reader *reader, const sw_pending_list *book)
{
    for (int late = 0; late <= 1; late++) {
        for (size_t i = 0; i < book->count; i++) {
            if (book->items[i].late == (late == 1)) {
                sw_pending_add(&reader->scores, &book->items[i]);
            }
        }
    }
    for (size_t i = 0; i < book->count; i++) {
        finish_incipits(reader, &book->items[i]);
    }
}

/* True when the cursor stands at `name =`; it then stands behind the `=`. */
static bool read_assignment_head(sw_reader *reader, sw_cursor *cursor, uint32_t *name)
{
    sw_node_kind kind = sw_cursor_kind(cursor);
    if (kind != SW_NODE_WORD && kind != SW_NODE_STRING) {
        return false;
    }
    sw_cursor after = *cursor;
    sw_cursor_next(&after);
    if (!sw_cursor_is_mark(&after, '=')) {
        return false;
    }
    *name = sw_read_plain_text(reader, cursor->file, cursor->at);
    sw_cursor_next(&after);
    *cursor = after;
    return true;
}

/* `drumPitchNames.word = #'drum`: a drum name of the user's own. */
static void read_drum_name(sw_reader *reader, uint32_t path, const sw_value *drum)
{
    static const char table[] = "drumPitchNames.";
    const char *word = sw_reading_name(reader->reading, path);
    if (strncmp(word, table, sizeof table - 1) == 0 && drum->kind == SW_VALUE_SYMBOL) {
        uint32_t name = sw_names_add(reader->reading->names, sw_slice_of(word + sizeof table - 1));
        reader->drums = sw_grow(reader->drums, reader->drum_count, &reader->drum_capacity, sizeof(sw_drum));
        reader->drums[reader->drum_count++] = (sw_drum){name, drum->text};
    }
}

/* Whether music is a note of which only the pitch is written: behind `x = cis''` that is all that \x means,
 * and its note value is that of the place where it is used. */
static bool is_mere_pitch(const sw_reader *reader, uint32_t music)
{
    if (music == SW_NO_INDEX) {
        return false;
    }
    const sw_music *m = sw_music_at(reader, music);
    sw_slice text = sw_music_slice(reader->reading, music);
    return m->kind == SW_MUSIC_NOTE && m->first == SW_NO_INDEX &&
           (m->flags & (SW_MUSIC_WRITTEN_VALUE | SW_MUSIC_CHECKED)) == 0 &&
           memchr(text.data, '!', text.length) == NULL && memchr(text.data, '?', text.length) == NULL;
}

static void read_assignment(sw_reader *reader, sw_cursor *cursor, uint32_t name, uint32_t start)
{
    if (!sw_cursor_more(cursor)) {
        return;
    }
    uint32_t value_start = sw_cursor_node(cursor)->start;
    uint32_t inner = (uint32_t)reader->inner.count;
    sw_node_kind kind = sw_cursor_kind(cursor);
    sw_value value;
    if (sw_read_abbreviation(reader, cursor, &value)) {
        /* done */
    } else if (kind == SW_NODE_PUNCTUATION) { /* `x = -\markup ...`, a sign: the value follows */
        sw_cursor_next(cursor);
        if (!sw_cursor_more(cursor)) {
            return;
        }
        value = sw_read_item(reader, cursor);
    } else {
        value = sw_read_item(reader, cursor);
    }
    if (value.kind == SW_VALUE_MUSIC && value.music != SW_NO_INDEX) {
        uint8_t music_kind = sw_music_at(reader, value.music)->kind;
        if (music_kind == SW_MUSIC_NOTE || music_kind == SW_MUSIC_CHORD || music_kind == SW_MUSIC_REST ||
            music_kind == SW_MUSIC_FULL_REST || music_kind == SW_MUSIC_SKIP || music_kind == SW_MUSIC_DRUM) {
            sw_read_post_events(reader, cursor, value.music);
        }
        /* `\addlyrics` behind the music belongs to the variable. */
        while (sw_cursor_more(cursor) && sw_cursor_kind(cursor) == SW_NODE_COMMAND &&
               sw_slice_is(sw_cursor_text(cursor), "\\addlyrics")) {
            sw_music_add_lyrics(reader, value.music, sw_read_item(reader, cursor).music);
        }
    }
    uint32_t end = value.end;
    uint32_t music = value.kind == SW_VALUE_MUSIC ? value.music : SW_NO_INDEX;
    value.inner_first = inner;
    value.inner_count = (uint32_t)reader->inner.count - inner;
    if (kind == SW_NODE_WORD && is_mere_pitch(reader, music)) {
        value.kind = SW_VALUE_PITCH;
        value.pitch = sw_music_at(reader, music)->pitch;
    }
    sw_define(reader, name, &value);
    read_drum_name(reader, name, &value);
    sw_reading *reading = reader->reading;
    reading->variables = sw_grow(reading->variables, reading->variable_count, &reading->variable_capacity,
                                 sizeof(sw_variable));
    reading->variables[reading->variable_count++] = (sw_variable){
        .name = name,
        .file = cursor->file,
        .start = start,
        .end = end,
        .value_start = value_start,
        .music = music,
    };
}

void sw_read_toplevel(sw_reader *reader, sw_cursor *cursor, sw_pending_list *scores)
{
    while (sw_cursor_more(cursor)) {
        uint32_t start = sw_cursor_node(cursor)->start;
        uint32_t name;
        if (read_assignment_head(reader, cursor, &name)) {
            read_assignment(reader, cursor, name, start);
            continue;
        }
        sw_node_kind kind = sw_cursor_kind(cursor);
        sw_slice text = sw_cursor_text(cursor);
        if (kind == SW_NODE_COMMAND && sw_slice_is(text, "\\book")) {
            /* An explicit book is finished, and its scores are played, when its block ends. */
            sw_pending_list inner = {0};
            read_book(reader, cursor, &inner);
            finish_book(reader, &inner);
            free(inner.items);
            continue;
        }
        if (kind == SW_NODE_COMMAND && sw_slice_is(text, "\\bookpart")) {
            read_book(reader, cursor, scores);
            continue;
        }
        if (kind == SW_NODE_COMMAND && sw_slice_is(text, "\\include")) {
            sw_cursor_next(cursor);
            if (sw_cursor_more(cursor)) {
                const sw_node *node = sw_cursor_node(cursor);
                uint32_t path = sw_read_plain_text(reader, cursor->file, cursor->at);
                sw_cursor at = *cursor;
                sw_cursor_next(cursor);
                sw_read_include(reader, &at, sw_slice_of(sw_reading_name(reader->reading, path)), node,
                                scores, NULL);
            }
            continue;
        }
        uint32_t inner = (uint32_t)reader->inner.count;
        sw_value value = sw_read_item(reader, cursor);
        value.inner_first = inner;
        value.inner_count = (uint32_t)reader->inner.count - inner;
        if (value.kind == SW_VALUE_SCORE) {
            sw_pending score = *value.score;
            score.inner_first = value.inner_first;
            score.inner_count = value.inner_count;
            sw_pending_add(scores, &score);
        } else if (value.kind == SW_VALUE_MUSIC && value.music != SW_NO_INDEX) {
            uint8_t music_kind = sw_music_at(reader, value.music)->kind;
            if (music_kind <= SW_MUSIC_LYRIC) {
                sw_read_post_events(reader, cursor, value.music);
                value.inner_count = (uint32_t)reader->inner.count - inner;
            }
            add_toplevel_music(reader, scores, &value);
        } else {
            for (uint32_t i = 0; i < value.inner_count; i++) { /* of a markup between the scores */
                sw_pending score = reader->inner.items[inner + i];
                score.late = true;
                sw_pending_add(scores, &score);
            }
        }
    }
}

void sw_play_pending(sw_reader *reader, const sw_pending *pending, bool in_markup)
{
    if (!pending->heard || pending->music == SW_NO_INDEX) {
        return;
    }
    sw_reading *reading = reader->reading;
    reading->scores =
        sw_grow(reading->scores, reading->score_count, &reading->score_capacity, sizeof(sw_score));
    sw_score *score = &reading->scores[reading->score_count++];
    *score = (sw_score){.file = pending->file, .start = pending->start, .end = pending->end};
    score->in_markup = in_markup || pending->late;
    sw_play(reader, pending, score);
    sw_timeline(reading, score);
    for (uint32_t i = 0; i < pending->inner_count; i++) {
        const sw_pending *inner = &reader->inner.items[pending->inner_first + i];
        if (!inner->late) {
            sw_play_pending(reader, inner, true);
        }
    }
}

static void play_all(sw_reader *reader)
{
    for (size_t i = 0; i < reader->scores.count; i++) {
        sw_play_pending(reader, &reader->scores.items[i], false);
    }
}

static void place_findings(sw_reading *reading)
{
    for (size_t i = 0; i < reading->findings.count; i++) {
        sw_finding *finding = &reading->findings.items[i];
        sw_place place = sw_text_place(reading->files[finding->file].text, finding->start);
        finding->line = place.line;
        finding->column = place.column + 1;
    }
}

/* By music; of several calls before the same note the outermost is first. */
static int compare_prefixes(const void *a, const void *b)
{
    const sw_prefix *x = a;
    const sw_prefix *y = b;
    if (x->music != y->music) {
        return x->music < y->music ? -1 : 1;
    }
    return x->start < y->start ? -1 : x->start > y->start;
}

void sw_reader_clear(sw_reader *reader)
{
    free(reader->waiting.items);
    free(reader->scores.items);
    free(reader->inner.items);
    free(reader->values);
    free(reader->quotes);
    free(reader->drums);
    free(reader->tag_groups);
    free(reader->reported);
    sw_arena_free(reader->arena);
}

sw_reading *sw_read(const char *path, const sw_read_options *options, char **error)
{
    sw_reading *reading = sw_alloc_zero(1, sizeof *reading);
    reading->names = sw_names_new();
    sw_reader reader = {
        .reading = reading,
        .options = options,
        .arena = sw_arena_new(),
        .duration = sw_duration_quarter(),
        .origin = SW_NO_INDEX,
    };
    reader.no_pitch = sw_names_add(reading->names, sw_slice_of("()"));
    const char *language = options == NULL ? NULL : options->language;
    sw_use_language(&reader, language == NULL ? &sw_languages[0] : sw_language_find(sw_slice_of(language)));
    uint32_t file = sw_open_file(&reader, path, SW_NO_INDEX, error);
    if (file != SW_NO_INDEX) {
        sw_cursor cursor = sw_cursor_inside(&reader, file, 0);
        sw_read_prelude(&reader, &cursor);
        sw_read_toplevel(&reader, &cursor, &reader.waiting);
        finish_book(&reader, &reader.waiting);
        play_all(&reader);
        if (options != NULL && options->alone) {
            sw_play_variables(&reader);
        }
        if (reading->prefix_count > 1) {
            qsort(reading->prefixes, reading->prefix_count, sizeof *reading->prefixes, compare_prefixes);
        }
        place_findings(reading);
    }
    sw_prelude_release(reader.prelude);
    sw_reader_clear(&reader);
    if (file == SW_NO_INDEX) {
        sw_reading_free(reading);
        return NULL;
    }
    return reading;
}

/* What the reader knows behind the includes of a beginning, kept for those who begin likewise.
 *
 * Music, names and variables stand in arrays that refer to each other by number, so a copy of the arrays is a
 * copy of the state. Two kinds of pointers are in there: to what never changes once it is made (functions,
 * values; the arena that holds them is shared and lives until its last reader is done), and to the syntax of
 * files, which the shelf holds. */
#include <stdatomic.h>
#include <stdlib.h>
#include <string.h>

#include "score/prelude.h"
#include "score/shelf.h"

struct sw_prelude {
    atomic_int users;
    sw_reading reading; /* its files[0], the main file, is empty */
    sw_reader reader;
};

static void *copy_of(const void *items, size_t count, size_t size)
{
    void *copy = count == 0 ? NULL : sw_alloc(count * size);
    return count == 0 ? NULL : memcpy(copy, items, count * size);
}

/* Music with room for what a part adds to that of its family: the array need not be moved again then. */
static void copy_music(sw_reading *to, const sw_reading *from)
{
    enum { OWN = 512 };
    to->music_capacity = from->music_count + OWN;
    to->music = sw_alloc(to->music_capacity * sizeof *to->music);
    if (from->music_count > 0) {
        memcpy(to->music, from->music, from->music_count * sizeof *to->music);
    }
}

static void copy_list(sw_pending_list *list)
{
    list->items = copy_of(list->items, list->count, sizeof *list->items);
    list->capacity = list->count;
}

/* The files but the main one, under the paths that they have. */
static void share_files(sw_reading *to, const sw_reading *from)
{
    to->file_count = from->file_count;
    to->file_capacity = from->file_count;
    to->files = sw_alloc_zero(from->file_count, sizeof *to->files);
    for (size_t i = 1; i < from->file_count; i++) {
        const sw_file *file = &from->files[i];
        to->files[i] = *file;
        to->files[i].text = file->owned ? sw_text_share(file->text->path, file->text) : file->text;
        to->files[i].syntax = sw_syntax_share(file->syntax, to->files[i].text);
    }
}

static void copy_reading(sw_reading *to, const sw_reading *from)
{
    *to = *from;
    share_files(to, from);
    copy_music(to, from);
    to->names = sw_names_copy(from->names);
    to->variables = copy_of(from->variables, from->variable_count, sizeof *to->variables);
    to->variable_capacity = from->variable_count;
    to->prefixes = copy_of(from->prefixes, from->prefix_count, sizeof *to->prefixes);
    to->prefix_capacity = from->prefix_count;
    to->languages = copy_of(from->languages, from->language_count, sizeof *to->languages);
    to->language_capacity = from->language_count;
    to->findings = (sw_findings){0};
}

/* Findings of the main file, or those of all others. */
static void add_findings(sw_findings *to, const sw_findings *from, bool of_main)
{
    for (size_t i = 0; i < from->count; i++) {
        const sw_finding *f = &from->items[i];
        if ((f->file == 0) == of_main) {
            sw_findings_add(to, f->severity, f->rule, f->file, f->start, f->end, "%s", f->message);
        }
    }
}

/* Everything but whose reader it is: reading, options, arena, prelude. */
static void copy_reader(sw_reader *to, const sw_reader *from)
{
    *to = *from;
    to->values = copy_of(from->values, from->value_count, sizeof *to->values);
    to->quotes = copy_of(from->quotes, from->quote_count, sizeof *to->quotes);
    to->quote_capacity = from->quote_count;
    to->drums = copy_of(from->drums, from->drum_count, sizeof *to->drums);
    to->drum_capacity = from->drum_count;
    to->tag_groups = copy_of(from->tag_groups, from->tag_group_count, sizeof *to->tag_groups);
    to->tag_group_capacity = from->tag_group_count;
    to->reported = copy_of(from->reported, from->reported_count, sizeof *to->reported);
    to->reported_capacity = from->reported_count;
    copy_list(&to->scores);
    copy_list(&to->inner);
    copy_list(&to->waiting);
}

sw_prelude *sw_prelude_hold(sw_prelude *prelude)
{
    if (prelude != NULL) {
        atomic_fetch_add(&prelude->users, 1);
    }
    return prelude;
}

void sw_prelude_release(sw_prelude *prelude)
{
    if (prelude == NULL || atomic_fetch_sub(&prelude->users, 1) > 1) {
        return;
    }
    sw_reader_clear(&prelude->reader);
    sw_reading_clear(&prelude->reading);
    free(prelude);
}

/* Keeps what a reader knows. Its arena goes to the prelude, and so do the syntaxes of its files, to which
 * values in the arena may point; the reader gets others. */
static sw_prelude *keep(sw_reader *reader)
{
    sw_prelude *prelude = sw_alloc_zero(1, sizeof *prelude);
    atomic_init(&prelude->users, 1);
    sw_reading *reading = reader->reading;
    copy_reading(&prelude->reading, reading);
    add_findings(&prelude->reading.findings, &reading->findings, false);
    for (size_t i = 1; i < reading->file_count; i++) {
        sw_file swapped = prelude->reading.files[i];
        prelude->reading.files[i] = reading->files[i];
        reading->files[i] = swapped;
    }
    copy_reader(&prelude->reader, reader);
    prelude->reader.source_bytes -= reading->files[0].text->length;
    reader->arena = sw_arena_new();
    reader->prelude = sw_prelude_hold(prelude);
    return prelude;
}

/* Gives a reader that has only opened its main file what is known behind the includes. */
static void take_over(sw_reader *reader, sw_prelude *prelude)
{
    sw_reading *reading = reader->reading;
    sw_reading own = *reading;
    sw_reader before = *reader;
    copy_reading(reading, &prelude->reading);
    reading->files[0] = own.files[0];
    add_findings(&reading->findings, &own.findings, true);
    add_findings(&reading->findings, &prelude->reading.findings, false);
    own.file_count = 0;
    sw_reading_clear(&own);
    copy_reader(reader, &prelude->reader);
    reader->reading = reading;
    reader->options = before.options;
    reader->source_bytes += before.source_bytes;
    reader->arena = before.arena;
    reader->prelude = prelude;
    before.arena = NULL;
    sw_reader_clear(&before);
}

/* Whether nothing of what was read is about the main file itself. */
static bool is_of_others(const sw_reading *reading, size_t own_findings)
{
    for (size_t i = own_findings; i < reading->findings.count; i++) {
        if (reading->findings.items[i].file == 0) {
            return false;
        }
    }
    for (size_t i = 0; i < reading->music_count; i++) {
        if (reading->music[i].file == 0) {
            return false;
        }
    }
    return true;
}

/* Moves a cursor behind the \version and the \includes, and writes down which ones they are. */
static void find_end(const sw_reader *reader, sw_cursor *cursor, sw_buffer *key)
{
    sw_cursor at = *cursor;
    while (sw_cursor_more(&at) && sw_cursor_kind(&at) == SW_NODE_COMMAND) {
        bool includes = sw_slice_is(sw_cursor_text(&at), "\\include");
        if (!includes && !sw_slice_is(sw_cursor_text(&at), "\\version")) {
            break;
        }
        sw_cursor_next(&at);
        if (!sw_cursor_more(&at) || sw_cursor_kind(&at) != SW_NODE_STRING) {
            break;
        }
        if (includes) {
            sw_buffer_append(key, sw_cursor_text(&at));
            sw_buffer_char(key, '\n');
        }
        sw_cursor_next(&at);
        *cursor = at;
    }
    if (key->length > 0) {
        sw_buffer_append(key, sw_path_folder(reader->reading->files[0].text->path));
    }
}

void sw_read_prelude(sw_reader *reader, sw_cursor *cursor)
{
    sw_shelf *shelf = reader->options == NULL ? NULL : reader->options->shelf;
    sw_buffer key = {0};
    sw_cursor behind = *cursor;
    find_end(reader, &behind, &key);
    bool kept = shelf != NULL && key.length > 0;
    sw_prelude *known = kept ? sw_shelf_find_prelude(shelf, sw_buffer_slice(&key)) : NULL;
    if (known != NULL) {
        take_over(reader, known);
    } else {
        size_t own_findings = reader->reading->findings.count;
        sw_cursor includes = *cursor;
        includes.end = behind.at;
        sw_read_toplevel(reader, &includes, &reader->waiting);
        if (kept && is_of_others(reader->reading, own_findings)) {
            sw_shelf_keep_prelude(shelf, sw_buffer_slice(&key), keep(reader));
        }
    }
    *cursor = behind;
    sw_buffer_free(&key);
}

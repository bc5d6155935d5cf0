/* Files: where they are found, and which ones of the language itself need not be. */
#include <stdlib.h>
#include <string.h>

#include "score/reader.h"
#include "score/shelf.h"

static sw_text *find_overlay(const sw_reader *reader, const char *path)
{
    const sw_read_options *options = reader->options;
    if (options == NULL || options->overlay_count == 0) {
        return NULL;
    }
    char *real = realpath(path, NULL);
    sw_text *found = NULL;
    for (size_t i = 0; i < options->overlay_count && found == NULL; i++) {
        const sw_text *overlay = options->overlays[i];
        char *looked_up = overlay->real_path != NULL ? NULL : realpath(overlay->path, NULL);
        const char *other = looked_up != NULL ? looked_up : overlay->real_path;
        if (strcmp(overlay->path, path) == 0 || (real != NULL && other != NULL && strcmp(real, other) == 0)) {
            found = (sw_text *)(uintptr_t)overlay; /* only read, and not freed: see sw_file.owned */
        }
        free(looked_up);
    }
    free(real);
    return found;
}

/* NULL with *error when it is no source; the text is freed then, if it is ours. */
static sw_syntax *parse(sw_text *text, sw_node_kind block, bool owned, char **error)
{
    sw_syntax *syntax = sw_syntax_parse_inside(text, block);
    *error = sw_syntax_refusal(syntax);
    if (*error == NULL) {
        return syntax;
    }
    sw_syntax_free(syntax);
    if (owned) {
        sw_text_free(text);
    }
    return NULL;
}

/* The block around an \include, where its words are others than those of notes. */
static sw_node_kind block_around(const sw_reader *reader)
{
    return reader->mode == SW_MODE_LYRICS    ? SW_NODE_LYRIC_BLOCK
           : reader->mode == SW_MODE_CHORDS  ? SW_NODE_CHORDNAME_BLOCK
           : reader->mode == SW_MODE_FIGURES ? SW_NODE_FIGURE_BLOCK
                                             : SW_NODE_FILE;
}

uint32_t sw_open_file(sw_reader *reader, const char *path, uint32_t includer, char **error)
{
    sw_text *text = find_overlay(reader, path);
    bool owned = text == NULL;
    sw_syntax *syntax = NULL;
    sw_node_kind block = block_around(reader);
    bool shelved = reader->options != NULL && block == SW_NODE_FILE;
    sw_shelf *shelf = shelved ? reader->options->shelf : NULL;
    if (shelf != NULL && owned) {
        sw_shelf_take(shelf, path, &text, &syntax, error);
    } else if (shelf != NULL) {
        syntax = sw_shelf_parse(shelf, text, error);
    } else {
        text = owned ? sw_text_read(path, error) : text;
        syntax = text == NULL ? NULL : parse(text, block, owned, error);
    }
    if (syntax == NULL) {
        return SW_NO_INDEX;
    }
    sw_reading *reading = reader->reading;
    reading->files = sw_grow(reading->files, reading->file_count, &reading->file_capacity, sizeof(sw_file));
    uint32_t file = (uint32_t)reading->file_count++;
    reading->files[file] = (sw_file){.text = text, .syntax = syntax, .includer = includer, .owned = owned};
    reader->source_bytes += text->length;
    sw_syntax_fault fault;
    if (sw_syntax_find_fault(syntax, &fault)) {
        sw_findings_add(&reading->findings, SW_ERROR, "syntax", file, fault.start, fault.end, "%s",
                        fault.message);
    }
    return file;
}

/* The path in a folder, which ends with its separator or is empty, when there is such a file; otherwise NULL.
 * The caller frees it. */
static char *find_in(const sw_reader *reader, sw_slice folder, sw_slice path)
{
    sw_buffer candidate = {0};
    sw_buffer_append(&candidate, folder);
    sw_buffer_append(&candidate, path);
    const char *text = sw_buffer_text(&candidate);
    if (sw_file_exists(text) || find_overlay(reader, text) != NULL) {
        return candidate.data;
    }
    sw_buffer_free(&candidate);
    return NULL;
}

/* Where an included file is found: beside the including file, beside the main file, then along the search
 * path. */
static char *locate(const sw_reader *reader, uint32_t from, sw_slice path)
{
    static const sw_slice nowhere = {"", 0};
    const sw_reading *reading = reader->reading;
    const sw_read_options *options = reader->options;
    if (path.length > 0 && path.data[0] == '/') {
        return find_in(reader, nowhere, path);
    }
    char *found = find_in(reader, sw_path_folder(reading->files[from].text->path), path);
    if (found == NULL) {
        found = find_in(reader, sw_path_folder(reading->files[0].text->path), path);
    }
    for (size_t i = 0; options != NULL && i < options->include_path_count && found == NULL; i++) {
        sw_buffer folder = {0};
        sw_buffer_format(&folder, "%s/", options->include_path[i]);
        found = find_in(reader, sw_buffer_slice(&folder), path);
        sw_buffer_free(&folder);
    }
    return found;
}

/* Defines values that are no music under names of a space-separated list. */
static void define_values(sw_reader *reader, const char *names)
{
    for (size_t length; *names != '\0'; names += length + (names[length] == ' ')) {
        length = strcspn(names, " ");
        uint32_t name = sw_names_add(reader->reading->names, (sw_slice){names, length});
        sw_value value = {.kind = SW_VALUE_SYMBOL, .music = SW_NO_INDEX, .text = name};
        sw_define(reader, name, &value);
    }
}

/* Defines the commands of a file that comes with the compiler. */
static void define_commands(sw_reader *reader, const sw_command *commands, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        sw_value value = {.kind = SW_VALUE_FUNCTION,
                          .music = SW_NO_INDEX,
                          .function = sw_function_of(reader, &commands[i])};
        sw_define(reader, sw_names_add(reader->reading->names, sw_slice_of(commands[i].name)), &value);
    }
}

/* Files that come with the language itself and define no notes of their own: what of them matters to the
 * notes, the input language and the names of keys, is known. */
static bool is_language_file(sw_reader *reader, sw_slice path)
{
    static const struct {
        const char *path;
        const char *language; /* NULL: none */
        const char *keys;
    } known[] = {
        {"arabic.ly", "italiano", "bayati hijaz hijaz_kar iraq kurd rast sikah"},
        {"articulate.ly", NULL, ""},
        {"bagpipe.ly", NULL, ""},
        {"base-tkit.ly", NULL, ""},
        {"event-listener.ly", NULL, ""},
        {"festival.ly", NULL, ""},
        {"gregorian.ly", NULL, ""},
        {"hel-arabic.ly", "arabic",
         "alhizazkar bayati chatarabane farahfaza hizaz hizazkarkurdy jaharkah kurd nahawande nakriz "
         "nawaatar "
         "rast sikah souznak yakah"},
        {"lilypond-book-preamble.ly", NULL, ""},
        {"predefined-guitar-fretboards.ly", NULL, ""},
        {"predefined-guitar-ninth-fretboards.ly", NULL, ""},
        {"predefined-mandolin-fretboards.ly", NULL, ""},
        {"predefined-ukulele-fretboards.ly", NULL, ""},
        {"property-init.ly", NULL, ""},
        {"swing.ly", NULL, ""},
        {"vocal-tkit.ly", NULL, ""},
        {"voice-tkit.ly", NULL, ""},
    };
    for (size_t i = 0; i < sizeof known / sizeof known[0]; i++) {
        if (sw_slice_is(path, known[i].path)) {
            if (known[i].language != NULL) {
                sw_use_language(reader, sw_language_find(sw_slice_of(known[i].language)));
            }
            define_values(reader, known[i].keys);
            if (sw_slice_is(path, "gregorian.ly")) {
                define_commands(reader, sw_gregorian_commands, sw_gregorian_command_count);
            }
            return true;
        }
    }
    if (path.length > 3 && sw_slice_ends(path, ".ly")) {
        const sw_language *language = sw_language_find((sw_slice){path.data, path.length - 3});
        if (language != NULL) {
            sw_use_language(reader, language);
            return true;
        }
    }
    return false;
}

/* Why a file that was found must not be included here, or NULL. */
static const char *refusal(const sw_reader *reader, uint32_t from, const char *found)
{
    const sw_reading *reading = reader->reading;
    for (uint32_t file = from; file != SW_NO_INDEX; file = reading->files[file].includer) {
        if (strcmp(reading->files[file].text->path, found) == 0) {
            return "includes itself";
        }
    }
    if (reader->include_depth >= SW_MAX_INCLUDE_DEPTH) { /* by another path to the same file, say */
        return "stands too deep in files that include files: it probably includes itself";
    }
    return reading->file_count >= SW_MAX_FILES ? "comes after more included files than any score has" : NULL;
}

/* Reads a file that is included where music is: its items go to `children`; otherwise they are of the outer
 * level. */
void sw_read_include(sw_reader *reader, sw_cursor *from, sw_slice path, const sw_node *where,
                     sw_pending_list *scores, sw_children *children)
{
    sw_reading *reading = reader->reading;
    if (reader->options != NULL && reader->options->alone) {
        is_language_file(reader, path);
        return;
    }
    char *found = locate(reader, from->file, path);
    if (found == NULL) {
        if (!is_language_file(reader, path)) {
            sw_findings_add(
                &reading->findings, SW_ERROR, "include", from->file, where->start, where->end,
                "the included file \"%.*s\" is not found, neither beside this file nor along the include "
                "path; what it defines is missing",
                (int)path.length, path.data);
        }
        return;
    }
    const char *refused = refusal(reader, from->file, found);
    if (refused != NULL) {
        sw_findings_add(&reading->findings, SW_ERROR, "include", from->file, where->start, where->end,
                        "\"%.*s\" %s; it is not read here", (int)path.length, path.data, refused);
        free(found);
        return;
    }
    char *error = NULL;
    uint32_t file = sw_open_file(reader, found, from->file, &error);
    free(found);
    if (file == SW_NO_INDEX) {
        sw_findings_add(&reading->findings, SW_ERROR, "include", from->file, where->start, where->end, "%s",
                        error);
        free(error);
        return;
    }
    reader->include_depth++;
    sw_cursor inside = sw_cursor_inside(reader, file, 0);
    if (children != NULL) {
        sw_read_sequence(reader, &inside, children);
    } else {
        sw_read_toplevel(reader, &inside, scores);
    }
    reader->include_depth--;
}

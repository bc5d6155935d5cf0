#include <stdio.h>
#include <string.h>

#include "base/nearest.h"
#include "players/yaml_reader.h"

/* ---- mistakes ----------------------------------------------------------------------------------- */

static void vfail_at(sw_yaml_reader *r, yaml_mark_t mark, const char *format, va_list arguments)
{
    sw_buffer text = {0};
    sw_buffer_format(&text, "%s:%zu:%zu: ", r->path, mark.line + 1, mark.column + 1);
    sw_buffer_vformat(&text, format, arguments);
    *r->error = text.data;
}

__attribute__((format(printf, 3, 4))) static void fail_at(sw_yaml_reader *r, yaml_mark_t mark,
                                                          const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    vfail_at(r, mark, format, arguments);
    va_end(arguments);
}

bool sw_yaml_fail(sw_yaml_reader *r, const yaml_node_t *node, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    vfail_at(r, node->start_mark, format, arguments);
    va_end(arguments);
    return false;
}

bool sw_yaml_fail_word(sw_yaml_reader *r, const yaml_node_t *node, const char *what, sw_slice word,
                       const char *const *words, size_t count)
{
    const char *nearest = sw_nearest_word(word, words, count);
    if (nearest != NULL) {
        return sw_yaml_fail(r, node, "unknown %s '%.*s'; did you mean '%s'?", what, (int)word.length,
                            word.data, nearest);
    }
    sw_buffer list = {0};
    for (size_t i = 0; i < count; i++) {
        sw_buffer_format(&list, "%s%s", i == 0 ? "" : ", ", words[i]);
    }
    sw_yaml_fail(r, node, "unknown %s '%.*s'; use one of: %s", what, (int)word.length, word.data,
                 sw_buffer_text(&list));
    sw_buffer_free(&list);
    return false;
}

/* ---- values ------------------------------------------------------------------------------------- */

const yaml_node_t *sw_yaml_node(sw_yaml_reader *r, int number)
{
    return yaml_document_get_node(&r->document, number);
}

bool sw_yaml_text(sw_yaml_reader *r, const yaml_node_t *node, const char *what, sw_slice *text)
{
    if (node->type != YAML_SCALAR_NODE || node->data.scalar.length == 0) {
        return sw_yaml_fail(r, node, "%s must be a text", what);
    }
    *text = (sw_slice){(const char *)node->data.scalar.value, node->data.scalar.length};
    for (size_t i = 0; i < text->length; i++) {
        if ((unsigned char)text->data[i] < ' ') {
            return sw_yaml_fail(r, node, "%s must be a text on one line", what);
        }
    }
    return true;
}

bool sw_yaml_pitch(sw_yaml_reader *r, const yaml_node_t *node, const char *what, sw_pitch *pitch)
{
    sw_slice text;
    if (!sw_yaml_text(r, node, what, &text)) {
        return false;
    }
    if (!sw_pitch_from_scientific(text, pitch)) {
        return sw_yaml_fail(
            r, node,
            "%s: '%.*s' is no pitch; write a letter, # or b, and the octave: Bb3, F#2, C4 (middle C)", what,
            (int)text.length, text.data);
    }
    return true;
}

bool sw_yaml_number(sw_yaml_reader *r, const yaml_node_t *node, const char *what, int *number)
{
    sw_slice text;
    if (!sw_yaml_text(r, node, what, &text)) {
        return false;
    }
    bool digits = text.length <= 2;
    int value = 0;
    for (size_t i = 0; digits && i < text.length; i++) {
        digits = text.data[i] >= '0' && text.data[i] <= '9';
        value = value * 10 + (text.data[i] - '0');
    }
    if (!digits || value == 0) {
        return sw_yaml_fail(r, node, "%s: '%.*s' is no number from 1 to 99", what, (int)text.length,
                            text.data);
    }
    *number = value;
    return true;
}

/* Digits with at most one point among them. */
static bool read_decimal(sw_slice text, double *result)
{
    size_t digits = 0;
    size_t points = 0;
    double value = 0;
    double unit = 1;
    for (size_t i = 0; i < text.length; i++) {
        if (text.data[i] == '.') {
            points++;
            continue;
        }
        if (text.data[i] < '0' || text.data[i] > '9') {
            return false;
        }
        digits++;
        value = value * 10 + (text.data[i] - '0');
        unit = points > 0 ? unit * 10 : unit;
    }
    *result = value / unit;
    return digits > 0 && digits <= 9 && points <= 1;
}

bool sw_yaml_seconds(sw_yaml_reader *r, const yaml_node_t *node, const char *what, double *seconds)
{
    sw_slice text;
    if (!sw_yaml_text(r, node, what, &text)) {
        return false;
    }
    return read_decimal(text, seconds) ||
           sw_yaml_fail(r, node, "%s: '%.*s' is no number of seconds; write 2 or 0.5", what, (int)text.length,
                        text.data);
}

bool sw_yaml_decimal(sw_yaml_reader *r, const yaml_node_t *node, const char *what, double *value)
{
    sw_slice text;
    if (!sw_yaml_text(r, node, what, &text)) {
        return false;
    }
    return read_decimal(text, value) || sw_yaml_fail(r, node, "%s: '%.*s' is no number; write 2 or 0.5", what,
                                                     (int)text.length, text.data);
}

bool sw_yaml_flag(sw_yaml_reader *r, const yaml_node_t *node, const char *what, bool *flag)
{
    sw_slice text;
    if (!sw_yaml_text(r, node, what, &text)) {
        return false;
    }
    *flag = sw_slice_is(text, "true");
    return *flag || sw_slice_is(text, "false") ? true
                                               : sw_yaml_fail(r, node, "%s must be true or false", what);
}

/* ---- lists and mappings ---------------------------------------------------------------------------- */

bool sw_yaml_fields(sw_yaml_reader *r, const yaml_node_t *node, const char *what, const char *const *keys,
                    size_t count, const yaml_node_t **values)
{
    for (size_t i = 0; i < count; i++) {
        values[i] = NULL;
    }
    if (node->type != YAML_MAPPING_NODE) {
        return sw_yaml_fail(r, node, "%s must be a mapping, as in '%s: ...'", what, keys[0]);
    }
    for (const yaml_node_pair_t *pair = node->data.mapping.pairs.start; pair < node->data.mapping.pairs.top;
         pair++) {
        const yaml_node_t *key = sw_yaml_node(r, pair->key);
        sw_slice text;
        if (!sw_yaml_text(r, key, "a key", &text)) {
            return false;
        }
        size_t i = 0;
        while (i < count && !sw_slice_is(text, keys[i])) {
            i++;
        }
        if (i == count) {
            return sw_yaml_fail_word(r, key, "key", text, keys, count);
        }
        if (values[i] != NULL) {
            return sw_yaml_fail(r, key, "'%s' stands twice here; remove one", keys[i]);
        }
        values[i] = sw_yaml_node(r, pair->value);
    }
    return true;
}

bool sw_yaml_list(sw_yaml_reader *r, const yaml_node_t *node, const char *what,
                  const yaml_node_item_t **items, size_t *count)
{
    if (node->type != YAML_SEQUENCE_NODE) {
        return sw_yaml_fail(r, node, "%s must be a list, as in [one, two]", what);
    }
    *items = node->data.sequence.items.start;
    *count = (size_t)(node->data.sequence.items.top - node->data.sequence.items.start);
    return true;
}

/* ---- documents ---------------------------------------------------------------------------------- */

/* The place of a byte; the parser gives none where the text is no UTF-8. */
static yaml_mark_t mark_of_byte(sw_slice yaml, size_t byte)
{
    yaml_mark_t mark = {byte, 0, 0};
    for (size_t i = 0; i < byte && i < yaml.length; i++) {
        if (yaml.data[i] == '\n') {
            mark.line++;
            mark.column = 0;
        } else if (((unsigned char)yaml.data[i] & 0xC0u) != 0x80) {
            mark.column++;
        }
    }
    return mark;
}

static void fail_to_parse(sw_yaml_reader *r, const yaml_parser_t *parser, sw_slice yaml)
{
    if (parser->error == YAML_READER_ERROR) {
        fail_at(r, mark_of_byte(yaml, parser->problem_offset), "%s; save the file as UTF-8 text",
                parser->problem);
        return;
    }
    fail_at(r, parser->problem_mark, "this is no YAML: %s%s%s; mend the indentation or quote the text",
            parser->problem, parser->context != NULL ? " " : "",
            parser->context != NULL ? parser->context : "");
}

/* True when nothing follows the first document. */
static bool ends_here(sw_yaml_reader *r, yaml_parser_t *parser, sw_slice yaml)
{
    yaml_document_t next;
    if (!yaml_parser_load(parser, &next)) {
        fail_to_parse(r, parser, yaml);
        return false;
    }
    const yaml_node_t *more = yaml_document_get_root_node(&next);
    if (more != NULL) {
        sw_yaml_fail(r, more,
                     "a second document begins here; put everything into one, without '---' between");
    }
    yaml_document_delete(&next);
    return more == NULL;
}

bool sw_yaml_parse(sw_yaml_reader *r, sw_slice yaml, const yaml_node_t **root)
{
    yaml_parser_t parser;
    if (!yaml_parser_initialize(&parser)) {
        *r->error = strdup("out of memory");
        return false;
    }
    yaml_parser_set_input_string(&parser, (const unsigned char *)yaml.data, yaml.length);
    bool good = yaml_parser_load(&parser, &r->document) != 0;
    if (!good) {
        fail_to_parse(r, &parser, yaml);
    } else {
        *root = yaml_document_get_root_node(&r->document);
        good = *root == NULL || ends_here(r, &parser, yaml);
        if (!good) {
            yaml_document_delete(&r->document);
        }
    }
    yaml_parser_delete(&parser);
    return good;
}

/* Abbreviations: `sharp = \tweak color #red \etc`. What stands before the \etc is read again at each use, and
 * what follows the use completes it. */
#include "score/reader.h"

/* No call has more items in front of its last argument; definitions that are no abbreviation are not searched
 * to the end of the file. */
enum { MAX_ITEMS = 24 };

static bool sets_property(sw_slice command)
{
    return sw_slice_is(command, "\\override") || sw_slice_is(command, "\\set");
}

/* The \etc that ends the items at the cursor, in the same definition; 0 when there is none. */
static uint32_t find_etc(sw_cursor cursor)
{
    bool path = false; /* the `=` of \override and \set belongs to them, another one to the next definition */
    for (int items = 0; items < MAX_ITEMS && sw_cursor_more(&cursor); items++) {
        sw_slice text = sw_cursor_text(&cursor);
        if (sw_cursor_is_mark(&cursor, '=')) {
            if (!path) {
                return 0;
            }
            path = false;
        } else if (sw_cursor_kind(&cursor) == SW_NODE_COMMAND) {
            if (sw_slice_is(text, "\\etc")) {
                return items > 0 ? cursor.at : 0;
            }
            path = path || sets_property(text);
        }
        sw_cursor_next(&cursor);
    }
    return 0;
}

bool sw_read_abbreviation(sw_reader *reader, sw_cursor *cursor, sw_value *value)
{
    uint32_t etc = find_etc(*cursor);
    if (etc == 0) {
        return false;
    }
    sw_cursor *items = sw_arena_alloc(reader->arena, sizeof *items);
    *items = *cursor;
    items->end = etc;
    const sw_node *last = &cursor->syntax->nodes[etc];
    *value = (sw_value){.kind = SW_VALUE_ABBREVIATION,
                        .music = SW_NO_INDEX,
                        .items = items,
                        .file = cursor->file,
                        .start = sw_cursor_node(cursor)->start,
                        .end = last->end};
    cursor->at = last->next;
    return true;
}

/* Abbreviations inside of abbreviations, counted over all texts: those that use themselves, or each other
 * twice, would grow without end. Real scores have a handful. */
enum { MOST_NESTED = 2000 };

static bool is_too_often(sw_reader *reader, const sw_value *call)
{
    reader->nested_abbreviations += reader->open_abbreviations > 0;
    if (reader->nested_abbreviations <= MOST_NESTED) {
        return false;
    }
    if (reader->nested_abbreviations == MOST_NESTED + 1) {
        sw_findings_add(
            &reader->reading->findings, SW_ERROR, "unresolved", call->file, call->start, call->end,
            "abbreviations are used inside of abbreviations more than %d times; from here on they are left "
            "out",
            MOST_NESTED);
    }
    return true;
}

sw_value sw_use_abbreviation(sw_reader *reader, sw_cursor *cursor, const sw_cursor *items,
                             const sw_value *call)
{
    if (is_too_often(reader, call)) {
        return (sw_value){.kind = SW_VALUE_NONE,
                          .music = SW_NO_INDEX,
                          .file = call->file,
                          .start = call->start,
                          .end = call->end};
    }
    reader->open_abbreviations++;
    sw_abbreviated *abbreviated = sw_arena_alloc(reader->arena, sizeof *abbreviated);
    *abbreviated = (sw_abbreviated){*cursor, call->file, call->start, call->end};
    sw_cursor inside = *items;
    inside.abbreviated = abbreviated;
    sw_value value = sw_read_item(reader, &inside);
    reader->open_abbreviations--;
    sw_cursor_more(&inside); /* steps out of the abbreviation when it has been read to its end */
    *cursor = inside.abbreviated == abbreviated ? abbreviated->rest : inside;
    return value;
}

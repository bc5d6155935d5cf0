/* The \layout blocks of a score: where they are, and what they say about contexts. */
#include "score/layouts.h"

#include <string.h>

static void go_through_block(sw_reader *reader, uint32_t file, uint32_t block, sw_layout_setting *set,
                             void *data)
{
    sw_cursor cursor = sw_cursor_inside(reader, file, block);
    while (sw_cursor_more(&cursor)) {
        sw_slice word = sw_cursor_text(&cursor);
        sw_node_kind kind = sw_cursor_kind(&cursor);
        sw_cursor_next(&cursor);
        if (kind == SW_NODE_COMMAND) {
            set(data, word, (sw_slice){"", 0});
        } else if (kind == SW_NODE_WORD && sw_cursor_is_mark(&cursor, '=')) {
            sw_cursor_next(&cursor);
            if (sw_cursor_more(&cursor)) {
                set(data, word, sw_cursor_text(&cursor));
                sw_cursor_next(&cursor);
            }
        }
    }
}

/* The block that stands directly behind a node; SW_NO_INDEX when there is none. */
static uint32_t block_behind(const sw_syntax *syntax, uint32_t node, uint32_t end)
{
    uint32_t next = syntax->nodes[node].next;
    return next < end && syntax->nodes[next].kind == SW_NODE_BLOCK ? next : SW_NO_INDEX;
}

/* The \context { \TYPE ... } blocks of a \layout block. */
static void go_through_layout(sw_reader *reader, uint32_t file, uint32_t layout, sw_slice type,
                              sw_layout_setting *set, void *data)
{
    const sw_syntax *syntax = reader->reading->files[file].syntax;
    uint32_t end = syntax->nodes[layout].next;
    for (uint32_t i = layout + 1; i < end; i = syntax->nodes[i].next) {
        uint32_t block =
            sw_slice_is(sw_syntax_slice(syntax, i), "\\context") ? block_behind(syntax, i, end) : SW_NO_INDEX;
        if (block == SW_NO_INDEX) {
            continue;
        }
        for (uint32_t c = block + 1; c < syntax->nodes[block].next; c = syntax->nodes[c].next) {
            sw_slice text = sw_syntax_slice(syntax, c);
            if (text.length == type.length + 1 && text.data[0] == '\\' && sw_slice_ends(text, type.data)) {
                go_through_block(reader, file, block, set, data);
                break;
            }
        }
    }
}

/* Finds the \layout blocks outside of scores, and those in this one, which takes over only those that stand
 * before it then. Blocks of music are passed over. */
static void find_layouts(sw_player *p)
{
    const sw_reading *reading = p->reader->reading;
    for (uint32_t file = 0; file < reading->file_count; file++) {
        const sw_syntax *syntax = reading->files[file].syntax;
        uint32_t end = syntax->nodes[0].next;
        bool own = false;
        for (uint32_t i = 1; i < end;) {
            uint32_t block = block_behind(syntax, i, end);
            uint32_t next = syntax->nodes[i].next;
            if (block != SW_NO_INDEX) {
                sw_slice text = sw_syntax_slice(syntax, i);
                bool here = file == p->score->file && syntax->nodes[i].start == p->score->start;
                if (sw_slice_is(text, "\\layout")) {
                    bool inside = file == p->score->file && syntax->nodes[i].start >= p->score->start &&
                                  syntax->nodes[i].start < p->score->end;
                    if (inside || !own) {
                        p->layouts =
                            sw_grow(p->layouts, p->layout_count, &p->layout_capacity, sizeof *p->layouts);
                        p->layouts[p->layout_count++] = (sw_layout_block){file, block};
                    }
                    own = own || inside;
                    next = syntax->nodes[block].next;
                } else if (sw_slice_starts(text, "\\book") || (sw_slice_is(text, "\\score") && here)) {
                    next = block + 1;
                } else {
                    next = syntax->nodes[block].next;
                }
            }
            i = next;
        }
    }
}

void sw_layouts_each(sw_player *p, const char *type, sw_layout_setting *set, void *data)
{
    if (!p->layouts_found) {
        p->layouts_found = true;
        find_layouts(p);
    }
    for (size_t i = 0; i < p->layout_count; i++) {
        go_through_layout(p->reader, p->layouts[i].file, p->layouts[i].node, sw_slice_of(type), set, data);
    }
}

static void set_first_number(void *data, sw_slice property, sw_slice value)
{
    if (!sw_slice_is(property, "currentBarNumber")) {
        return;
    }
    int32_t number = 0;
    size_t digits = 0;
    for (size_t i = 0; i < value.length && number < 10000000; i++) {
        if (value.data[i] >= '0' && value.data[i] <= '9') {
            number = number * 10 + (value.data[i] - '0');
            digits++;
        } else if (value.data[i] != '#') {
            return;
        }
    }
    if (digits > 0) {
        *(int32_t *)data = number;
    }
}

int32_t sw_layout_first_number(sw_player *p)
{
    int32_t number = 1;
    sw_layouts_each(p, "Score", set_first_number, &number);
    return number;
}

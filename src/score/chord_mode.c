/* Chord mode: the notes that a chord symbol such as `c:m7/g` stands for. */
#include "score/reader.h"

uint32_t sw_read_chord_mode(sw_reader *reader, sw_cursor *cursor, uint32_t root);

uint32_t sw_read_chord_mode(sw_reader *reader, sw_cursor *cursor, uint32_t root)
{
    (void)reader;
    while (sw_cursor_more(cursor) && sw_cursor_kind(cursor) == SW_NODE_CHORD_MODIFIER) {
        sw_cursor_next(cursor);
    }
    return root;
}

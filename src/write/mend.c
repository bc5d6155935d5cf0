/* What follows an edit inherits octaves and values from before it: one octave mark and one value are mended.
 */
#include <ctype.h>
#include <string.h>

#include "write/printer.h"

static const sw_music *at(const sw_printer *p, uint32_t music)
{
    return &p->reading->music[music];
}

void sw_print_apart(sw_patch *patch, const sw_text *text, uint32_t start, uint32_t end, sw_buffer *out)
{
    sw_slice old = sw_buffer_slice(out);
    sw_buffer whole = {0};
    bool before = start > 0 && old.length > 0 && isalnum((unsigned char)text->bytes[start - 1]) &&
                  isalnum((unsigned char)old.data[0]);
    bool behind = end < text->length && old.length > 0 && isalnum((unsigned char)text->bytes[end]) &&
                  isalnum((unsigned char)old.data[old.length - 1]);
    sw_buffer_string(&whole, before ? " " : "");
    sw_buffer_append(&whole, old);
    sw_buffer_string(&whole, behind ? " " : "");
    sw_patch_add(patch, text, start, end, sw_buffer_slice(&whole));
    sw_buffer_free(&whole);
}

/* \octaveCheck d' behind a note that has moved: it must agree with the note again. */
static void mend_check(const sw_draft *draft, uint32_t check, sw_pitch reference, sw_patch *patch)
{
    const sw_music *m = &draft->reading->music[check];
    sw_pitch near = sw_pitch_relative(reference, m->pitch, 0);
    sw_slice text = sw_music_slice(draft->reading, check);
    uint32_t marks = m->end;
    while (marks > m->start && strchr("',", text.data[marks - 1 - m->start]) != NULL) {
        marks--;
    }
    if (near.octave != m->pitch.octave) {
        sw_buffer out = {0};
        sw_print_octave(&out, near.octave + 1);
        sw_patch_add(patch, draft->reading->files[m->file].text, marks, m->end, sw_buffer_slice(&out));
        sw_buffer_free(&out);
    }
}

/* The next note counts its octave from another pitch now. */
void sw_mend_octave(sw_draft *draft, uint32_t music, sw_patch *patch)
{
    const sw_reading *reading = draft->reading;
    uint32_t next = sw_entry_next_note(draft, music);
    sw_pitch reference;
    while (next != SW_NO_INDEX && reading->music[next].kind == SW_MUSIC_OCTAVE_CHECK) {
        if (!sw_entry_reference(draft, next, &reference)) {
            return;
        }
        mend_check(draft, next, reference, patch);
        next = sw_entry_next_note(draft, next);
    }
    if (next == SW_NO_INDEX || !sw_entry_reference(draft, next, &reference)) {
        return;
    }
    const sw_music *m = &reading->music[next];
    int marks = sw_pitch_relative_marks(reference, m->pitch);
    if (marks == m->octave_marks) {
        return;
    }
    sw_slice text = sw_music_slice(reading, next);
    uint32_t from = m->start + m->name_length;
    uint32_t to = from;
    for (uint32_t i = m->name_length; i < text.length && strchr("', ,\t\r\n", text.data[i]) != NULL; i++) {
        to = text.data[i] == '\'' || text.data[i] == ',' ? m->start + i + 1 : to;
    }
    sw_buffer out = {0};
    sw_print_octave(&out, marks);
    sw_patch_add(patch, reading->files[m->file].text, from, to, sw_buffer_slice(&out));
    sw_buffer_free(&out);
}

/* The next item inherits another value now: it gets its own. */
void sw_mend_value(const sw_printer *p, const sw_item_order *order, uint32_t file, uint32_t offset,
                   sw_patch *patch)
{
    uint32_t next = sw_item_order_behind(order, p->reading, file, offset);
    if (next == SW_NO_INDEX || sw_draft_item_of(p->draft, next) != NULL) {
        return;
    }
    const sw_music *m = at(p, next);
    const sw_text *text = p->reading->files[file].text;
    uint32_t body = sw_item_body_end(p->reading, next);
    sw_duration own = sw_music_duration(m);
    bool written = (m->flags & SW_MUSIC_WRITTEN_VALUE) != 0;
    uint32_t end = body;
    if (written) {
        sw_slice value = sw_text_slice(text, body, m->end);
        bool factor_only = m->end > body && sw_slice_starts(sw_slice_trim(value), "*");
        if (!factor_only || sw_rational_equal(sw_duration_head(own), sw_duration_head(p->value))) {
            return;
        }
        end = m->end;
    } else if (sw_duration_equal(own, p->value)) {
        return;
    }
    char value[SW_DURATION_TEXT];
    sw_patch_add(patch, text, body, end, sw_slice_of(sw_duration_print(own, value)));
}

/* The text at the end of a bar: its check, its number, its line. */
#include "moves/bar_layout.h"

#include <string.h>

/* The end of an item with all that hangs on it. */
uint32_t sw_bar_whole_end(const sw_bar_layout *l, uint32_t music)
{
    const sw_music *node = &l->reading->music[music];
    uint32_t end = node->end;
    for (uint32_t c = node->first; c != SW_NO_INDEX && node->kind != SW_MUSIC_REFERENCE;
         c = l->reading->music[c].next) {
        if (l->reading->music[c].file == node->file) {
            uint32_t other = sw_bar_whole_end(l, c);
            end = other > end ? other : end;
        }
    }
    return end;
}

/* The first syntax node that begins at or behind an offset. */
uint32_t sw_bar_node_from(const sw_bar_layout *l, uint32_t offset)
{
    uint32_t low = 0;
    uint32_t high = l->syntax->count;
    while (low < high) {
        uint32_t middle = (low + high) / 2;
        if (l->syntax->nodes[middle].start < offset) {
            low = middle + 1;
        } else {
            high = middle;
        }
    }
    return low;
}

static uint32_t skip_blanks(const sw_bar_layout *l, uint32_t at)
{
    while (at < l->text->length && (l->text->bytes[at] == ' ' || l->text->bytes[at] == '\t')) {
        at++;
    }
    return at;
}

static bool is_line_end(const sw_bar_layout *l, uint32_t at)
{
    return at >= l->text->length || l->text->bytes[at] == '\n' || l->text->bytes[at] == '\r';
}

static uint32_t line_start(const sw_bar_layout *l, uint32_t at)
{
    while (at > 0 && l->text->bytes[at - 1] != '\n') {
        at--;
    }
    return at;
}

/* Whether only blanks stand before an offset on its line. */
static bool begins_line(const sw_bar_layout *l, uint32_t at)
{
    return skip_blanks(l, line_start(l, at)) >= at;
}

bool sw_bar_has_line_end(const sw_bar_layout *l, uint32_t from, uint32_t to)
{
    return memchr(l->text->bytes + from, '\n', to - from) != NULL;
}

void sw_bar_add_line_end(const sw_bar_layout *l, sw_buffer *text)
{
    sw_buffer_append(text, sw_slice_of(sw_text_newline(l->text)));
}

/* The blanks before the line on which something begins. */
sw_slice sw_bar_indentation(const sw_bar_layout *l, uint32_t at)
{
    uint32_t start = line_start(l, at);
    return sw_text_slice(l->text, start, skip_blanks(l, start));
}

/* The blanks with which a line of the sequence begins: as its first line that begins with an item. */
static void add_indentation(const sw_bar_layout *l, const sw_music *sequence, sw_buffer *text)
{
    const sw_music *music = l->reading->music;
    for (uint32_t c = sequence->first; c != SW_NO_INDEX; c = music[c].next) {
        uint32_t start = line_start(l, music[c].start);
        if (music[c].file == sequence->file && start > sequence->start && begins_line(l, music[c].start)) {
            sw_buffer_append(text, sw_text_slice(l->text, start, music[c].start));
            return;
        }
    }
    sw_slice outer = sw_bar_indentation(l, sequence->start);
    sw_buffer_append(text, outer);
    sw_buffer_string(text, outer.length > 0 && outer.data[0] == '\t' ? "\t" : "  ");
}

void sw_bar_replace(sw_bar_layout *l, uint32_t start, uint32_t end, const sw_buffer *by)
{
    if (!sw_slice_equal(sw_text_slice(l->text, start, end), sw_buffer_slice(by))) {
        sw_patch_add(&l->move->patch, l->text, start, end, sw_buffer_slice(by));
    }
}

static size_t span(sw_slice text, size_t at, const char *of)
{
    while (at < text.length && strchr(of, text.data[at]) != NULL) {
        at++;
    }
    return at;
}

/* Whether a comment is a bar number alone: "% 12", "%12", "% 12-15"; *first and *end are its digits then. */
static bool is_number(sw_slice comment, size_t *first, size_t *end)
{
    *first = span(comment, 0, "% \t");
    *end = span(comment, *first, "0123456789-");
    return *end > *first && comment.data[*first] != '-' && span(comment, *end, " \t\r\n") == comment.length;
}

/* "12" or "12-15"; nothing where there is no number to give. */
void sw_bar_add_number(sw_buffer *text, bool numbered, int32_t first, int32_t last)
{
    if (!numbered || first < 1 || last < first) {
        return;
    }
    sw_buffer_format(text, first < last ? "%d-%d" : "%d", first, last);
}

static bool stays_with_bar(sw_slice command)
{
    static const char *const names[] = {"\\bar", "\\break", "\\pageBreak", "\\noBreak"};
    for (size_t i = 0; i < sizeof names / sizeof names[0]; i++) {
        if (sw_slice_is(command, names[i])) {
            return true;
        }
    }
    return false;
}

/* False when something stands there that is not understood. */
bool sw_bar_look_between(const sw_bar_layout *l, uint32_t from, uint32_t limit, sw_bar_gap *g)
{
    *g = (sw_bar_gap){.start = from, .check = UINT32_MAX, .behind = from};
    bool near = true; /* nothing but what stays has come so far */
    bool argument = false;
    bool comment = false;
    for (uint32_t n = sw_bar_node_from(l, from); n < l->syntax->count && l->syntax->nodes[n].start < limit;
         n = l->syntax->nodes[n].next) {
        const sw_node *node = &l->syntax->nodes[n];
        sw_slice text = sw_syntax_slice(l->syntax, n);
        if (node->kind == SW_NODE_POST_EVENT || node->kind == SW_NODE_PUNCTUATION || node->end > limit) {
            return false;
        }
        if (node->kind == SW_NODE_BAR_CHECK) {
            g->check = node->start;
            g->behind = node->end;
            g->adjacent = near;
            return true;
        }
        comment = comment || node->kind == SW_NODE_COMMENT;
        near = near && !comment &&
               ((argument && node->kind == SW_NODE_STRING) ||
                (node->kind == SW_NODE_COMMAND && stays_with_bar(text) &&
                 !sw_bar_has_line_end(l, g->start, node->start)));
        argument = near && sw_slice_is(text, "\\bar");
        g->start = near ? node->end : g->start;
        g->behind = g->start;
    }
    return true;
}

/* Whether a comment, %{ such a one %}, has music behind it on its line: it belongs to what follows. */
static bool leads_on(const sw_bar_layout *l, uint32_t comment)
{
    uint32_t at = comment;
    while (at + 1 < l->text->length && l->text->bytes[at] == '%' && l->text->bytes[at + 1] == '{') {
        uint32_t n = sw_bar_node_from(l, at);
        if (n == l->syntax->count || l->syntax->nodes[n].start != at) {
            return false;
        }
        at = skip_blanks(l, l->syntax->nodes[n].end);
    }
    return at > comment && !is_line_end(l, at) && l->text->bytes[at] != '%';
}

/* Writes what must stand at the end of a bar: the check, the number, the end of the line (where more follows
 * up to `limit`). */
void sw_bar_end(sw_bar_layout *l, const sw_music *sequence, const sw_bar_gap *g, uint32_t limit,
                const sw_buffer *number)
{
    sw_buffer text = {0};
    uint32_t from = g->behind;
    if (g->check == UINT32_MAX) {
        sw_buffer_string(&text, " |");
    } else if (begins_line(l, g->check)) {
        if (!g->adjacent) {
            return; /* what stands before it stays before it */
        }
        from = g->start; /* the check goes up to its bar */
        sw_buffer_string(&text, " |");
    }
    uint32_t line = sw_text_line(l->text, g->start);
    bool wanted =
        l->options->last_line == 0 || (line >= l->options->first_line && line <= l->options->last_line);
    uint32_t behind = skip_blanks(l, g->behind);
    if (!wanted) {
        sw_buffer_free(&text);
        return;
    }
    if (behind < l->text->length && l->text->bytes[behind] == '%' && !leads_on(l, behind)) {
        uint32_t end = behind;
        while (!is_line_end(l, end)) {
            end++;
        }
        sw_slice comment = sw_text_slice(l->text, behind, end);
        size_t first;
        size_t last;
        sw_bar_replace(l, from, g->behind, &text);
        if (number->length > 0 && is_number(comment, &first, &last)) {
            sw_bar_replace(l, behind + (uint32_t)first, behind + (uint32_t)last, number);
        }
    } else {
        if (number->length > 0) {
            sw_buffer_format(&text, " %% %s", number->data);
        }
        bool more = !is_line_end(l, behind) && behind <= limit;
        if (more) {
            sw_bar_add_line_end(l, &text);
            add_indentation(l, sequence, &text);
        }
        sw_bar_replace(l, from, more ? behind : g->behind, &text);
    }
    sw_buffer_free(&text);
}

/* The opening brace of a sequence that was written in one line gets the line for itself. */
void sw_bar_open_brace(sw_bar_layout *l, const sw_music *sequence)
{
    sw_buffer text = {0};
    uint32_t first = sequence->start + 1;
    sw_bar_add_line_end(l, &text);
    add_indentation(l, sequence, &text);
    sw_bar_replace(l, first, skip_blanks(l, first), &text);
    sw_buffer_free(&text);
}

/* Text for what stood nowhere before: variables, second voices, staves, commands around passages. */
#include <stdlib.h>
#include <string.h>

#include "write/division.h"
#include "write/printer.h"

static const sw_music *at(const sw_printer *p, uint32_t music)
{
    return &p->reading->music[music];
}

/* The assignment of a new variable, and what inherited a value across the moved text. */
static void print_variable(sw_printer *p, const sw_item_order *order, const sw_draft_variable *v,
                           sw_patch *patch)
{
    const sw_text *text = p->reading->files[v->file].text;
    const char *newline = sw_text_newline(text);
    const sw_music *first = at(p, v->first_item);
    uint32_t body = sw_item_body_end(p->reading, v->first_item);
    sw_buffer_format(p->out, "%s = %s{%s  ", v->name, v->drums ? "\\drummode " : "", newline);
    sw_buffer_append(p->out, sw_text_slice(text, v->from, body));
    if ((first->flags & SW_MUSIC_WRITTEN_VALUE) == 0) {
        char value[SW_DURATION_TEXT];
        sw_buffer_string(p->out, sw_duration_print(sw_music_duration(first), value));
    }
    sw_buffer_append(p->out, sw_text_slice(text, body, v->to));
    sw_buffer_format(p->out, "%s}%s%s", newline, newline, newline);
    sw_patch_add(patch, text, v->place, v->place, sw_buffer_slice(p->out));
    sw_buffer_clear(p->out);
    sw_buffer_format(p->out, "\\%s", v->name);
    sw_print_apart(patch, text, v->from, v->to, p->out);
    uint32_t last = sw_item_order_before(order, p->reading, v->file, v->to);
    uint32_t before = sw_item_order_before(order, p->reading, v->file, v->from);
    uint32_t behind = sw_item_order_behind(order, p->reading, v->file, v->place);
    sw_duration moved = last == SW_NO_INDEX ? sw_duration_quarter() : sw_music_duration(at(p, last));
    bool own = before != SW_NO_INDEX && at(p, before)->start >= v->place;
    if (behind != SW_NO_INDEX && at(p, behind)->start < v->from) {
        p->value = moved;
        sw_mend_value(p, order, v->file, v->place, patch);
    }
    p->value = own ? sw_music_duration(at(p, before)) : moved;
    sw_mend_value(p, order, v->file, v->to, patch);
}

/* The tuplet of a cell, also of one before the first or behind the last. */
static uint32_t tuplet_of(const sw_draft_voice *voice, size_t cell)
{
    return cell < voice->cell_count ? voice->cells[cell].tuplet : SW_NO_INDEX;
}

/* Puts the brackets of a tuplet around what was added for cell `c`, from piece `from` on. */
static void add_tuplet(const sw_draft *draft, const sw_draft_voice *voice, size_t c, sw_slot *slot,
                       size_t from)
{
    uint32_t tuplet = tuplet_of(voice, c);
    if (tuplet != SW_NO_INDEX && tuplet_of(voice, c - 1) != tuplet) {
        sw_slice head = sw_tuplet_head(draft->reading, tuplet);
        slot->pieces[from].opens =
            sw_slice_of(sw_arena_format(draft->arena, "%.*s{ ", (int)head.length, head.data));
    }
    if (tuplet != SW_NO_INDEX && tuplet_of(voice, c + 1) != tuplet) {
        slot->pieces[slot->piece_count - 1].tuplets_end = 1;
    }
}

/* The music of a second voice; what follows counts from its last note. */
static bool compose_voice(sw_printer *p, const sw_draft_voice *voice)
{
    sw_draft *draft = p->draft;
    sw_slot slot = {0};
    p->relative = sw_entry_exit(draft, voice->last, &p->reference);
    p->value = (sw_duration){0};
    p->bar_checks = sw_file_has_bar_checks(p->reading, at(p, voice->first)->file);
    bool done = true;
    for (size_t c = 0; c < voice->cell_count && done; c++) {
        const sw_voice_cell *cell = &voice->cells[c];
        const sw_duration *value = cell->has_value ? &cell->value : NULL;
        size_t from = slot.piece_count;
        done = sw_slot_add_fresh(draft, &slot, voice->item, &cell->cell, value, cell->from, cell->to);
        if (done) {
            add_tuplet(draft, voice, c, &slot, from);
        }
    }
    if (done) {
        sw_print_pieces(p, &slot);
        draft->exits = sw_grow(draft->exits, draft->exit_count, &draft->exit_capacity, sizeof *draft->exits);
        draft->exits[draft->exit_count++] = (sw_draft_exit){voice->last, p->reference};
    } else {
        sw_draft_fail_at(draft, voice->item->music, "no row of note values says this length here");
    }
    free(slot.pieces);
    return done;
}

static void print_voice(sw_printer *p, const sw_item_order *order, const sw_draft_voice *voice,
                        sw_patch *patch)
{
    if (!compose_voice(p, voice)) {
        return;
    }
    uint32_t file = at(p, voice->first)->file;
    const sw_text *text = p->reading->files[file].text;
    uint32_t end = sw_node_end(p->reading, voice->last);
    uint32_t begin = sw_run_begin(p->reading, voice->first);
    sw_patch_add(patch, text, begin, begin, sw_slice_of("<< { \\voiceOne "));
    sw_buffer whole = {0};
    sw_buffer_string(&whole, " }");
    if (memchr(text->bytes + begin, '\n', end - begin) != NULL) { /* below it, where it has several lines */
        sw_slice indent = sw_text_indent(text, begin);
        sw_buffer_format(&whole, "%s%.*s", sw_text_newline(text), (int)indent.length, indent.data);
    } else {
        sw_buffer_char(&whole, ' ');
    }
    sw_buffer_format(&whole, "\\new Voice { \\voiceTwo %s } >> \\oneVoice", sw_buffer_text(p->out));
    sw_patch_add(patch, text, end, end, sw_buffer_slice(&whole));
    sw_buffer_free(&whole);
    sw_mend_octave(p->draft, voice->last, patch);
    sw_mend_value(p, order, file, end, patch);
}

/* The first clef or key of a staff, as it is written; empty when there is none at the beginning, or when a
 * transposition would change it. */
static sw_slice first_setting(const sw_draft *draft, uint32_t staff, sw_music_kind kind)
{
    for (size_t i = 0; i < draft->score->setting_count; i++) {
        const sw_setting *setting = &draft->score->settings[i];
        const sw_music *m = &draft->reading->music[setting->music];
        if (setting->staff == staff && m->kind == kind && sw_rational_is_zero(setting->onset)) {
            bool moved = kind == SW_MUSIC_KEY && !sw_pitch_equal(m->pitch, setting->pitch);
            return moved ? (sw_slice){NULL, 0} : sw_music_slice(draft->reading, setting->music);
        }
    }
    return (sw_slice){NULL, 0};
}

static void print_staff(sw_printer *p, const sw_item_order *order, const sw_draft_staff *staff,
                        sw_patch *patch)
{
    sw_draft *draft = p->draft;
    const sw_music *node = at(p, staff->node);
    const sw_text *text = p->reading->files[node->file].text;
    uint32_t end = sw_node_end(p->reading, staff->node);
    uint32_t around = draft->parent[staff->node];
    bool alone = around == SW_NO_INDEX || at(p, around)->kind != SW_MUSIC_SIMULTANEOUS;
    const sw_cell rest = {.kind = SW_CELL_FULL_REST};
    sw_draft_item item = {.music = staff->node};
    sw_slot slot = {0};
    sw_buffer_format(p->out, "%s%.*s\\new Staff = \"%s\" \\with { instrumentName = \"%s\" } { ",
                     sw_text_newline(text), (int)sw_text_indent(text, node->start).length,
                     sw_text_indent(text, node->start).data, staff->name, staff->name);
    sw_slice settings[] = {first_setting(draft, staff->staff, SW_MUSIC_CLEF),
                           first_setting(draft, staff->staff, SW_MUSIC_KEY)};
    for (size_t i = 0; i < 2; i++) {
        sw_buffer_append(p->out, settings[i]);
        sw_buffer_string(p->out, settings[i].length > 0 ? " " : "");
    }
    p->value = (sw_duration){0};
    p->bar_checks = sw_file_has_bar_checks(p->reading, node->file);
    if (sw_slot_add_fresh(draft, &slot, &item, &rest, NULL, sw_rational_zero(), draft->score->length)) {
        sw_print_pieces(p, &slot);
    } else {
        sw_draft_fail(draft, staff->event, "the bars of this score can't be said in rests");
    }
    free(slot.pieces);
    sw_buffer_string(p->out, alone ? " } >>" : " }");
    if (alone) {
        sw_patch_add(patch, text, node->start, node->start, sw_slice_of("<< "));
    }
    sw_patch_add(patch, text, end, end, sw_buffer_slice(p->out));
    sw_mend_value(p, order, node->file, end, patch);
}

void sw_print_new(sw_draft *draft, const sw_item_order *order, sw_patch *patch)
{
    sw_buffer out = {0};
    sw_printer p = {.draft = draft, .reading = draft->reading, .out = &out};
    for (size_t i = 0; i < draft->voice_count; i++) {
        print_voice(&p, order, &draft->voices[i], patch);
        sw_buffer_clear(&out);
    }
    for (size_t i = 0; i < draft->variable_count; i++) {
        print_variable(&p, order, &draft->variables[i], patch);
        sw_buffer_clear(&out);
    }
    for (size_t i = 0; i < draft->staff_count; i++) {
        print_staff(&p, order, &draft->staves[i], patch);
        sw_buffer_clear(&out);
    }
    for (size_t i = 0; i < draft->text_count; i++) {
        const sw_draft_text *t = &draft->texts[i];
        sw_patch_add(patch, t->file, t->start, t->end, t->text);
    }
    sw_buffer_free(&out);
}

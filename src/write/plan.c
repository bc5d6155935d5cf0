/* What each part gets of each node. */
#include <stdlib.h>
#include <string.h>

#include "write/division.h"

bool sw_is_item(const sw_music *music)
{
    return music->kind >= SW_MUSIC_NOTE && music->kind <= SW_MUSIC_BARE;
}

uint32_t sw_node_begin(const sw_reading *reading, uint32_t music)
{
    const sw_music *m = &reading->music[music];
    return sw_music_is_called(m) ? m->origin : m->start;
}

uint32_t sw_node_end(const sw_reading *reading, uint32_t music)
{
    const sw_music *m = &reading->music[music];
    uint32_t end = m->end;
    if (m->kind == SW_MUSIC_REFERENCE) {
        return end; /* its child stands elsewhere */
    }
    for (uint32_t c = m->first; c != SW_NO_INDEX; c = reading->music[c].next) {
        if (reading->music[c].file == m->file) {
            uint32_t child_end = sw_node_end(reading, c);
            end = child_end > end ? child_end : end;
        }
    }
    return end;
}

/* The first events of each item, in the order of the score. An item that sounds several times (in an unfolded
 * repeat) is written as its first time. */
static void find_events(sw_plan *plan)
{
    const sw_score *score = plan->division->score;
    for (uint32_t i = 0; i < score->event_count; i++) {
        const sw_event *event = &score->events[i];
        if (score->voices[event->voice].staff != plan->division->staff) {
            continue;
        }
        uint32_t item = event->chord;
        if (plan->first_event[item] == SW_NO_INDEX) {
            plan->first_event[item] = i;
            plan->event_count[item] = 1;
        } else {
            const sw_event *first = &score->events[plan->first_event[item]];
            if (sw_rational_equal(first->onset, event->onset) && first->grace_num == event->grace_num &&
                first->frame == event->frame) {
                plan->event_count[item]++;
            }
        }
    }
}

static void add_name(sw_plan *plan, uint32_t name)
{
    for (size_t i = 0; i < plan->name_count; i++) {
        if (plan->names[i] == name) {
            return;
        }
    }
    plan->names = sw_grow(plan->names, plan->name_count, &plan->name_capacity, sizeof *plan->names);
    plan->names[plan->name_count++] = name;
}

/* The variables between the staff and its notes. */
static void find_names(sw_plan *plan)
{
    const sw_score *score = plan->division->score;
    const sw_staff *staff = &score->staves[plan->division->staff];
    uint32_t last_frame = SW_NO_INDEX;
    for (uint32_t i = 0; i < score->event_count; i++) {
        const sw_event *event = &score->events[i];
        if (score->voices[event->voice].staff != plan->division->staff ||
            (event->kind != SW_EVENT_NOTE && event->kind != SW_EVENT_DRUM) || event->frame == last_frame) {
            continue;
        }
        last_frame = event->frame;
        for (uint32_t f = event->frame; f != SW_NO_INDEX && f != staff->frame; f = score->frames[f].parent) {
            const sw_music *m = &plan->reading->music[score->frames[f].music];
            if (m->kind == SW_MUSIC_REFERENCE) {
                add_name(plan, m->name);
            }
        }
    }
}

enum { KNOWN = 0x80 }; /* in `parts`: the node has been looked at */

/* Parts with notes in or below a node, from below. */
static uint8_t find_parts(sw_plan *plan, uint32_t music)
{
    if ((plan->has_notes[music] & KNOWN) != 0) {
        return plan->parts[music];
    }
    plan->has_notes[music] |=
        KNOWN; /* before the children: a variable cannot contain itself, but a broken file might */
    const sw_music *m = &plan->reading->music[music];
    uint8_t parts = 0;
    uint8_t notes = 0;
    if (sw_is_item(m)) {
        uint32_t first = plan->first_event[music];
        for (uint32_t i = 0; first != SW_NO_INDEX && i < plan->event_count[music]; i++) {
            const sw_event *event = &plan->division->score->events[first + i];
            if (event->kind == SW_EVENT_NOTE || event->kind == SW_EVENT_DRUM) {
                for (uint32_t part = 0; part < plan->division->parts; part++) {
                    parts |= (uint8_t)(sw_division_gives(plan->division, first + i, part) ? 1u << part : 0);
                }
                notes = 1;
            }
        }
        if (first == SW_NO_INDEX && m->kind != SW_MUSIC_REST && m->kind != SW_MUSIC_FULL_REST &&
            m->kind != SW_MUSIC_SKIP && (m->flags & SW_MUSIC_AS_REST) == 0 &&
            !(m->kind == SW_MUSIC_CHORD && m->num == 0)) {
            parts = 1; /* not heard in this score (a tag of another edition): the upper part keeps it */
            notes = 1;
        }
    } else if (m->kind != SW_MUSIC_MARK) {
        for (uint32_t c = m->first; c != SW_NO_INDEX; c = plan->reading->music[c].next) {
            parts |= find_parts(plan, c);
            notes |= plan->has_notes[c] & 1;
        }
    }
    plan->parts[music] = parts;
    plan->has_notes[music] |= notes;
    return parts;
}

bool sw_plan_uses_divided(const sw_plan *plan, uint32_t music)
{
    const sw_music *m = &plan->reading->music[music];
    if (m->kind == SW_MUSIC_REFERENCE) {
        return sw_plan_divides(plan, plan->reading, m->name);
    }
    for (uint32_t c = sw_is_item(m) ? SW_NO_INDEX : m->first; c != SW_NO_INDEX;
         c = plan->reading->music[c].next) {
        if (sw_plan_uses_divided(plan, c)) {
            return true;
        }
    }
    return false;
}

static bool plays(const sw_plan *plan, uint32_t part, uint32_t music)
{
    return (plan->parts[music] & 1u << part) != 0 || sw_plan_uses_divided(plan, music);
}

bool sw_plan_keeps(const sw_plan *plan, uint32_t part, uint32_t simultaneous, uint32_t child)
{
    if (plan->has_notes == NULL || (plan->has_notes[child] & 1) == 0 || plays(plan, part, child)) {
        return true;
    }
    uint32_t first = SW_NO_INDEX;
    for (uint32_t c = plan->reading->music[simultaneous].first; c != SW_NO_INDEX;
         c = plan->reading->music[c].next) {
        bool voice = (plan->has_notes[c] & 1) != 0;
        if (voice && plays(plan, part, c)) {
            return false;
        }
        first = voice && first == SW_NO_INDEX ? c : first;
    }
    return child == first;
}

static void leave_out(sw_plan *plan, uint32_t part, uint32_t music)
{
    plan->left_out[music] |= (uint8_t)(1u << part);
    const sw_music *m = &plan->reading->music[music];
    for (uint32_t c = m->first; c != SW_NO_INDEX; c = plan->reading->music[c].next) {
        leave_out(plan, part, c);
    }
}

static void find_left_out(sw_plan *plan)
{
    for (uint32_t m = 0; m < plan->reading->music_count; m++) {
        if (plan->reading->music[m].kind != SW_MUSIC_SIMULTANEOUS || (plan->has_notes[m] & 1) == 0) {
            continue;
        }
        for (uint32_t c = plan->reading->music[m].first; c != SW_NO_INDEX; c = plan->reading->music[c].next) {
            for (uint32_t part = 0; part < plan->division->parts; part++) {
                if (!sw_plan_keeps(plan, part, m, c)) {
                    leave_out(plan, part, c);
                }
            }
        }
    }
}

/* Clefs of a score outside of what is divided anew; SW_NO_INDEX: of all its staves. */
static void find_clefs(sw_plan *plan, const sw_score *score, uint32_t staff)
{
    const sw_division *division = plan->division;
    for (size_t i = 0; i < score->setting_count; i++) {
        const sw_setting *setting = &score->settings[i];
        if ((setting->staff == staff || staff == SW_NO_INDEX) &&
            plan->reading->music[setting->music].kind == SW_MUSIC_CLEF) {
            plan->clef_stays[setting->music] = sw_rational_compare(setting->onset, division->from) < 0 ||
                                               sw_rational_compare(setting->onset, division->to) >= 0;
        }
    }
}

static void find_voices(sw_plan *plan)
{
    const sw_score *score = plan->division->score;
    for (uint32_t i = 0; i < score->event_count; i++) {
        uint32_t voice = score->events[i].voice;
        if (plan->voice_end[voice] == 0) {
            plan->voice_first[voice] = i;
        }
        plan->voice_end[voice] = i + 1;
    }
}

sw_plan *sw_plan_new(const sw_division *division)
{
    sw_plan *plan = sw_alloc_zero(1, sizeof *plan);
    size_t count = division->reading->music_count + 1;
    plan->division = division;
    plan->reading = division->reading;
    plan->first_event = sw_alloc(count * sizeof *plan->first_event);
    memset(plan->first_event, 0xff, count * sizeof *plan->first_event);
    plan->event_count = sw_alloc_zero(count, sizeof *plan->event_count);
    plan->parts = sw_alloc_zero(count, 1);
    plan->has_notes = sw_alloc_zero(count, 1);
    plan->mark_parts = sw_alloc_zero(count, 1);
    plan->clef_stays = sw_alloc_zero(count, 1);
    plan->left_out = sw_alloc_zero(count, 1);
    plan->voice_first = sw_alloc_zero(division->score->voice_count + 1, sizeof *plan->voice_first);
    plan->voice_end = sw_alloc_zero(division->score->voice_count + 1, sizeof *plan->voice_end);
    find_events(plan);
    find_names(plan);
    for (uint32_t m = 0; m < division->reading->music_count; m++) {
        find_parts(plan, m);
    }
    find_left_out(plan);
    find_clefs(plan, division->score, division->staff);
    find_voices(plan);
    sw_plan_marks(plan);
    return plan;
}

bool sw_shares_variable(const sw_reading *reading, uint32_t name, const sw_reading *other)
{
    if (other == reading) {
        return true;
    }
    uint32_t other_name = sw_names_find(other->names, sw_slice_of(sw_reading_name(reading, name)));
    for (size_t i = 0; i < reading->variable_count && other_name != UINT32_MAX; i++) {
        const sw_variable *own = &reading->variables[i];
        for (size_t k = 0; own->name == name && k < other->variable_count; k++) {
            const sw_variable *theirs = &other->variables[k];
            if (theirs->name == other_name && theirs->start == own->start &&
                sw_text_same_file(reading->files[own->file].text, other->files[theirs->file].text)) {
                return true;
            }
        }
    }
    return false;
}

sw_plan *sw_plan_for_other(const sw_plan *plan, const sw_reading *reading)
{
    sw_plan *other = sw_alloc_zero(1, sizeof *other);
    other->division = plan->division;
    other->reading = reading;
    other->clef_stays = sw_alloc_zero(reading->music_count + 1, 1);
    for (size_t i = 0; i < reading->score_count; i++) {
        find_clefs(other, &reading->scores[i], SW_NO_INDEX);
    }
    for (size_t i = 0; i < plan->name_count; i++) {
        uint32_t name =
            sw_names_find(reading->names, sw_slice_of(sw_reading_name(plan->reading, plan->names[i])));
        if (name != UINT32_MAX && sw_shares_variable(plan->reading, plan->names[i], reading)) {
            add_name(other, name);
        }
    }
    return other;
}

void sw_plan_free(sw_plan *plan)
{
    if (plan == NULL) {
        return;
    }
    free(plan->first_event);
    free(plan->event_count);
    free(plan->parts);
    free(plan->has_notes);
    free(plan->mark_parts);
    free(plan->clef_stays);
    free(plan->left_out);
    free(plan->voice_first);
    free(plan->voice_end);
    free(plan->added);
    free(plan->names);
    free(plan);
}

bool sw_plan_divides(const sw_plan *plan, const sw_reading *reading, uint32_t name)
{
    (void)reading;
    for (size_t i = 0; i < plan->name_count; i++) {
        if (plan->names[i] == name) {
            return true;
        }
    }
    return false;
}

bool sw_division_drops(const sw_division *division, const sw_reading *reading, uint32_t mark)
{
    const sw_music *m = &reading->music[mark];
    for (size_t i = 0; i < division->dropped_count; i++) {
        const sw_music *dropped = &division->reading->music[division->dropped[i]];
        if (dropped->start == m->start &&
            sw_text_same_file(division->reading->files[dropped->file].text, reading->files[m->file].text)) {
            return true;
        }
    }
    return false;
}

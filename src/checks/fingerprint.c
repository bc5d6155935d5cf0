#include "checks/fingerprint.h"

#include <inttypes.h>
#include <stdio.h>
#include <string.h>

#include "source/internal.h"

/* A text without what an editor or a layout changes: each run of white space counts as one blank. */
static void add_plain(sw_buffer *text, sw_slice source)
{
    source = sw_slice_trim(source);
    for (size_t i = 0; i < source.length; i++) {
        bool blank = strchr(" \t\r\n", source.data[i]) != NULL;
        if (!blank) {
            sw_buffer_char(text, source.data[i]);
        } else if (text->length > 0 && text->data[text->length - 1] != ' ') {
            sw_buffer_char(text, ' ');
        }
    }
}

/* Where the time of an event stands in its bar. */
static void add_place(sw_buffer *text, const sw_score *score, const sw_event *event, uint32_t bar)
{
    sw_rational place = event->onset;
    if (bar != SW_NO_INDEX) {
        place = sw_rational_add(sw_rational_sub(place, score->bars[bar].start), score->bars[bar].first);
    }
    char words[SW_RATIONAL_TEXT];
    sw_buffer_format(text, "%s+%d/%d\n", sw_rational_print(place, words), event->grace_num, event->grace_den);
}

/* The notes among the items that sound together with the first one. */
static void add_music(sw_buffer *text, const sw_heard_item *items, size_t count, const sw_score *score)
{
    const sw_event *first = &score->events[items[0].event];
    uint32_t staff = score->voices[first->voice].staff;
    for (size_t i = 0; i < count && items[i].score == items[0].score; i++) {
        const sw_event *event = &score->events[items[i].event];
        if (score->voices[event->voice].staff == staff &&
            sw_rational_compare(event->onset, first->onset) == 0) {
            char words[SW_RATIONAL_TEXT];
            sw_buffer_format(text, "%d %d %d %d %s\n", event->kind, event->pitch.step, event->pitch.alter,
                             event->pitch.octave, sw_rational_print(event->duration, words));
        }
    }
}

void sw_fingerprint_finding(const sw_heard *heard, const sw_finding *finding, sw_arena *arena,
                            sw_checked *result)
{
    const sw_reading *reading = heard->reading;
    const sw_text *source = reading->files[finding->file].text;
    const sw_rule *rule = sw_rules_find(finding->rule);
    bool of_text = rule == NULL || rule->run == NULL; /* found by the reader, in whatever music */
    size_t count = 0;
    const sw_heard_item *items =
        of_text ? NULL : sw_heard_within(heard, finding->file, finding->start, finding->end, &count);
    bool exact = count > 0;
    if (!of_text && !exact) {
        items = sw_heard_near(heard, finding->file, finding->start, &count);
    }
    sw_buffer text = {0};
    sw_buffer_format(&text, "%s\n%s\n", finding->rule, sw_base_name(source->path));
    if (count > 0) {
        const sw_score *score = &reading->scores[items[0].score];
        const sw_event *event = &score->events[items[0].event];
        uint32_t bar = sw_score_bar_at(score, event->onset);
        char label[32];
        const char *staff = sw_staff_label(reading, score, score->voices[event->voice].staff, label);
        result->staff = sw_arena_copy(arena, sw_slice_of(staff));
        result->has_bar = bar != SW_NO_INDEX;
        result->bar = result->has_bar ? score->bars[bar].number : 0;
        sw_buffer_format(&text, "%s\n", staff);
        add_place(&text, score, event, bar);
        add_music(&text, items, count, score);
    }
    if (!exact) {
        add_plain(&text, sw_text_slice(source, finding->start, finding->end));
    }
    sw_place end = sw_text_place(source, finding->end > finding->start ? finding->end : finding->start);
    result->end_line = end.line;
    result->end_column = end.column + 1;
    snprintf(result->fingerprint, sizeof result->fingerprint, "%016" PRIx64,
             sw_digest(SW_DIGEST_START, sw_buffer_slice(&text)));
    sw_buffer_free(&text);
}

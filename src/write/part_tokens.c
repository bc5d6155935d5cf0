#include "write/part_tokens.h"

#include <string.h>

#include "write/part_time.h"

/* Commands that concern the whole score: one staff says them. */
static bool is_for_whole_score(const sw_part_printer *p, uint32_t music)
{
    static const char *const names[] = {"\\bar",      "\\break",    "\\pageBreak",   "\\noBreak",
                                        "\\mark",     "\\textMark", "\\textEndMark", "\\segnoMark",
                                        "\\codaMark", "\\jump",     "\\section",     "\\sectionLabel",
                                        "\\fine",     "\\pageTurn", "\\noPageBreak", "\\barNumberCheck"};
    const sw_music *m = sw_part_music(p, music);
    if (m->kind == SW_MUSIC_TEMPO) {
        return true;
    }
    if (m->kind == SW_MUSIC_SET) {
        const char *path = sw_reading_name(p->plan->reading, m->name);
        return strncmp(path, "Score.", 6) == 0 || strncmp(path, "Timing.", 7) == 0;
    }
    if (m->kind != SW_MUSIC_SETTING) {
        return false;
    }
    sw_slice text = sw_music_slice(p->plan->reading, music);
    for (size_t i = 0; i < sizeof names / sizeof names[0]; i++) {
        size_t length = strlen(names[i]);
        if (sw_slice_starts(text, names[i]) &&
            (text.length == length || strchr(" \t\r\n\"#\\0123456789", text.data[length]) != NULL)) {
            return true;
        }
    }
    return false;
}

/* The name of the staff belongs to the group of its parts. */
bool sw_part_is_staff_name(const sw_part_printer *p, uint32_t music)
{
    const char *path = sw_reading_name(p->plan->reading, sw_part_music(p, music)->name);
    return sw_part_music(p, music)->kind == SW_MUSIC_SET && p->plan->division->group != NULL &&
           (strcmp(path, "Staff.instrumentName") == 0 || strcmp(path, "Staff.shortInstrumentName") == 0);
}

/* \ottava goes with the notes behind it. */
static bool is_for_other_part(const sw_part_printer *p, uint32_t music)
{
    if (sw_part_music(p, music)->kind != SW_MUSIC_SETTING || p->plan->parts == NULL ||
        !sw_slice_starts(sw_music_slice(p->plan->reading, music), "\\ottava")) {
        return false;
    }
    for (uint32_t c = sw_part_music(p, music)->next; c != SW_NO_INDEX; c = sw_part_music(p, c)->next) {
        if (sw_part_has_notes(p, c)) {
            return !sw_part_plays(p, c);
        }
    }
    return p->part != 0;
}

bool sw_part_has_marks(const sw_part_printer *p, uint32_t music)
{
    for (uint32_t c = sw_part_music(p, music)->first; c != SW_NO_INDEX; c = sw_part_music(p, c)->next) {
        if (sw_part_music(p, c)->kind == SW_MUSIC_MARK && (p->plan->mark_parts[c] & 1u << p->part) != 0) {
            return true;
        }
    }
    for (size_t i = 0; i < p->plan->added_count; i++) {
        if (p->plan->added[i].item == music && p->plan->added[i].part == p->part) {
            return true;
        }
    }
    return false;
}

/* Whether the music of another part in or below a node can become one silence: nothing in it is said that
 * this part needs too, and no bar check stands there. Around tuplets and tremolos only what the bars and the
 * key depend on counts. */
static bool can_be_silence(const sw_part_printer *p, uint32_t music, bool scaled)
{
    const sw_music *m = sw_part_music(p, music);
    if (m->kind == SW_MUSIC_SETTING || m->kind == SW_MUSIC_SET || m->kind == SW_MUSIC_BAR_CHECK) {
        return scaled;
    }
    if (m->kind >= SW_MUSIC_BAR_CHECK) {
        return m->kind == SW_MUSIC_MARK || m->kind == SW_MUSIC_CLEF || m->kind == SW_MUSIC_OCTAVE_CHECK;
    }
    scaled = scaled || m->kind == SW_MUSIC_SCALE || m->kind == SW_MUSIC_GRACE;
    for (uint32_t c = sw_is_item(m) ? SW_NO_INDEX : m->first; c != SW_NO_INDEX;
         c = sw_part_music(p, c)->next) {
        bool marked = sw_is_item(sw_part_music(p, c)) && sw_part_has_marks(p, c); /* a pedal */
        if (marked || !can_be_silence(p, c, scaled)) {
            return false;
        }
    }
    return true;
}

/* A variable with notes that is not divided is not heard in this score; the upper part keeps it. */
bool sw_part_is_unheard(const sw_part_printer *p, uint32_t music)
{
    return sw_part_music(p, music)->kind == SW_MUSIC_REFERENCE && p->plan->parts != NULL &&
           sw_part_has_notes(p, music) && !sw_part_plays(p, music) && !sw_plan_uses_divided(p->plan, music);
}

bool sw_part_is_tremolo(const sw_part_printer *p, uint32_t music)
{
    const sw_music *m = sw_part_music(p, music);
    return m->kind == SW_MUSIC_REPEAT && strcmp(sw_reading_name(p->plan->reading, m->name), "tremolo") == 0;
}

sw_token_kind sw_part_classify(const sw_part_printer *p, uint32_t music)
{
    const sw_music *m = sw_part_music(p, music);
    if (m->kind == SW_MUSIC_CLEF && p->plan->division->apart) {
        return SW_TOKEN_VERBATIM;
    }
    if (m->kind == SW_MUSIC_CLEF && p->part == 0 && p->plan->clef_stays[music] != 0) {
        return SW_TOKEN_VERBATIM;
    }
    if (m->kind == SW_MUSIC_CLEF || m->kind == SW_MUSIC_OCTAVE_CHECK) {
        return SW_TOKEN_DROP; /* a part has its own clefs, and its own octaves from note to note */
    }
    if ((m->kind == SW_MUSIC_REST || (m->flags & SW_MUSIC_AS_REST) != 0) && p->plan->parts != NULL) {
        return sw_part_hides_rest(p, music) ? SW_TOKEN_SILENT : SW_TOKEN_REST;
    }
    if (m->kind == SW_MUSIC_FULL_REST && p->plan->parts != NULL && sw_part_hides_rest(p, music)) {
        return SW_TOKEN_SILENT;
    }
    if (m->kind == SW_MUSIC_REFERENCE && p->plan->parts == NULL) {
        return sw_plan_divides(p->plan, p->plan->reading, m->name) ? SW_TOKEN_KEEP : SW_TOKEN_VERBATIM;
    }
    if (sw_part_is_staff_name(p, music)) {
        return p->part == 0 ? SW_TOKEN_KEEP : SW_TOKEN_DROP;
    }
    if (p->plan->parts == NULL) { /* another main file: only the variables inside count */
        return m->first != SW_NO_INDEX && !sw_is_item(m) ? SW_TOKEN_KEEP : SW_TOKEN_VERBATIM;
    }
    if (sw_part_plays(p, music)) {
        return SW_TOKEN_KEEP;
    }
    if (sw_part_has_notes(p, music)) {
        if (sw_plan_uses_divided(p->plan, music)) {
            return SW_TOKEN_KEEP;
        }
        if (m->kind == SW_MUSIC_GRACE || sw_part_is_unheard(p, music)) {
            return SW_TOKEN_DROP;
        }
        /* The structure of repeats stays, with rests inside. */
        bool tremolo = sw_part_is_tremolo(p, music);
        return (m->kind == SW_MUSIC_REPEAT && !tremolo) || m->kind == SW_MUSIC_ALTERNATIVES ||
                       m->kind == SW_MUSIC_VOLTA || m->kind == SW_MUSIC_UNFOLD ||
                       !can_be_silence(p, music, tremolo)
                   ? SW_TOKEN_KEEP
                   : SW_TOKEN_SILENT;
    }
    if (p->part > 0 && is_for_whole_score(p, music)) {
        return SW_TOKEN_DROP;
    }
    if (is_for_other_part(p, music)) {
        return SW_TOKEN_DROP;
    }
    return sw_is_item(m) ? SW_TOKEN_KEEP : SW_TOKEN_VERBATIM;
}

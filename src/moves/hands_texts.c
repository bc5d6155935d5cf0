/* Texts that belong to both hands or to the feet. */
#include <string.h>

#include "moves/figures.h"
#include "moves/hands_plan.h"
#include "stavewright/techniques.h"

/* Whether a text tells the feet what to do. Common practice, no source. */
static bool is_for_feet(const char *text)
{
    static const char *const words[] = {"ped",     "una corda", "due corde", "tre corde", "u.c.",
                                        "t.c.",    "sostenuto", "sost. ped", "con ped",   "senza ped",
                                        "col ped", "mit ped",   "ohne ped",  "simile ped"};
    for (size_t i = 0; i < sizeof words / sizeof words[0]; i++) {
        if (strncasecmp(text, words[i], strlen(words[i])) == 0) {
            return true;
        }
    }
    return false;
}

/* Whether it says how strings ring, or how a harp's pedals stand. */
static bool is_for_both(const sw_techniques *techniques, const sw_reading *reading, uint32_t mark)
{
    enum { SAID = 8 };
    sw_slice written = sw_music_slice(reading, mark);
    if (memmem(written.data, written.length, "\\harp-pedal", strlen("\\harp-pedal")) != NULL) {
        return true;
    }
    static const sw_family family = SW_PLUCKED; /* words for strings that ring */
    sw_technique_said said[SAID];
    bool in_brackets;
    uint8_t ring = sw_techniques_find(techniques, "let-ring");
    size_t count = sw_techniques_read(techniques, &family, sw_slice_of(sw_music_mark_text(reading, mark)),
                                      said, SAID, &in_brackets);
    for (size_t i = 0; i < count; i++) {
        if (said[i].technique == ring) {
            return true;
        }
    }
    return false;
}

bool sw_hands_find_texts(sw_hands *h, const sw_film *film, char **error)
{
    sw_figures figures;
    if (!sw_figures_find(&figures, film, error)) {
        return false;
    }
    const sw_reading *reading = h->reading;
    h->text_homes = sw_alloc_zero(reading->music_count + 1, sizeof *h->text_homes);
    for (uint32_t m = 0; m < reading->music_count; m++) {
        if (reading->music[m].kind != SW_MUSIC_MARK || sw_music_mark_class(reading, m) != SW_MARK_TEXT) {
            continue;
        }
        if (is_for_feet(sw_music_mark_text(reading, m))) {
            h->text_homes[m] = SW_TEXT_BELOW;
        } else if (is_for_both(sw_film_techniques(figures.film), reading, m)) {
            h->text_homes[m] = SW_TEXT_BETWEEN;
        }
    }
    sw_figures_free(&figures);
    return true;
}

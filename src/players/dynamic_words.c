#include "players/dynamic_words.h"

#include <string.h>

static bool is_one_of(sw_slice word, const char *const *words)
{
    while (*words != NULL && !sw_slice_is(word, *words)) {
        words++;
    }
    return *words != NULL;
}

static sw_dynamic_word of_command(sw_slice text)
{
    static const char *const growing[] = {"<", "cr", "cresc", NULL};
    const char *last = text.length == 0 ? NULL : memrchr(text.data, '\\', text.length);
    sw_dynamic_word word = {SW_DYNAMIC_NOTHING, {SW_NO_DYNAMIC, SW_NO_DYNAMIC}};
    if (last == NULL) {
        return word;
    }
    sw_slice name = {last + 1, (size_t)(text.data + text.length - last - 1)};
    switch (sw_mark_class_of(text)) {
    case SW_MARK_DYNAMIC:
        word.kind = sw_dynamic_mark_read(name, &word.mark) ? SW_DYNAMIC_LEVEL : SW_DYNAMIC_NOTHING;
        break;
    case SW_MARK_HAIRPIN_START:
        word.kind = is_one_of(name, growing) ? SW_DYNAMIC_GROWS : SW_DYNAMIC_FADES;
        break;
    case SW_MARK_HAIRPIN_END:
        word.kind = SW_DYNAMIC_END;
        break;
    default:
        break;
    }
    return word;
}

/* The next word of a text: letters only, the rest parts words. */
static sw_slice next_word(sw_slice *text)
{
    size_t start = 0;
    while (start < text->length && strchr(" .,;:()[]\"-/", text->data[start]) != NULL) {
        start++;
    }
    size_t end = start;
    while (end < text->length && strchr(" .,;:()[]\"-/", text->data[end]) == NULL) {
        end++;
    }
    sw_slice word = {text->data + start, end - start};
    *text = sw_slice_from(*text, end);
    return word;
}

/* Texts are free: a lone "p" or "f" is a level only among words that leave it one ("sempre p", not "poco f"
 * or "p. 12"). */
static sw_dynamic_word of_text(sw_slice text)
{
    static const char *const growing[] = {"cresc", "crescendo", "Cresc", "CRESC", NULL};
    static const char *const fading[] = {"dim",         "diminuendo", "decresc", "decrescendo", "Dim",
                                         "morendo",     "smorzando",  "calando", "perdendosi",  "smorz",
                                         "diminuendos", "perdend",    NULL};
    static const char *const niente[] = {"niente", "Niente", NULL};
    static const char *const beside[] = {"sempre", "sub",  "subito",     "molto",     "dolce",  "espr",
                                         "ma",     "non",  "espressivo", "cantabile", "legato", "marcato",
                                         "marc",   "poss", "possibile",  "troppo",    "e",      NULL};
    sw_dynamic_word found = {SW_DYNAMIC_NOTHING, {SW_NO_DYNAMIC, SW_NO_DYNAMIC}};
    bool plain = true; /* nothing but levels and what may stand beside them */
    for (sw_slice word = next_word(&text); word.length > 0; word = next_word(&text)) {
        sw_dynamic level;
        if (is_one_of(word, growing)) {
            return (sw_dynamic_word){SW_DYNAMIC_GROWS, found.mark};
        }
        if (is_one_of(word, niente)) {
            return (sw_dynamic_word){SW_DYNAMIC_LEVEL, {SW_NIENTE, SW_NIENTE}};
        }
        if (is_one_of(word, fading)) {
            found.kind = SW_DYNAMIC_FADES; /* unless it says where to: "dim. al niente" */
        } else if (found.kind == SW_DYNAMIC_NOTHING && sw_dynamic_from_name(word, &level) &&
                   level != SW_NIENTE) {
            found = (sw_dynamic_word){SW_DYNAMIC_LEVEL, {level, level}};
        } else {
            plain = plain && is_one_of(word, beside);
        }
    }
    if (found.kind == SW_DYNAMIC_LEVEL && !plain && (found.mark.stays == SW_P || found.mark.stays == SW_F)) {
        found.kind = SW_DYNAMIC_NOTHING;
    }
    return found;
}

sw_dynamic_word sw_dynamic_word_of(const sw_reading *reading, uint32_t mark)
{
    const char *text = sw_music_mark_text(reading, mark);
    return text[0] != '\0' ? of_text(sw_slice_of(text)) : of_command(sw_music_slice(reading, mark));
}

#include "app/words.h"

#include <stdarg.h>
#include <stdio.h>
#include <string.h>

#include "app/commands.h"
#include "base/nearest.h"

int sw_say_bad(const char *command, const char *format, ...)
{
    va_list values;
    va_start(values, format);
    fprintf(stderr, "stavewright %s: ", command);
    vfprintf(stderr, format, values);
    fputc('\n', stderr);
    va_end(values);
    return SW_EXIT_BAD;
}

const char *sw_say_nearest(const char *word, const char *const *known, size_t count, const char *otherwise)
{
    static char text[128];
    const char *nearest = sw_nearest_word(sw_slice_of(word), known, count);
    if (nearest == NULL) {
        return otherwise;
    }
    snprintf(text, sizeof text, "did you mean \"%s\"?", nearest);
    return text;
}

static sw_word unknown_option(const sw_words *words, const char *name)
{
    char help[96];
    snprintf(help, sizeof help, "stavewright help %s shows them", words->command);
    sw_say_bad(words->command, "\"%s\" is not an option; %s", name,
               sw_say_nearest(name, words->options, words->option_count, help));
    return SW_WORD_BAD;
}

static sw_word take_option(sw_words *words, const char *word)
{
    size_t length = strcspn(word, "=");
    for (words->option = 0; words->option < words->option_count; words->option++) {
        if (sw_slice_is((sw_slice){word, length}, words->options[words->option])) {
            break;
        }
    }
    if (words->option == words->option_count) {
        return unknown_option(words, word);
    }
    bool is_flag = words->option >= words->option_count - words->flag_count;
    bool is_loose = words->option >= words->option_count - words->loose_count;
    if (is_flag && !is_loose && word[length] == '=') {
        sw_say_bad(words->command, "%s takes no value", words->options[words->option]);
        return SW_WORD_BAD;
    }
    if (is_flag && word[length] == '\0') {
        words->value = NULL;
    } else if (word[length] == '=') {
        words->value = word + length + 1;
    } else if (words->next < words->count) {
        words->value = words->items[words->next++];
    } else {
        sw_say_bad(words->command, "%s needs a value; stavewright help %s shows which", word, words->command);
        return SW_WORD_BAD;
    }
    return SW_WORD_OPTION;
}

sw_word sw_words_next(sw_words *words)
{
    if (words->next >= words->count) {
        return SW_WORD_END;
    }
    const char *word = words->items[words->next++];
    if (!words->only_paths && strcmp(word, "--") == 0) {
        words->only_paths = true;
        return sw_words_next(words);
    }
    if (!words->only_paths && word[0] == '-' && word[1] != '\0') {
        return take_option(words, word);
    }
    words->value = word;
    return SW_WORD_PATH;
}

#include "app/words.h"

#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
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

const char *sw_say_nearest(const char *word, const char *const *known, size_t count, const char *otherwise,
                           char text[SW_NEAREST_TEXT])
{
    const char *nearest = sw_nearest_word(sw_slice_of(word), known, count);
    if (nearest == NULL) {
        return otherwise;
    }
    snprintf(text, SW_NEAREST_TEXT, "did you mean \"%s\"?", nearest);
    return text;
}

static sw_word unknown_option(const sw_words *words, const char *name)
{
    const char **known = NULL;
    size_t count = 0;
    size_t capacity = 0;
    for (const sw_option *o = sw_option_next(words->command, NULL); o != NULL;
         o = sw_option_next(words->command, o)) {
        known = sw_grow(known, count, &capacity, sizeof *known);
        known[count++] = o->name;
    }
    char help[96];
    char text[SW_NEAREST_TEXT];
    snprintf(help, sizeof help, "stavewright help %s shows them", words->command);
    sw_say_bad(words->command, "\"%s\" is not an option; %s", name,
               sw_say_nearest(name, known, count, help, text));
    free(known);
    return SW_WORD_BAD;
}

static sw_word take_option(sw_words *words, const char *word)
{
    size_t length = strcspn(word, "=");
    const sw_option *option = sw_option_find(words->command, (sw_slice){word, length});
    if (option == NULL) {
        return unknown_option(words, word);
    }
    words->option = option->name;
    if (option->value == NULL && word[length] == '=') {
        sw_say_bad(words->command, "%s takes no value", option->name);
        return SW_WORD_BAD;
    }
    if (sw_option_is_flag(option) && word[length] == '\0') {
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

bool sw_words_is(const sw_words *words, const char *option)
{
    return strcmp(words->option, option) == 0;
}

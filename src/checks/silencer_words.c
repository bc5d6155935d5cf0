/* The words of a silencer: `stavewright: allow RULE[, RULE] [in bars 12-20 | in this file] (reason)`. */
#include <ctype.h>
#include <stdlib.h>
#include <string.h>

#include "checks/silencers.h"

static const char *const form = "write: % stavewright: allow range (the reason)";

/* A comment without its marks: "%", "%{ ... %}". */
static sw_slice inside(sw_slice comment)
{
    bool block = sw_slice_starts(comment, "%{");
    comment = sw_slice_from(comment, block ? 2 : 1);
    if (block && sw_slice_ends(comment, "%}")) {
        comment.length -= 2;
    }
    while (comment.length > 0 && comment.data[0] == '%') {
        comment = sw_slice_from(comment, 1);
    }
    return sw_slice_trim(comment);
}

/* Takes a word off the front; false when the text begins otherwise. */
static bool take(sw_slice *text, const char *word)
{
    size_t length = strlen(word);
    bool ends =
        text->length == length ||
        (text->length > length && !isalnum((unsigned char)text->data[length]) && text->data[length] != '-');
    if (!sw_slice_starts(*text, word) || !ends) {
        return false;
    }
    *text = sw_slice_trim(sw_slice_from(*text, length));
    return true;
}

/* The text up to the first of some characters. */
static sw_slice take_until(sw_slice *text, const char *characters)
{
    size_t length = 0;
    while (length < text->length && strchr(characters, text->data[length]) == NULL) {
        length++;
    }
    sw_slice taken = sw_slice_trim((sw_slice){text->data, length});
    *text = sw_slice_trim(sw_slice_from(*text, length));
    return taken;
}

__attribute__((format(printf, 2, 3))) static bool fail(char **fault, const char *format, ...)
{
    va_list values;
    sw_buffer text = {0};
    va_start(values, format);
    sw_buffer_vformat(&text, format, values);
    va_end(values);
    *fault = text.data;
    return false;
}

static bool read_rule(sw_slice name, bool *rules, char **fault)
{
    char word[64] = {0};
    memcpy(word, name.data, name.length < sizeof word ? name.length : sizeof word - 1);
    if (name.length == 0) {
        return fail(fault, "the rule is missing behind \"allow\"; %s", form);
    }
    if (strcmp(word, "silencer") == 0) {
        return fail(fault, "a silencer can't be silenced by another one; remove or correct the other one");
    }
    for (size_t i = 0; i < sw_rules_count(); i++) {
        if (strcmp(sw_rules_get(i)->name, word) == 0) {
            rules[i] = true;
            return true;
        }
    }
    const char *nearest = sw_rules_nearest(word);
    return nearest != NULL ? fail(fault, "there is no rule \"%s\"; did you mean \"%s\"?", word, nearest)
                           : fail(fault, "there is no rule \"%s\"; stavewright explain lists them", word);
}

/* "range, hand-span": up to "in" or the reason. */
static bool read_rules(sw_slice *text, bool *rules, char **fault)
{
    do {
        if (!read_rule(take_until(text, " \t,("), rules, fault)) {
            return false;
        }
    } while (take(text, ",") || take(text, "and"));
    return true;
}

static bool read_scope(sw_slice *text, sw_silencer *silencer, char **fault)
{
    if (!take(text, "in")) {
        silencer->scope = SW_SILENCES_LINE;
        return true;
    }
    if (take(text, "this") && take(text, "file")) {
        silencer->scope = SW_SILENCES_FILE;
        return true;
    }
    silencer->scope = SW_SILENCES_BARS;
    if (!take(text, "bars") && !take(text, "bar")) {
        return fail(fault, "behind \"in\" stands \"bars 12-20\" or \"this file\"");
    }
    sw_slice bars = take_until(text, "(");
    char copy[32] = {0};
    memcpy(copy, bars.data, bars.length < sizeof copy ? bars.length : sizeof copy - 1);
    if (bars.length >= sizeof copy || !sw_bar_range_parse(copy, &silencer->bars)) {
        return fail(fault, "\"%.*s\" are no bars; write them as 12-20, or 12", (int)bars.length, bars.data);
    }
    return true;
}

/* "(the player has a low C)" */
static bool read_reason(sw_slice text, char **fault)
{
    if (text.length == 0) {
        return fail(fault,
                    "the reason is missing; put it behind, in round brackets: allow range (the reason)");
    }
    if (text.data[0] != '(') {
        return fail(fault, "\"%.*s\" is not understood; %s", (int)text.length, text.data, form);
    }
    if (text.data[text.length - 1] != ')') {
        return fail(fault, "the bracket behind the reason is missing, or something stands behind it; %s",
                    form);
    }
    sw_slice reason = sw_slice_trim((sw_slice){text.data + 1, text.length - 2});
    return reason.length > 0
               ? true
               : fail(fault, "the reason is empty; say why the finding is no trouble, in round brackets");
}

bool sw_silencer_read(sw_slice comment, sw_silencer *silencer, char **fault)
{
    *fault = NULL;
    sw_slice text = inside(comment);
    if (!sw_slice_starts(text, "stavewright:")) {
        return false;
    }
    text = sw_slice_trim(sw_slice_from(text, strlen("stavewright:")));
    silencer->rules = sw_alloc_zero(sw_rules_count(), sizeof *silencer->rules);
    bool good = take(&text, "allow") ? read_rules(&text, silencer->rules, fault) &&
                                           read_scope(&text, silencer, fault) && read_reason(text, fault)
                                     : fail(fault, "behind \"stavewright:\" stands \"allow\"; %s", form);
    if (!good) {
        free(silencer->rules);
    }
    return good;
}

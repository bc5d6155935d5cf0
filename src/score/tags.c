#include <string.h>

#include "score/tags.h"

static bool has_word(const char *list, const char *word, size_t length)
{
    for (const char *at = list; *at != '\0';) {
        size_t n = strcspn(at, " ");
        if (n == length && memcmp(at, word, n) == 0) {
            return true;
        }
        at += n + (at[n] == ' ');
    }
    return false;
}

static bool share_a_word(const char *a, const char *b)
{
    for (const char *at = a; *at != '\0';) {
        size_t n = strcspn(at, " ");
        if (n > 0 && has_word(b, at, n)) {
            return true;
        }
        at += n + (at[n] == ' ');
    }
    return false;
}

bool sw_tag_filter_passes(const sw_tag_filter *filter, const sw_reading *reading, uint32_t tags)
{
    const char *own = sw_reading_name(reading, tags);
    for (; filter != NULL; filter = filter->outer) {
        if (share_a_word(own, sw_reading_name(reading, filter->list)) != filter->keep) {
            return false;
        }
    }
    return true;
}

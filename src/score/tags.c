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

bool sw_tags_share(const char *a, const char *b)
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

size_t sw_tags_count(const char *list, const char *among)
{
    size_t count = 0;
    for (const char *at = list; *at != '\0';) {
        size_t n = strcspn(at, " ");
        count += n > 0 && has_word(among, at, n);
        at += n + (at[n] == ' ');
    }
    return count;
}

sw_tag_filter sw_tag_filter_of(const sw_music *m, const sw_tag_filter *outer)
{
    return (sw_tag_filter){
        .outer = outer,
        .list = m->list,
        .rivals = m->name,
        .all_but = (m->flags & SW_MUSIC_NEW) != 0,
        .keep = m->kind == SW_MUSIC_KEEP,
    };
}

/* Whether some of these tags are rivals of those that the filter keeps. */
static bool has_rival(const sw_tag_filter *filter, const sw_reading *reading, const char *tags)
{
    const char *list = sw_reading_name(reading, filter->rivals);
    if (!filter->all_but) {
        return sw_tags_share(tags, list);
    }
    for (const char *at = tags; *at != '\0';) {
        size_t n = strcspn(at, " ");
        if (n > 0 && !has_word(list, at, n)) {
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
        bool named = sw_tags_share(own, sw_reading_name(reading, filter->list));
        if (filter->keep ? !named && has_rival(filter, reading, own) : named) {
            return false;
        }
    }
    return true;
}

/* Which tagged music is heard: \keepWithTag and \removeWithTag. */
#ifndef SW_SCORE_TAGS_H
#define SW_SCORE_TAGS_H

#include "stavewright/score.h"

/* The filters that are open at a place, innermost first. Lists are space-separated tags, numbers in the
 * reading's names.
 *
 * Music with none of the tags to keep is dropped only when one of its tags is a rival of theirs: of the same
 * \tagGroup, or as ungrouped as they are. */
typedef struct sw_tag_filter {
    const struct sw_tag_filter *outer;
    uint32_t list;   /* the tags to keep, or to remove */
    uint32_t rivals; /* keep: the rivals ... */
    bool all_but;    /* ... or, if set, the only tags that are no rivals */
    bool keep;
} sw_tag_filter;

/* The filter that a KEEP or DROP node opens: name = rivals, flag SW_MUSIC_NEW = all but these. */
sw_tag_filter sw_tag_filter_of(const sw_music *m, const sw_tag_filter *outer);
/* Whether music with these tags (a space-separated list) passes all filters. */
bool sw_tag_filter_passes(const sw_tag_filter *filter, const sw_reading *reading, uint32_t tags);
/* Whether two lists have a tag in common. */
bool sw_tags_share(const char *a, const char *b);
/* How many tags of the first list stand in the second. */
size_t sw_tags_count(const char *list, const char *among);

#endif

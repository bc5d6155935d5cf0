/* Which tagged music is heard: \keepWithTag and \removeWithTag. */
#ifndef SW_SCORE_TAGS_H
#define SW_SCORE_TAGS_H

#include "stavewright/score.h"

/* The filters that are open at a place, innermost first. */
typedef struct sw_tag_filter {
    struct sw_tag_filter *outer;
    uint32_t list; /* space-separated tags, a number in the reading's names */
    bool keep;     /* keep music with one of these tags (and untagged music); otherwise drop it */
} sw_tag_filter;

/* Whether music with these tags (a space-separated list) passes all filters. */
bool sw_tag_filter_passes(const sw_tag_filter *filter, const sw_reading *reading, uint32_t tags);

#endif

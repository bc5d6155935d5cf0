/* What is prerecorded stands in the score for the conductor: nobody plays it, so nothing is said about it. */
#include <stdlib.h>
#include <string.h>

#include "checks/heard.h"
#include "checks/rules.h"

static bool has_prerecorded(const sw_film *film)
{
    for (size_t i = 0; i < sw_film_chair_count(film); i++) {
        if (sw_film_chair(film, i)->prerecorded) {
            return true;
        }
    }
    return false;
}

/* Whether all that is heard at a finding is prerecorded. */
static bool is_prerecorded(sw_check *check, const sw_heard *heard, const sw_finding *finding)
{
    size_t count;
    const sw_heard_item *items = sw_heard_near(heard, finding->file, finding->start, &count);
    for (size_t i = 0; i < count; i++) {
        const sw_score *score = &check->reading->scores[items[i].score];
        uint32_t staff = score->voices[score->events[items[i].event].voice].staff;
        if (!sw_check_seating(check, items[i].score)->staves[staff].prerecorded) {
            return false;
        }
    }
    return count > 0;
}

void sw_drop_prerecorded(sw_check *check, size_t first)
{
    sw_findings *findings = check->findings;
    if (!has_prerecorded(check->film) || findings->count == first) {
        return;
    }
    sw_heard heard = sw_heard_of(check->reading);
    size_t kept = first;
    for (size_t i = first; i < findings->count; i++) {
        bool texts = strcmp(findings->items[i].rule, "house") == 0;
        if (texts || !is_prerecorded(check, &heard, &findings->items[i])) {
            findings->items[kept++] = findings->items[i];
        }
    }
    findings->count = kept;
    sw_heard_free(&heard);
}

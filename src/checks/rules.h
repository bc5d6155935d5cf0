/* All rules. A new one has its file here in src/checks/, a row in this table and a golden test in
 * tests/golden/check/. */
#ifndef SW_CHECKS_RULES_H
#define SW_CHECKS_RULES_H

#include "players/chair_notes.h"
#include "players/chairs.h"
#include "stavewright/check.h"

/* One row a rule, in the order in which they run: RULE(x) means that a file here defines
 * `const sw_rule sw_rule_x`. */
#define SW_RULES(RULE)                                                                                       \
    RULE(syntax)                                                                                             \
    RULE(include)                                                                                            \
    RULE(unresolved)                                                                                         \
    RULE(nesting)                                                                                            \
    RULE(silencer)                                                                                           \
    RULE(bar_length)                                                                                         \
    RULE(staff_length)                                                                                       \
    RULE(transposition)                                                                                      \
    RULE(range)                                                                                              \
    RULE(hand_span)                                                                                          \
    RULE(prep_time)                                                                                          \
    RULE(technique_open)                                                                                     \
    RULE(breath)                                                                                             \
    RULE(endurance)                                                                                          \
    RULE(tongue)                                                                                             \
    RULE(no_niente)                                                                                          \
    RULE(register)                                                                                           \
    RULE(trill)                                                                                              \
    RULE(tremolo)                                                                                            \
    RULE(chairs)                                                                                             \
    RULE(house)

#define SW_DECLARE_RULE(name) extern const sw_rule sw_rule_##name;
SW_RULES(SW_DECLARE_RULE)
#undef SW_DECLARE_RULE

/* Who plays the staves of a score of the reading, for rules: found out once, owned by the check. */
const sw_seating *sw_check_seating(sw_check *check, size_t score);
/* Which of them play each event of the score, likewise. */
const sw_seat_range *sw_check_seat_ranges(sw_check *check, size_t score);
/* Calls `each` for the staves of all scores that are no pictures in a text. */
typedef void sw_each_staff(sw_check *check, const sw_score *score, uint32_t staff);
void sw_check_each_staff(sw_check *check, sw_each_staff *each);
/* Whether a rule is to be run: chosen, and not turned off by the film. */
bool sw_rule_is_wanted(const sw_check_options *options, const char *rule);
/* Offers to mend the finding that was added last: by changes of a score (copied), which are safe or not ...
 */
void sw_fix_by_changes(sw_check *check, bool safe, uint32_t score, const sw_change *changes, size_t count,
                       const char *says);
/* ... by other text in the finding's file (copied), which is always safe ... */
void sw_fix_by_text(sw_check *check, const sw_fix_edit *edits, size_t count, const char *says);
/* ... or by a shorter note before. */
void sw_fix_by_courtesy(sw_check *check, uint32_t score);
/* Takes out the findings, from number `first` on, about what is prerecorded. */
void sw_drop_prerecorded(sw_check *check, size_t first);
/* Sets line and column of the findings from number `first` on. */
void sw_findings_place(const sw_reading *reading, sw_findings *findings, size_t first);

#endif

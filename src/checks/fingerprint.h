/* What a finding is about, told apart from where it stands in the file. Private to checks/. */
#ifndef SW_CHECKS_FINGERPRINT_H
#define SW_CHECKS_FINGERPRINT_H

#include "checks/heard.h"
#include "stavewright/check.h"

/* Fills in where the music of a finding of the reading stands (staff, bar, end of the place) and its
 * fingerprint: a digest of rule, file name, staff, place within the bar and what is played there; of the
 * source text where the finding is about the text or nothing is heard. No line and no bar number goes into
 * it, so it stays the same when bars or lines come in or go elsewhere. `finding` has line and column. */
void sw_fingerprint_finding(const sw_heard *heard, const sw_finding *finding, sw_arena *arena,
                            sw_checked *result);

#endif

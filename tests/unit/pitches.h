/* Pitches by their names in scientific notation, for tests. Include it behind cmocka.h. */
#ifndef SW_TESTS_PITCHES_H
#define SW_TESTS_PITCHES_H

#include "stavewright/pitch.h"

static inline sw_pitch pitch(const char *name)
{
    sw_pitch p = {0};
    if (!sw_pitch_from_scientific(sw_slice_of(name), &p)) {
        fail_msg("%s is no pitch", name);
    }
    return p;
}

static inline void assert_pitch(sw_pitch p, const char *name)
{
    char text[SW_PITCH_TEXT];
    assert_string_equal(sw_pitch_print(p, text), name);
}

#endif

/* Musical time as the language counts it: main time, and beside it the offset of grace notes. */
#ifndef SW_SCORE_MOMENT_H
#define SW_SCORE_MOMENT_H

#include "stavewright/rational.h"

typedef struct sw_moment {
    sw_rational main;  /* whole notes */
    sw_rational grace; /* 0 or negative, while inside grace notes */
} sw_moment;

sw_moment sw_moment_zero(void);
/* <0, 0, >0: by main time, then by the grace offset. */
int sw_moment_compare(sw_moment a, sw_moment b);

#endif

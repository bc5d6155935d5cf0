#include <stdlib.h>

#include "stavewright/move.h"

void sw_move_free(sw_move *move)
{
    if (move == NULL) {
        return;
    }
    sw_patch_free(&move->patch);
    for (size_t i = 0; i < move->main_count; i++) {
        sw_reading_free(move->mains[i]);
    }
    free(move->mains);
    sw_shelf_free(move->shelf);
    sw_findings_free(&move->findings);
    sw_buffer_free(&move->notes);
    sw_buffer_free(&move->why);
    free(move);
}

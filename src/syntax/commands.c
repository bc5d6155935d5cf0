#include "syntax/commands.h"

const sw_command *sw_command_find(sw_slice name)
{
    size_t low = 0;
    size_t high = sw_command_count;
    while (low < high) {
        size_t middle = (low + high) / 2;
        int order = sw_slice_compare(name, sw_slice_of(sw_commands[middle].name));
        if (order == 0) {
            return &sw_commands[middle];
        }
        if (order < 0) {
            high = middle;
        } else {
            low = middle + 1;
        }
    }
    return NULL;
}

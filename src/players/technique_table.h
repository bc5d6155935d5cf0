/* The inside of sw_techniques, shared by the reader of the YAML and by the interface. */
#ifndef STAVEWRIGHT_PLAYERS_TECHNIQUE_TABLE_H
#define STAVEWRIGHT_PLAYERS_TECHNIQUE_TABLE_H

#define PCRE2_CODE_UNIT_WIDTH 8
#include <pcre2.h>

#include "base/memo.h"
#include "stavewright/techniques.h"

/* Families as bits; 0 is for all, too. */
enum { SW_ALL_FAMILIES = 0 };

/* Words that say the same. */
typedef struct sw_word_rule {
    uint8_t says[SW_TECHNIQUE_GROUPS];
    size_t said;
    unsigned families;
    pcre2_code *code;
} sw_word_rule;

/* A row of `changes`. */
typedef struct sw_change_rule {
    uint8_t from; /* SW_NO_TECHNIQUE: any */
    uint8_t to;
    unsigned families;
    const char **instruments; /* ids */
    size_t instrument_count;
    sw_technique_change figures;
} sw_change_rule;

typedef struct sw_mark_rule {
    const char *mark;
    uint8_t technique;
} sw_mark_rule;

struct sw_techniques {
    sw_arena *arena;
    sw_technique_group groups[SW_TECHNIQUE_GROUPS];
    size_t group_count;
    sw_technique items[SW_NO_TECHNIQUE];
    size_t count;
    sw_word_rule *words; /* what was added last counts first */
    size_t word_count;
    size_t word_capacity;
    sw_change_rule *changes; /* those of the overriding text first */
    size_t change_count;
    size_t change_capacity;
    sw_mark_rule *marks;
    size_t mark_count;
    size_t mark_capacity;
    pcre2_code *half;
    sw_memo *read; /* by family and text: what it says */
};

/* Reads YAML text into the table. On a mistake false and *error as sw_techniques_load says; the table is then
 * good only for freeing. */
bool sw_technique_table_read(sw_techniques *table, const char *path, sw_slice yaml, char **error);

#endif

/* Values out of a YAML document, and mistakes in it with their place. */
#ifndef STAVEWRIGHT_PLAYERS_YAML_READER_H
#define STAVEWRIGHT_PLAYERS_YAML_READER_H

#include <yaml.h>

#include "stavewright/base.h"
#include "stavewright/pitch.h"
#include "stavewright/players.h"

typedef struct sw_yaml_reader {
    const char *path; /* for messages */
    yaml_document_t document;
    char **error; /* set by the first mistake; the caller of all frees it */
} sw_yaml_reader;

/* Parses a text that holds one document. `root` gets the top node, NULL for a text without content. On true
 * the caller deletes the document with yaml_document_delete; on false there is none and the error is set. */
bool sw_yaml_parse(sw_yaml_reader *r, sw_slice yaml, const yaml_node_t **root);

/* Say what is wrong at a node; always false, so that a caller can return it. */
bool sw_yaml_fail(sw_yaml_reader *r, const yaml_node_t *node, const char *format, ...)
    __attribute__((format(printf, 3, 4)));
/* An unknown word, with what it may have meant or else with all that is possible. */
bool sw_yaml_fail_word(sw_yaml_reader *r, const yaml_node_t *node, const char *what, sw_slice word,
                       const char *const *words, size_t count);

/* A word that is no id of an instrument, and which it may mean: a mistyped id, or the name of a staff. */
bool sw_yaml_fail_instrument(sw_yaml_reader *r, const yaml_node_t *node, sw_slice word,
                             const sw_instruments *instruments);

/* The node of a number that another node holds. */
const yaml_node_t *sw_yaml_node(sw_yaml_reader *r, int number);

/* The values of a mapping: values[i] is that of keys[i], NULL where it is missing. Another key, or one that
 * stands twice, is a mistake. */
bool sw_yaml_fields(sw_yaml_reader *r, const yaml_node_t *node, const char *what, const char *const *keys,
                    size_t count, const yaml_node_t **values);
/* The items of a list: node numbers for sw_yaml_node. */
bool sw_yaml_list(sw_yaml_reader *r, const yaml_node_t *node, const char *what,
                  const yaml_node_item_t **items, size_t *count);

/* Values; `what` names them in messages. False, and the error set, when the node is something else. */
bool sw_yaml_text(sw_yaml_reader *r, const yaml_node_t *node, const char *what,
                  sw_slice *text); /* one line, not empty */
bool sw_yaml_pitch(sw_yaml_reader *r, const yaml_node_t *node, const char *what, sw_pitch *pitch);
bool sw_yaml_number(sw_yaml_reader *r, const yaml_node_t *node, const char *what, int *number); /* 1 to 99 */
bool sw_yaml_seconds(sw_yaml_reader *r, const yaml_node_t *node, const char *what, double *seconds);
bool sw_yaml_decimal(sw_yaml_reader *r, const yaml_node_t *node, const char *what, double *value);
bool sw_yaml_flag(sw_yaml_reader *r, const yaml_node_t *node, const char *what, bool *flag);

#endif

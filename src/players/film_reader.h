/* A film while it is read. Private to players/film*.c. */
#ifndef STAVEWRIGHT_PLAYERS_FILM_READER_H
#define STAVEWRIGHT_PLAYERS_FILM_READER_H

#include "base/pattern.h"
#include "players/yaml_reader.h"
#include "stavewright/film.h"

/* What the film says about one rule. */
typedef struct sw_film_rule_entry {
    sw_film_rule rule;
    sw_rule_wish wish;
    double *values; /* one an option of the rule */
    bool *given;
} sw_film_rule_entry;

/* The patterns of a chair. */
typedef struct sw_film_patterns {
    sw_pattern **items;
    size_t count;
} sw_film_patterns;

struct sw_film {
    sw_arena *arena;
    const char *path; /* NULL for the default film */
    const char *name;
    sw_instruments *instruments;
    sw_techniques *techniques;
    sw_limits *limits;
    bool has_roster;
    sw_chair *chairs;
    sw_film_patterns *patterns; /* one a chair */
    size_t chair_count;
    sw_film_rule_entry *rules; /* those that are named */
    size_t rule_count;
    sw_house_rule *house;
    sw_pattern **house_patterns;
    size_t house_count;
    const char **includes;
    size_t include_count;
    const char **outputs; /* absolute where they exist */
    size_t output_count;
};

typedef struct sw_film_reader {
    sw_yaml_reader yaml;
    sw_film *film;
    const sw_film_rule *rules;
    size_t rule_count;
} sw_film_reader;

/* The sections. False, and the error set, on a mistake. */
bool sw_film_read_chairs(sw_film_reader *r, const yaml_node_t *node);
bool sw_film_read_rules(sw_film_reader *r, const yaml_node_t *node);
bool sw_film_read_house(sw_film_reader *r, const yaml_node_t *node);
bool sw_film_read_paths(sw_film_reader *r, const yaml_node_t *node);

/* A text kept as long as the film. */
bool sw_film_read_text(sw_film_reader *r, const yaml_node_t *node, const char *what, const char **text);
/* A pattern; its text too when `text` is not NULL. */
bool sw_film_read_pattern(sw_film_reader *r, const yaml_node_t *node, const char *what, sw_pattern **pattern,
                          const char **text);

#endif

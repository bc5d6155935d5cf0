#include "app/recipe.h"

#include <stdlib.h>
#include <string.h>

#include "app/options.h"
#include "players/yaml_reader.h"

bool sw_wanted_is(const sw_wanted *wanted, const char *text, bool part)
{
    if (wanted->pattern != NULL) {
        return sw_pattern_find(wanted->pattern, sw_slice_of(text), 0, NULL, NULL);
    }
    return part ? strstr(text, wanted->word) != NULL : strcmp(text, wanted->word) == 0;
}

void sw_recipe_free(sw_recipe *recipe)
{
    for (size_t i = 0; i < recipe->count; i++) {
        for (size_t k = 0; k < recipe->steps[i].cue_count; k++) {
            sw_pattern_free(recipe->steps[i].cues[k].pattern);
        }
        sw_pattern_free(recipe->steps[i].instrument.pattern);
    }
    sw_arena_free(recipe->arena);
    *recipe = (sw_recipe){0};
}

/* ---- values ---------------------------------------------------------------------------------------------
 */

static const char *keep(sw_recipe *recipe, sw_slice text)
{
    return sw_arena_copy(recipe->arena, text);
}

static bool read_wanted(sw_yaml_reader *r, sw_recipe *recipe, const yaml_node_t *node, const char *what,
                        sw_wanted *wanted)
{
    sw_slice text;
    if (!sw_yaml_text(r, node, what, &text)) {
        return false;
    }
    wanted->word = keep(recipe, text);
    if (text.length > 2 && text.data[0] == '/' && text.data[text.length - 1] == '/') {
        char message[SW_PATTERN_MESSAGE];
        wanted->pattern = sw_pattern_new((sw_slice){text.data + 1, text.length - 2}, message);
        return wanted->pattern != NULL || sw_yaml_fail(r, node, "%s: %s", what, message);
    }
    return true;
}

/* One word, or a list of them. */
static bool read_cues(sw_yaml_reader *r, sw_recipe *recipe, const yaml_node_t *node, sw_recipe_step *step)
{
    const yaml_node_item_t *items = NULL;
    size_t count = 1;
    if (node->type == YAML_SEQUENCE_NODE && !sw_yaml_list(r, node, "cues", &items, &count)) {
        return false;
    }
    step->cues = sw_arena_alloc(recipe->arena, (count + 1) * sizeof *step->cues);
    for (size_t i = 0; i < count; i++) {
        const yaml_node_t *item = items == NULL ? node : sw_yaml_node(r, items[i]);
        if (!read_wanted(r, recipe, item, "cues", &step->cues[step->cue_count++])) {
            return false;
        }
    }
    return true;
}

static bool read_where(sw_yaml_reader *r, const yaml_node_t *node, sw_recipe_step *step)
{
    sw_slice text;
    if (!sw_yaml_text(r, node, "where", &text)) {
        return false;
    }
    for (size_t i = 0; i < sw_rules_count(); i++) {
        if (sw_slice_is(text, sw_rules_get(i)->name)) {
            step->where = sw_rules_get(i);
            return step->where->run != NULL ||
                   sw_yaml_fail(r, node,
                                "where: \"%s\" speaks of the sources, not of what is "
                                "played",
                                step->where->name);
        }
    }
    const char **names = sw_alloc((sw_rules_count() + 1) * sizeof *names);
    for (size_t i = 0; i < sw_rules_count(); i++) {
        names[i] = sw_rules_get(i)->name;
    }
    sw_yaml_fail_word(r, node, "rule", text, names, sw_rules_count());
    free(names);
    return false;
}

static bool read_bars(sw_yaml_reader *r, sw_recipe *recipe, const yaml_node_t *node, sw_recipe_step *step)
{
    sw_slice text;
    if (!sw_yaml_text(r, node, "bars", &text)) {
        return false;
    }
    step->bars_word = keep(recipe, text);
    return sw_bar_range_parse(step->bars_word, &step->bars) ||
           sw_yaml_fail(r, node, "bars: '%s' is none; write 8-12 or 8:3-9:1 (bar:beat)", step->bars_word);
}

/* ---- a step ---------------------------------------------------------------------------------------------
 */

enum { DO, CUES, WHERE, STAFF, INSTRUMENT, BARS, SHARED, MOST_KEYS = 32 };
static const char *const shared_keys[SHARED] = {"do", "cues", "where", "staff", "instrument", "bars"};

static void add_word(sw_recipe_step *step, const char *word)
{
    step->words[step->word_count++] = (char *)word; /* as those of main(): nobody writes into them */
}

/* The transformation that a step names. */
static const sw_move_command *find_move(sw_yaml_reader *r, const yaml_node_t *node)
{
    const yaml_node_t *named = NULL;
    for (const yaml_node_pair_t *pair = node->data.mapping.pairs.start; pair < node->data.mapping.pairs.top;
         pair++) {
        const yaml_node_t *key = sw_yaml_node(r, pair->key);
        if (key->type == YAML_SCALAR_NODE && strcmp((const char *)key->data.scalar.value, "do") == 0) {
            named = sw_yaml_node(r, pair->value);
        }
    }
    sw_slice text;
    if (named == NULL) {
        sw_yaml_fail(r, node, "a step says with \"do\" which transformation it is");
        return NULL;
    }
    if (!sw_yaml_text(r, named, "do", &text)) {
        return NULL;
    }
    const sw_move_command *move = sw_move_command_find(text);
    if (move == NULL) {
        size_t count;
        const char *const *names = sw_move_command_names(&count);
        sw_yaml_fail_word(r, named, "transformation", text, names, count);
    }
    return move;
}

/* Options that a step does not take, or takes under its own name. */
static bool is_shared(const char *option)
{
    static const char *const names[] = {"--staff", "--bars",  "--lines", "--include",   "--file-name",
                                        "--why",   "--write", "--diff",  "--instrument"};
    for (size_t i = 0; i < sizeof names / sizeof names[0]; i++) {
        if (strcmp(names[i], option) == 0) {
            return true;
        }
    }
    return false;
}

/* The options of the transformation that are a step's, too, and the keys of a step: those of SHARED, then the
 * options without their dashes. */
static size_t list_keys(const sw_move_command *move, const sw_option **options, const char **keys)
{
    size_t count = SHARED;
    memcpy(keys, shared_keys, sizeof shared_keys);
    for (const sw_option *o = sw_option_next(move->name, NULL); o != NULL;
         o = sw_option_next(move->name, o)) {
        if (!is_shared(o->name) && count < MOST_KEYS) {
            options[count] = o;
            keys[count++] = o->name + 2;
        }
    }
    return count;
}

static bool read_option(sw_yaml_reader *r, sw_recipe *recipe, sw_recipe_step *step, const sw_option *option,
                        const yaml_node_t *value)
{
    if (sw_option_is_flag(option)) {
        bool given;
        if (!sw_yaml_flag(r, value, option->name + 2, &given)) {
            return false;
        }
        if (given) {
            add_word(step, option->name);
        }
        return true;
    }
    sw_slice text;
    if (!sw_yaml_text(r, value, option->name + 2, &text)) {
        return false;
    }
    add_word(step, option->name);
    add_word(step, keep(recipe, text));
    return true;
}

static bool takes_staff(const sw_move_command *move)
{
    return sw_option_find(move->name, sw_slice_of("--staff")) != NULL;
}

static bool read_places(sw_yaml_reader *r, sw_recipe *recipe, const yaml_node_t **values,
                        sw_recipe_step *step)
{
    const yaml_node_t *staff = values[STAFF] != NULL ? values[STAFF] : values[INSTRUMENT];
    sw_slice text;
    if (values[WHERE] != NULL && staff == NULL) {
        staff = values[WHERE];
    }
    if (staff != NULL && !takes_staff(step->move)) {
        return sw_yaml_fail(r, staff, "%s takes no staff; say from and to", step->move->name);
    }
    if (values[STAFF] != NULL) {
        if (!sw_yaml_text(r, values[STAFF], "staff", &text)) {
            return false;
        }
        step->staff = keep(recipe, text);
    }
    return (values[CUES] == NULL || read_cues(r, recipe, values[CUES], step)) &&
           (values[WHERE] == NULL || read_where(r, values[WHERE], step)) &&
           (values[BARS] == NULL || read_bars(r, recipe, values[BARS], step)) &&
           (values[INSTRUMENT] == NULL ||
            read_wanted(r, recipe, values[INSTRUMENT], "instrument", &step->instrument));
}

/* The words of the step must be right for the command line, too; what is wrong has been said by then. */
static bool try_words(sw_yaml_reader *r, const yaml_node_t *node, const sw_recipe_step *step)
{
    char *words[MOST_KEYS * 2 + 6];
    size_t count = step->word_count;
    memcpy(words, step->words, count * sizeof *words);
    if (takes_staff(step->move) &&
        (step->staff != NULL || step->instrument.word != NULL || step->where != NULL)) {
        words[count++] = "--staff";
        words[count++] = "staff";
    }
    if (step->bars_word != NULL || step->where != NULL) {
        words[count++] = "--bars";
        words[count++] = step->bars_word != NULL ? (char *)(uintptr_t)step->bars_word : "1"; /* only read */
    }
    words[count++] = "score.ly";
    sw_move_words m = {0};
    void *own = sw_move_command_read(step->move, &m, (int)count, words);
    free(own);
    return own != NULL || sw_yaml_fail(r, node, "this step can't be done as it is written (see above)");
}

static bool read_step(sw_yaml_reader *r, sw_recipe *recipe, const yaml_node_t *node, sw_recipe_step *step)
{
    if (node->type != YAML_MAPPING_NODE) {
        return sw_yaml_fail(r, node, "a step is a mapping: do: octave, into: oboe ...");
    }
    step->move = find_move(r, node);
    if (step->move == NULL) {
        return false;
    }
    const char *keys[MOST_KEYS];
    const sw_option *options[MOST_KEYS];
    const yaml_node_t *values[MOST_KEYS];
    size_t count = list_keys(step->move, options, keys);
    step->words = sw_arena_alloc(recipe->arena, (2 * count + 1) * sizeof *step->words);
    if (!sw_yaml_fields(r, node, "a step", keys, count, values) || !read_places(r, recipe, values, step)) {
        return false;
    }
    for (size_t i = SHARED; i < count; i++) {
        if (values[i] != NULL && !read_option(r, recipe, step, options[i], values[i])) {
            return false;
        }
    }
    return try_words(r, node, step);
}

static bool read_all(sw_yaml_reader *r, sw_recipe *recipe, const yaml_node_t *root)
{
    static const char *const keys[] = {"name", "steps"};
    const yaml_node_t *values[2];
    const yaml_node_item_t *items;
    size_t count;
    if (!sw_yaml_fields(r, root, "a recipe", keys, 2, values)) {
        return false;
    }
    if (values[1] == NULL) {
        return sw_yaml_fail(r, root, "a recipe has steps");
    }
    if (!sw_yaml_list(r, values[1], "steps", &items, &count)) {
        return false;
    }
    if (count == 0) {
        return sw_yaml_fail(r, root, "this recipe has no step; one is as in {do: octave, by: 1}");
    }
    recipe->steps = sw_arena_alloc(recipe->arena, (count + 1) * sizeof *recipe->steps);
    for (size_t i = 0; i < count; i++) {
        if (!read_step(r, recipe, sw_yaml_node(r, items[i]), &recipe->steps[recipe->count++])) {
            return false;
        }
    }
    return true;
}

bool sw_recipe_load(const char *path, sw_recipe *recipe, char **error)
{
    *recipe = (sw_recipe){.arena = sw_arena_new()};
    sw_text *text = sw_text_read(path, error);
    sw_yaml_reader r = {.path = path, .error = error};
    const yaml_node_t *root = NULL;
    bool good = text != NULL && sw_yaml_parse(&r, (sw_slice){text->bytes, text->length}, &root);
    if (good) {
        good = root == NULL ? false : read_all(&r, recipe, root);
        if (root == NULL && asprintf(error, "%s:1:1: this recipe is empty; it needs steps", path) < 0) {
            abort();
        }
        yaml_document_delete(&r.document);
    }
    sw_text_free(text);
    if (!good) {
        sw_recipe_free(recipe);
    }
    return good;
}

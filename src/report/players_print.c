/* The table of players as text, as tab-separated rows and as JSON. */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "checks/say.h"
#include "report/forms.h"
#include "report/players_table.h"

/* ---- cells -----------------------------------------------------------------------------------------------
 */

enum { COLUMNS = 9 };
static const char *const headings[COLUMNS] = {"chair",  "plays",   "cues",    "bars", "playing",
                                              "lowest", "highest", "changes", "bring"};

static void add_ids(const sw_instrument *const *list, size_t count, sw_buffer *text)
{
    for (size_t i = 0; i < count; i++) {
        sw_buffer_format(text, "%s%s", i == 0 ? "" : ", ", list[i]->id);
    }
}

/* "flute to piccolo 4.0 s" */
static void add_change(const sw_player_change *change, sw_buffer *text)
{
    char seconds[SW_SAY];
    sw_buffer_format(text, "%s to %s %s", change->from->id, change->to->id,
                     change->seconds < 0 ? "at once" : sw_say_seconds(change->seconds, seconds));
}

/* What a player plays: what the list says, or else what the scores ask for. */
static void add_plays(const sw_player_row *row, sw_buffer *text)
{
    if (row->chair != NULL) {
        add_ids(row->chair->plays, row->chair->play_count, text);
    } else {
        add_ids(row->instruments, row->instrument_count, text);
    }
}

/* One cell of a row. */
static void add_cell(const sw_players_table *table, const sw_player_row *row, size_t column, sw_buffer *text)
{
    char pitch[SW_PITCH_TEXT];
    long seconds = lround(row->seconds);
    switch (column) {
    case 0:
        sw_buffer_string(text, row->name);
        return;
    case 1:
        add_plays(row, text);
        return;
    case 2:
        sw_buffer_format(text, "%zu of %zu", row->cue_count, table->cue_count);
        return;
    case 3:
        sw_buffer_format(text, "%zu", row->bars);
        return;
    case 4:
        sw_buffer_format(text, "%ld:%02ld", seconds / 60, seconds % 60);
        return;
    case 5:
        sw_buffer_string(text, row->has_pitch ? sw_pitch_print(row->lowest, pitch) : "");
        return;
    case 6:
        sw_buffer_string(text, row->has_pitch ? sw_pitch_print(row->highest, pitch) : "");
        return;
    case 7:
        for (size_t i = 0; i < row->change_count; i++) {
            sw_buffer_string(text, i == 0 ? "" : ", ");
            add_change(&row->changes[i], text);
        }
        return;
    default:
        for (size_t i = 0; i < row->thing_count; i++) {
            sw_buffer_format(text, "%s%s", i == 0 ? "" : ", ", row->things[i]);
        }
        return;
    }
}

/* ---- text and rows ---------------------------------------------------------------------------------------
 */

/* Characters, not bytes. */
static int width_of(const char *text)
{
    int width = 0;
    for (; *text != '\0'; text++) {
        width += ((unsigned char)*text & 0xC0u) != 0x80;
    }
    return width;
}

/* Calls `put` with each cell; row 0 has the headings. */
static void each_cell(const sw_players_table *table,
                      void (*put)(void *context, size_t row, size_t column, const char *cell), void *context)
{
    for (size_t r = 0; r <= table->row_count; r++) {
        for (size_t c = 0; c < COLUMNS; c++) {
            sw_buffer cell = {0};
            if (r == 0) {
                sw_buffer_string(&cell, headings[c]);
            } else {
                add_cell(table, &table->rows[r - 1], c, &cell);
            }
            put(context, r, c, sw_buffer_text(&cell));
            sw_buffer_free(&cell);
        }
    }
}

/* Columns as wide as their widest cell. */
typedef struct text_page {
    int widths[COLUMNS];
    sw_buffer *result;
} text_page;

static void measure(void *context, size_t row, size_t column, const char *cell)
{
    text_page *page = context;
    (void)row;
    page->widths[column] = width_of(cell) > page->widths[column] ? width_of(cell) : page->widths[column];
}

static void print_text_cell(void *context, size_t row, size_t column, const char *cell)
{
    text_page *page = context;
    (void)row;
    sw_buffer_string(page->result, cell);
    if (column + 1 < COLUMNS) {
        sw_buffer_format(page->result, "%*s", page->widths[column] - width_of(cell) + 2, "");
        return;
    }
    while (page->result->length > 0 && page->result->data[page->result->length - 1] == ' ') {
        page->result->data[--page->result->length] = '\0';
    }
    sw_buffer_char(page->result, '\n');
}

static void print_row_cell(void *context, size_t row, size_t column, const char *cell)
{
    sw_buffer *result = context;
    (void)row;
    sw_buffer_format(result, "%s%c", cell, column + 1 < COLUMNS ? '\t' : '\n');
}

void sw_report_players(const sw_players_table *table, sw_buffer *result)
{
    text_page page = {.result = result};
    each_cell(table, measure, &page);
    each_cell(table, print_text_cell, &page);
}

void sw_report_players_rows(const sw_players_table *table, sw_buffer *result)
{
    each_cell(table, print_row_cell, result);
}

/* ---- JSON ------------------------------------------------------------------------------------------------
 */

static json_t *id_list(const sw_instrument *const *list, size_t count)
{
    json_t *array = json_array();
    for (size_t i = 0; i < count; i++) {
        json_array_append_new(array, json_string(list[i]->id));
    }
    return array;
}

static json_t *pitch_of(bool known, sw_pitch pitch)
{
    char text[SW_PITCH_TEXT];
    return known ? json_string(sw_pitch_print(pitch, text)) : json_null();
}

/* To a tenth of a second: more is not in a tempo mark. */
static json_t *seconds_of(double seconds)
{
    return json_real(round(seconds * 10) / 10);
}

static int compare_cues(const void *a, const void *b, void *table)
{
    const char *const *cues = ((const sw_players_table *)table)->cues;
    return strcmp(cues[*(const size_t *)a], cues[*(const size_t *)b]);
}

/* Cues in the order of their names: full scores were added first. */
static json_t *cue_list(const sw_players_table *table, const size_t *cues, size_t count)
{
    json_t *array = json_array();
    size_t *sorted = sw_alloc((count + 1) * sizeof *sorted);
    for (size_t i = 0; i < count; i++) {
        sorted[i] = cues == NULL ? i : cues[i];
    }
    qsort_r(sorted, count, sizeof *sorted, compare_cues, (void *)table);
    for (size_t i = 0; i < count; i++) {
        json_array_append_new(array, sw_json_text(table->cues[sorted[i]]));
    }
    free(sorted);
    return array;
}

static json_t *player_of(const sw_players_table *table, const sw_player_row *row)
{
    json_t *cues = cue_list(table, row->cues, row->cue_count);
    json_t *changes = json_array();
    json_t *things = json_array();
    for (size_t i = 0; i < row->change_count; i++) {
        const sw_player_change *change = &row->changes[i];
        json_t *one = json_object();
        json_object_set_new(one, "from", json_string(change->from->id));
        json_object_set_new(one, "to", json_string(change->to->id));
        json_object_set_new(one, "seconds", seconds_of(change->seconds));
        json_object_set_new(one, "cue", sw_json_text(table->cues[change->cue]));
        json_object_set_new(one, "bar", json_integer(change->bar));
        json_array_append_new(changes, one);
    }
    for (size_t i = 0; i < row->thing_count; i++) {
        json_array_append_new(things, json_string(row->things[i]));
    }
    json_t *player = json_object();
    json_object_set_new(player, "chair", sw_json_text(row->name));
    json_object_set_new(player, "plays",
                        row->chair != NULL ? id_list(row->chair->plays, row->chair->play_count)
                                           : id_list(row->instruments, row->instrument_count));
    json_object_set_new(player, "played", id_list(row->instruments, row->instrument_count));
    json_object_set_new(player, "cues", cues);
    json_object_set_new(player, "bars", json_integer((json_int_t)row->bars));
    json_object_set_new(player, "seconds", seconds_of(row->seconds));
    json_object_set_new(player, "lowest", pitch_of(row->has_pitch, row->lowest));
    json_object_set_new(player, "highest", pitch_of(row->has_pitch, row->highest));
    json_object_set_new(player, "changes", changes);
    json_object_set_new(player, "bring", things);
    return player;
}

void sw_report_players_json(const sw_players_table *table, sw_buffer *result)
{
    json_t *cues = cue_list(table, NULL, table->cue_count);
    json_t *players = json_array();
    for (size_t i = 0; i < table->row_count; i++) {
        json_array_append_new(players, player_of(table, &table->rows[i]));
    }
    json_t *all = json_object();
    json_object_set_new(all, "film", sw_json_text(sw_film_name(table->film)));
    json_object_set_new(all, "cues", cues);
    json_object_set_new(all, "players", players);
    sw_json_print(all, result);
}

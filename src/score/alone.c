/* A file by itself: without what it includes, and with its variables' music as scores. */
#include <stdlib.h>

#include "score/reader.h"
#include "score/words.h"
#include "syntax/drum_names.h"
#include "syntax/note_names.h"

/* ---- variables that nobody plays ------------------------------------------------------------------------
 */

/* Marks the variables' music, of the first `count` nodes, that the scores from number `first` on play. */
static void mark_played(const sw_reading *reading, size_t first, bool *played, size_t count)
{
    for (size_t s = first; s < reading->score_count; s++) {
        const sw_score *score = &reading->scores[s];
        for (size_t f = 0; f < score->frame_count; f++) {
            const sw_music *m = &reading->music[score->frames[f].music];
            if (m->kind == SW_MUSIC_REFERENCE && m->first < count) {
                played[m->first] = true;
            }
        }
    }
}

static void play_variable(sw_reader *reader, const sw_variable *variable)
{
    sw_value where = {.file = variable->file, .start = variable->start, .end = variable->end};
    uint32_t reference = sw_music_wrap(reader, SW_MUSIC_REFERENCE, &where, variable->music, true);
    uint32_t staff =
        sw_music_wrap(reader, SW_MUSIC_CONTEXT, &where, reference, true); /* for all its voices */
    sw_pending pending = {.music = staff,
                          .file = variable->file,
                          .start = variable->start,
                          .end = variable->end,
                          .heard = true,
                          .quote_count = reader->quote_count};
    sw_music_at(reader, reference)->name = variable->name;
    sw_music_at(reader, staff)->name = sw_names_add(reader->reading->names, sw_slice_of("Staff"));
    sw_music_at(reader, staff)->flags |= SW_MUSIC_NEW;
    size_t number = reader->reading->score_count;
    sw_play_pending(reader, &pending, false);
    reader->reading->scores[number].variable = variable->name;
}

static int compare_scores(const void *a, const void *b)
{
    const sw_score *x = a;
    const sw_score *y = b;
    return (x->start > y->start) - (x->start < y->start);
}

void sw_play_variables(sw_reader *reader)
{
    sw_reading *reading = reader->reading;
    size_t count = reading->music_count; /* playing adds more */
    size_t scores = reading->score_count;
    bool *played = sw_alloc_zero(count + 1, sizeof *played);
    mark_played(reading, 0, played, count);
    for (size_t i = reading->variable_count;
         i-- > 0;) { /* backwards: those that others use come before them */
        sw_variable variable = reading->variables[i];
        if (variable.music != SW_NO_INDEX && variable.music < count && !played[variable.music]) {
            size_t before = reading->score_count;
            play_variable(reader, &variable);
            mark_played(reading, before, played, count);
        }
    }
    free(played);
    size_t added = reading->score_count - scores;
    if (added > 1) {
        qsort(reading->scores + scores, added, sizeof *reading->scores, compare_scores);
    }
}

/* ---- the language of note names -------------------------------------------------------------------------
 */

static bool is_drum(sw_slice name)
{
    for (size_t i = 0; i < sw_drum_name_count; i++) {
        if (sw_slice_is(name, sw_drum_names[i].name)) {
            return true;
        }
    }
    return false;
}

/* The language in which the most words are notes; of several the first, so the usual one. */
static const char *likely_language(const sw_text *text)
{
    sw_note_table *tables = sw_alloc(sw_language_count * sizeof *tables);
    size_t *notes = sw_alloc_zero(sw_language_count, sizeof *notes);
    size_t best = 0;
    for (size_t l = 0; l < sw_language_count; l++) {
        sw_note_table_fill(&tables[l], &sw_languages[l]);
    }
    sw_syntax *syntax = sw_syntax_parse(text);
    for (uint32_t n = 0; n < syntax->count; n++) {
        if (syntax->nodes[n].kind == SW_NODE_WORD) {
            sw_slice name = sw_word_decode(sw_syntax_slice(syntax, n)).name;
            for (size_t l = 0; l < sw_language_count && !is_drum(name); l++) {
                notes[l] += sw_note_table_find(&tables[l], name) != NULL;
            }
        }
    }
    for (size_t l = 1; l < sw_language_count; l++) {
        best = notes[l] > notes[best] ? l : best;
    }
    sw_syntax_free(syntax);
    free(notes);
    free(tables);
    return sw_languages[best].name;
}

sw_reading *sw_read_alone(const sw_text *text, char **error)
{
    sw_read_options options = {
        .overlays = &text, .overlay_count = 1, .alone = true, .language = likely_language(text)};
    return sw_read(text->path, &options, error);
}

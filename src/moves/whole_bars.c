/* Late changes of length: bars that go from all lines of a score, its parts included, or empty ones that come
 * in. */
#include <stdlib.h>
#include <string.h>

#include "checks/say.h"
#include "moves/linked.h"
#include "moves/places.h"

/* The moments of the bars, in the first score that has all of them: of the file itself, or, where that has
 * none, of a score that includes it. */
static bool find(const sw_move *move, const sw_bar_range *bars, sw_edit_request *request, sw_change *change,
                 char **error)
{
    const sw_score *longest = NULL;
    for (size_t i = 0; i < move->main_count; i++) {
        const sw_reading *reading = move->mains[i];
        for (size_t s = 0; s < reading->score_count; s++) {
            const sw_score *score = &reading->scores[s];
            if (sw_bar_range_moments(score, bars, &change->moment, &change->until)) {
                request->reading = reading;
                request->score = score;
                return true;
            }
            longest = longest == NULL || score->bar_count > longest->bar_count ? score : longest;
        }
        if (i == 0 && reading->score_count > 0) {
            break; /* a score was named: it is the one that is meant */
        }
    }
    *error = longest == NULL ? strdup("no score plays this file; nothing is changed")
                             : sw_places_say_no_bars(longest, bars);
    return false;
}

/* Scores with lines of their own that change along: nobody has named them. */
static void tell_others(sw_move *move)
{
    for (size_t i = 1; i < move->main_count; i++) {
        bool own = false;
        for (size_t k = 0; k < move->patch.count && !own; k++) {
            const sw_text *text = move->patch.files[k].text;
            own = sw_reads_file(move->mains[i], text) && !sw_reads_file(move->mains[0], text);
        }
        if (own) {
            sw_paths plain = {0};
            sw_paths_add(&plain, move->mains[i]->files[0].text->path);
            sw_buffer_format(&move->notes,
                             "%s: note: it shares music with the score, and its own lines change along\n",
                             plain.items[0]);
            sw_paths_free(&plain);
        }
    }
}

static bool run(sw_move *move, const sw_whole_bars_options *options, const sw_read_options *reading_options,
                char **error)
{
    sw_edit_request request = {.elsewhere = SW_ELSEWHERE_FOLLOW,
                               .count = 1,
                               .mains = move->mains,
                               .main_count = move->main_count,
                               .options = reading_options};
    bool come = options->count > 0;
    sw_change change = {.kind = come ? SW_CHANGE_INSERT_BARS : SW_CHANGE_DELETE_BARS,
                        .count = options->count};
    request.changes = &change;
    if (!find(move, &options->bars, &request, &change, error)) {
        return false;
    }
    char place[SW_SAY];
    sw_say_place(request.score, change.moment, place);
    if (!sw_edit_score(&request, &move->patch, &move->notes, error)) {
        return false;
    }
    if (come) {
        sw_buffer_format(&move->why, "%d empty bar%s before what was %s\n", options->count,
                         options->count == 1 ? "" : "s", place);
    } else {
        sw_buffer_format(&move->why, "bars %d to %d are gone\n", options->bars.first_bar,
                         options->bars.last_bar);
    }
    tell_others(move);
    return true;
}

sw_move *sw_move_whole_bars(const char *path, const sw_whole_bars_options *options,
                            const sw_read_options *reading_options, char **error)
{
    sw_move *move = sw_move_open(path, reading_options, error);
    return sw_move_close(move, move != NULL && run(move, options, reading_options, error));
}

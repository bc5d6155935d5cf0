#include "app/move_words.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "app/commands.h"
#include "app/input.h"
#include "app/inputs.h"
#include "stavewright/report.h"

/* "120" or "120-140" */
static bool parse_lines(const char *text, sw_places *places)
{
    char *end;
    unsigned long first = strtoul(text, &end, 10);
    unsigned long last = first;
    if (*end == '-') {
        last = strtoul(end + 1, &end, 10);
    }
    bool good = text[0] >= '0' && text[0] <= '9' && *end == '\0' && first > 0 && first <= last &&
                last < SW_TEXT_LIMIT;
    places->first_line = (uint32_t)first;
    places->last_line = (uint32_t)last;
    return good;
}

bool sw_move_words_take(sw_move_words *m, const char *option, const char *value, bool *shared)
{
    *shared = true;
    if (strcmp(option, "--staff") == 0) {
        m->places.staff = value;
    } else if (strcmp(option, "--bars") == 0) {
        if (!sw_bar_range_parse(value, &m->places.bars)) {
            sw_say_bad(m->command, "--bars takes bars such as 8-12 or 8:3-9:1 (bar:beat), not %s", value);
            return false;
        }
    } else if (strcmp(option, "--lines") == 0) {
        if (!parse_lines(value, &m->places)) {
            sw_say_bad(m->command, "--lines takes lines such as 120-140, not %s", value);
            return false;
        }
    } else if (strcmp(option, "--include") == 0) {
        if (m->reading.include_path_count == SW_MOST_FOLDERS) {
            sw_say_bad(m->command, "--include can be given %d times at most", SW_MOST_FOLDERS);
            return false;
        }
        m->folders[m->reading.include_path_count++] = value;
    } else if (strcmp(option, "--file-name") == 0) {
        m->file_name = value;
    } else if (strcmp(option, "--write") == 0) {
        m->write = true;
    } else if (strcmp(option, "--diff") == 0) {
        m->write = false;
    } else if (strcmp(option, "--why") == 0) {
        m->why = true;
    } else if (strcmp(option, "--everywhere") == 0) {
        m->elsewhere = SW_ELSEWHERE_FOLLOW;
    } else if (strcmp(option, "--copy") == 0) {
        m->elsewhere = SW_ELSEWHERE_COPY;
    } else {
        *shared = false;
    }
    return true;
}

bool sw_move_words_read(sw_move_words *m, sw_words *words,
                        bool (*own)(const char *option, const char *value, void *data), void *data)
{
    m->command = words->command;
    for (sw_word word = sw_words_next(words); word != SW_WORD_END; word = sw_words_next(words)) {
        if (word == SW_WORD_BAD) {
            return false;
        }
        if (word == SW_WORD_PATH) {
            if (m->path != NULL) {
                sw_say_bad(m->command, "one file at a time; not expected: %s", words->value);
                return false;
            }
            m->path = words->value;
            continue;
        }
        bool shared;
        if (!sw_move_words_take(m, words->option, words->value, &shared) ||
            (!shared && !own(words->option, words->value, data))) {
            return false;
        }
    }
    m->reading.include_path = m->folders;
    return sw_move_words_check(m);
}

bool sw_move_words_check(const sw_move_words *m)
{
    bool input = m->path != NULL && strcmp(m->path, "-") == 0;
    if (input && m->write) {
        sw_say_bad(m->command,
                   "standard input can't be written back: leave --write out, the result is printed");
        return false;
    }
    if (!input && m->file_name != NULL) {
        sw_say_bad(m->command, "--file-name says what standard input (-) is called; %s has a name",
                   m->path == NULL ? "a file" : m->path);
        return false;
    }
    return true;
}

/* The film's folders come behind those of the command line. */
static bool find_film(sw_move_words *m, const char *path)
{
    char *error = NULL;
    m->film = sw_films_of(&m->films, path, &error);
    if (m->film == NULL) {
        sw_say_bad(m->command, "%s", error);
        free(error);
        sw_films_free(&m->films);
        return false;
    }
    m->reading.include_path = m->folders;
    size_t count = sw_film_include_count(m->film);
    for (size_t i = 0; i < count && m->reading.include_path_count < SW_MOST_FOLDERS; i++) {
        m->folders[m->reading.include_path_count++] = sw_film_includes(m->film)[i];
    }
    return true;
}

const char *sw_move_words_open(sw_move_words *m)
{
    if (m->path == NULL || strcmp(m->path, "-") != 0) {
        m->one = sw_inputs_one(m->command, m->path);
        if (m->one != NULL && !find_film(m, m->one)) {
            free(m->one);
            m->one = NULL;
        }
        return m->one;
    }
    m->input = sw_read_input(m->command, m->file_name);
    if (m->input == NULL) {
        return NULL;
    }
    m->overlays[0] = m->input;
    m->reading.overlays = m->overlays;
    m->reading.overlay_count = 1;
    if (!find_film(m, m->input->path)) {
        fwrite(m->input->bytes, 1, m->input->length, stdout); /* an editor keeps what it has */
        sw_text_free(m->input);
        return NULL;
    }
    return m->input->path;
}

/* The whole text of standard input after the move. An editor puts what is printed in the place of what it
 * sent, so it gets its own text back when nothing can be done. */
static int print_result(sw_move_words *m, const sw_move *move)
{
    const sw_text *result = m->input;
    bool others = false;
    for (size_t i = 0; move != NULL && i < move->patch.count; i++) {
        const sw_file_patch *file = &move->patch.files[i];
        bool own = file->text == m->input || sw_text_same_file(file->text, m->input);
        result = own ? file->after : result;
        if (!own) {
            others = true;
            sw_say_bad(m->command, "the change reaches %s too: name the file with --write instead of -",
                       file->text->path);
        }
    }
    result = others ? m->input : result;
    fwrite(result->bytes, 1, result->length, stdout);
    return others ? SW_EXIT_BAD : SW_EXIT_CLEAN;
}

static int write_files(const sw_move_words *m, const sw_move *move)
{
    char *error = NULL;
    if (!sw_patch_write(&move->patch, &error)) {
        sw_say_bad(m->command, "%s", error);
        free(error);
        return SW_EXIT_BAD;
    }
    fprintf(stderr, "stavewright %s: %zu file%s changed\n", m->command, move->patch.count,
            move->patch.count == 1 ? "" : "s");
    return SW_EXIT_CLEAN;
}

static int show(sw_move_words *m, sw_move *move)
{
    sw_buffer text = {0};
    sw_report_findings(move->mains[0], &move->findings, &text);
    sw_buffer_append(&text, sw_buffer_slice(&move->notes));
    if (m->why) {
        sw_buffer_append(&text, sw_buffer_slice(&move->why));
    }
    fputs(sw_buffer_text(&text), stderr);
    sw_buffer_clear(&text);
    int status = SW_EXIT_CLEAN;
    if (m->input != NULL) {
        status = print_result(m, move);
    } else if (m->write && move->patch.count > 0) { /* with nothing to change the notes say why */
        status = write_files(m, move);
    } else {
        sw_patch_diff(&move->patch, &text);
        fwrite(sw_buffer_text(&text), 1, text.length, stdout);
        status = move->patch.count > 0 ? SW_EXIT_FINDINGS : SW_EXIT_CLEAN;
    }
    sw_buffer_free(&text);
    return status == SW_EXIT_CLEAN && move->findings.count > 0 ? SW_EXIT_FINDINGS : status;
}

int sw_move_words_show(sw_move_words *m, sw_move *move, char *error)
{
    int status = SW_EXIT_BAD;
    if (move == NULL) {
        sw_say_bad(m->command, "%s", error);
        free(error);
        if (m->input != NULL) {
            print_result(m, NULL);
        }
    } else {
        status = show(m, move);
    }
    sw_move_free(move);
    sw_text_free(m->input);
    free(m->one);
    sw_films_free(&m->films);
    return status;
}

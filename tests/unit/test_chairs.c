/* Texts over a staff that change who plays, or on what (terms of the trade, as scores have them). */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "players/chairs.h"
#include "players/doublings.h"

static const struct text_row {
    const char *present;
    const char *text;
    const char *says; /* what is read, as in print() */
} rows[] = {
    {"flute", "muta in Piccolo", "change piccolo"},
    {"flute", "2. muta in Picc.", "change piccolo 2"},
    {"flute", "I. II. mutano in Fl. picc.", "change piccolo 1 2"},
    {"flute", "(to Picc.)", "change piccolo"},
    {"flute", "take alto flute", "change alto-flute"},
    {"flute", "nimmt Altfl\xc3\xb6te", "change alto-flute"},
    {"flute", "prenez la petite fl\xc3\xbbte",
     ""}, /* the article is not understood, and nothing is guessed */
    {"piccolo", "prend Fl.", "change flute"},
    {"oboe", "change to English horn", "change english-horn"},
    {"oboe", "muta in C. ingl.", "change english-horn"},
    {"clarinet", "muta in A", "change clarinet-in-a"},
    {"clarinet", "muta in Bass Clarinet", "change bass-clarinet"},
    {"flute", "to Coda", ""},
    {"flute", "to the end", ""},
    {"flute", "to Violin", ""}, /* another family: no change of instrument */
    {"flute", "muta", ""},
    {"flute", "dolce", ""},
    {"flute", "", ""},
    {"flute", "1.", "only 1"},
    {"flute", "2\xc2\xba", "only 2"},
    {"horn", "I.", "only 1"},
    {"horn", "1. 3.", "only 1 3"},
    {"horn", "1. solo", "only 1"},
    {"horn", "Solo", "only 1"},
    {"horn", "a 2", "all"},
    {"horn", "a2", "all"},
    {"horn", "zu 2", "all"},
    {"horn", "tutti", "all"},
};

static void print(const sw_chair_text *said, sw_buffer *text)
{
    static const char *const kinds[] = {[SW_CHAIR_TEXT_NONE] = "",
                                        [SW_CHAIR_TEXT_CHANGE] = "change",
                                        [SW_CHAIR_TEXT_ONLY] = "only",
                                        [SW_CHAIR_TEXT_ALL] = "all"};
    sw_buffer_string(text, kinds[said->kind]);
    if (said->kind == SW_CHAIR_TEXT_CHANGE) {
        sw_buffer_format(text, " %s", said->instrument->id);
    }
    for (size_t i = 0; i < said->number_count && said->kind != SW_CHAIR_TEXT_NONE; i++) {
        sw_buffer_format(text, " %u", said->numbers[i]);
    }
}

static sw_film *film(void)
{
    char *error = NULL;
    sw_film *result = sw_film_load(NULL, (sw_slice){0}, NULL, 0, &error);
    assert_non_null(result);
    return result;
}

static void test_texts(void **state)
{
    (void)state;
    sw_film *f = film();
    const sw_instruments *instruments = sw_film_instruments(f);
    size_t wrong = 0;
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        const sw_instrument *present = sw_instruments_by_id(instruments, rows[i].present);
        assert_non_null(present);
        sw_chair_text said = sw_chair_text_read(instruments, present, rows[i].text);
        sw_buffer text = {0};
        print(&said, &text);
        if (strcmp(sw_buffer_text(&text), rows[i].says) != 0) {
            print_message("%s, \"%s\": wanted \"%s\", got \"%s\"\n", rows[i].present, rows[i].text,
                          rows[i].says, sw_buffer_text(&text));
            wrong++;
        }
        sw_buffer_free(&text);
    }
    assert_int_equal(wrong, 0);
    sw_film_free(f);
}

static void test_alike(void **state)
{
    (void)state;
    static const struct {
        const char *a;
        const char *b;
        bool alike;
    } pairs[] = {
        {"horn", "horn-in-d", true},          {"horn-in-c", "horn-in-bb-basso", true},
        {"trumpet", "trumpet-in-c", true},    {"trumpet", "piccolo-trumpet", false},
        {"clarinet", "clarinet-in-a", true},  {"clarinet", "clarinet-in-eb", false},
        {"clarinet", "bass-clarinet", false}, {"bass-clarinet", "bass-clarinet-bass-clef", true},
        {"flute", "piccolo", false},          {"percussion", "drum-kit", true},
        {"tuba", "wagner-tuba-tenor", false},
    };
    sw_film *f = film();
    for (size_t i = 0; i < sizeof pairs / sizeof pairs[0]; i++) {
        const sw_instrument *a = sw_instruments_by_id(sw_film_instruments(f), pairs[i].a);
        const sw_instrument *b = sw_instruments_by_id(sw_film_instruments(f), pairs[i].b);
        assert_true(a != NULL && b != NULL);
        assert_int_equal(sw_instruments_alike(a, b), pairs[i].alike);
        assert_int_equal(sw_instruments_alike(b, a), pairs[i].alike);
        assert_true(sw_doubling_between(a, b).seconds == sw_doubling_between(b, a).seconds);
    }
    sw_film_free(f);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_texts),
        cmocka_unit_test(test_alike),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}

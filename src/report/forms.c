#include "report/forms.h"

#include <stdlib.h>
#include <string.h>

static const sw_report_form forms[] = {
    {"text", "for people: a line a finding, with colours on a terminal", sw_print_lines},
    {"gcc", "the same lines without colours, as compilers print them", sw_print_lines},
    {"json", "for programs of your own", sw_print_json},
    {"sarif", "SARIF 2.1.0, for services that show findings beside a change", sw_print_sarif},
    {"github", "annotations of GitHub's workflows", sw_print_github},
};

enum { FORMS = sizeof forms / sizeof forms[0] };

size_t sw_report_form_count(void)
{
    return FORMS;
}

const sw_report_form *sw_report_form_get(size_t i)
{
    return &forms[i];
}

const sw_report_form *sw_report_form_find(const char *name)
{
    for (size_t i = 0; i < FORMS; i++) {
        if (strcmp(forms[i].name, name) == 0) {
            return &forms[i];
        }
    }
    return NULL;
}

/* ---- JSON ------------------------------------------------------------------------------------------------
 */

json_t *sw_json_text(const char *text)
{
    json_t *value = json_string(text);
    if (value != NULL) {
        return value;
    }
    sw_buffer clean = {0};
    while (*text != '\0') {
        size_t length =
            4; /* the longest character; the string before its end is never longer than the text */
        length = strnlen(text, length);
        json_t *character = NULL;
        while (length > 0 && (character = json_stringn(text, length)) == NULL) {
            length--;
        }
        json_decref(character);
        if (length > 0) {
            sw_buffer_append(&clean, (sw_slice){text, length});
        } else {
            sw_buffer_string(&clean, "\xEF\xBF\xBD");
            length = 1;
        }
        text += length;
    }
    value = json_string(sw_buffer_text(&clean));
    sw_buffer_free(&clean);
    return value;
}

void sw_json_print(json_t *value, sw_buffer *result)
{
    char *text = json_dumps(value, JSON_INDENT(2) | JSON_REAL_PRECISION(10));
    sw_buffer_string(result, text);
    sw_buffer_char(result, '\n');
    free(text);
    json_decref(value);
}

json_t *sw_json_fingerprint(const sw_check_result *checked, size_t i)
{
    size_t number = 1;
    for (size_t k = 0; k < i; k++) {
        number += strcmp(checked->items[k].fingerprint, checked->items[i].fingerprint) == 0;
    }
    return json_sprintf("%s:%zu", checked->items[i].fingerprint, number);
}

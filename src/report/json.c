/* Findings for programs, in a form of our own: README.md says which fields there are. */
#include "report/forms.h"

static json_t *finding(const sw_check_result *checked, size_t i)
{
    const sw_checked *item = &checked->items[i];
    const sw_finding *f = &item->finding;
    json_t *object = json_object();
    json_object_set_new(object, "file", sw_json_text(item->path));
    json_object_set_new(object, "line", json_integer(f->line));
    json_object_set_new(object, "column", json_integer(f->column));
    json_object_set_new(object, "end_line", json_integer(item->end_line));
    json_object_set_new(object, "end_column", json_integer(item->end_column));
    json_object_set_new(object, "severity", json_string(sw_severity_word(f->severity)));
    json_object_set_new(object, "rule", json_string(f->rule));
    json_object_set_new(object, "message", sw_json_text(f->message));
    json_object_set_new(object, "staff", item->staff == NULL ? json_null() : sw_json_text(item->staff));
    json_object_set_new(object, "bar", item->has_bar ? json_integer(item->bar) : json_null());
    json_object_set_new(object, "fingerprint", sw_json_fingerprint(checked, i));
    return object;
}

void sw_print_json(const sw_check_result *checked, bool complete, sw_buffer *result)
{
    json_t *findings = json_array();
    for (size_t i = 0; i < checked->count; i++) {
        json_array_append_new(findings, finding(checked, i));
    }
    json_t *object = json_object();
    json_object_set_new(object, "version", json_integer(1)); /* of this form */
    json_object_set_new(object, "complete", json_boolean(complete));
    json_object_set_new(object, "files", json_integer((json_int_t)checked->file_count));
    json_object_set_new(object, "scores", json_integer((json_int_t)checked->scores));
    json_object_set_new(object, "accepted", json_integer((json_int_t)checked->accepted));
    json_object_set_new(object, "findings", findings);
    sw_json_print(object, result);
}

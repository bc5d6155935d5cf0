#include "report/forms.h"

static const char *const severities[] = {[SW_NOTE] = "note", [SW_WARNING] = "warning", [SW_ERROR] = "error"};

const char *sw_severity_word(sw_severity severity)
{
    return severities[severity];
}

static void add_line(sw_buffer *result, const char *path, const sw_finding *f)
{
    sw_buffer_format(result, "%s:%u:%u: %s: %s [%s]\n", path, f->line, f->column, severities[f->severity],
                     f->message, f->rule);
}

void sw_report_findings(const sw_reading *reading, const sw_findings *findings, sw_buffer *result)
{
    for (size_t i = 0; i < findings->count; i++) {
        add_line(result, reading->files[findings->items[i].file].text->path, &findings->items[i]);
    }
}

void sw_print_lines(const sw_check_result *checked, bool complete, sw_buffer *result)
{
    (void)complete;
    for (size_t i = 0; i < checked->count; i++) {
        add_line(result, checked->items[i].path, &checked->items[i].finding);
    }
}

void sw_report_coloured(const sw_check_result *checked, sw_buffer *result)
{
    static const char *const colours[] = {
        [SW_NOTE] = "\033[36m", [SW_WARNING] = "\033[35m", [SW_ERROR] = "\033[1;31m"};
    for (size_t i = 0; i < checked->count; i++) {
        const sw_finding *f = &checked->items[i].finding;
        sw_buffer_format(result, "\033[1m%s:%u:%u:\033[0m %s%s:\033[0m %s \033[2m[%s]\033[0m\n",
                         checked->items[i].path, f->line, f->column, colours[f->severity],
                         severities[f->severity], f->message, f->rule);
    }
}

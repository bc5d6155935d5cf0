#include "stavewright/report.h"

static const char *const severities[] = {[SW_NOTE] = "note", [SW_WARNING] = "warning", [SW_ERROR] = "error"};

void sw_report_findings(const sw_reading *reading, const sw_findings *findings, sw_buffer *result)
{
    for (size_t i = 0; i < findings->count; i++) {
        const sw_finding *f = &findings->items[i];
        sw_buffer_format(result, "%s:%u:%u: %s: %s [%s]\n", reading->files[f->file].text->path, f->line,
                         f->column, severities[f->severity], f->message, f->rule);
    }
}

void sw_report_checked(const sw_check_result *checked, sw_buffer *result)
{
    for (size_t i = 0; i < checked->count; i++) {
        const sw_finding *f = &checked->items[i].finding;
        sw_buffer_format(result, "%s:%u:%u: %s: %s [%s]\n", checked->items[i].path, f->line, f->column,
                         severities[f->severity], f->message, f->rule);
    }
}

#include "stavewright/report.h"

void sw_report_findings(const sw_reading *reading, const sw_findings *findings, sw_buffer *result)
{
    static const char *const severities[] = {"note", "warning", "error"};
    for (size_t i = 0; i < findings->count; i++) {
        const sw_finding *f = &findings->items[i];
        sw_buffer_format(result, "%s:%u:%u: %s: %s [%s]\n", reading->files[f->file].text->path, f->line,
                         f->column, severities[f->severity], f->message, f->rule);
    }
}

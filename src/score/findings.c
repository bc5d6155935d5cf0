#include <stdarg.h>
#include <stdlib.h>

#include "stavewright/finding.h"

void sw_findings_add(sw_findings *findings, sw_severity severity, const char *rule, uint32_t file,
                     uint32_t start, uint32_t end, const char *format, ...)
{
    if (findings->arena == NULL) {
        findings->arena = sw_arena_new();
    }
    sw_buffer message = {0};
    va_list arguments;
    va_start(arguments, format);
    sw_buffer_vformat(&message, format, arguments);
    va_end(arguments);
    findings->items = sw_grow(findings->items, findings->count, &findings->capacity, sizeof *findings->items);
    findings->items[findings->count++] = (sw_finding){
        .severity = severity,
        .rule = rule,
        .file = file,
        .start = start,
        .end = end,
        .message = sw_arena_copy(findings->arena, sw_buffer_slice(&message)),
    };
    sw_buffer_free(&message);
}

void sw_findings_free(sw_findings *findings)
{
    free(findings->items);
    sw_arena_free(findings->arena);
    *findings = (sw_findings){0};
}

static size_t count_of(const sw_findings *findings, sw_severity severity)
{
    size_t count = 0;
    for (size_t i = 0; i < findings->count; i++) {
        count += findings->items[i].severity == severity;
    }
    return count;
}

size_t sw_findings_errors(const sw_findings *findings)
{
    return count_of(findings, SW_ERROR);
}

bool sw_findings_worse(const sw_findings *before, const sw_findings *after)
{
    return count_of(after, SW_ERROR) > count_of(before, SW_ERROR) ||
           count_of(after, SW_WARNING) > count_of(before, SW_WARNING);
}

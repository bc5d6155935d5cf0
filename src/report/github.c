/* Annotations as GitHub documents them in "Workflow commands for GitHub Actions":
 * `::error file=NAME,line=L,col=C,endColumn=E,title=T::MESSAGE`. */
#include <string.h>

#include "report/forms.h"

/* Percent signs and line ends are escaped everywhere, colons and commas in properties. */
static void add_escaped(sw_buffer *result, const char *text, bool property)
{
    for (; *text != '\0'; text++) {
        if (strchr("%\r\n", *text) != NULL || (property && strchr(":,", *text) != NULL)) {
            sw_buffer_format(result, "%%%02X", (unsigned char)*text);
        } else {
            sw_buffer_char(result, *text);
        }
    }
}

void sw_print_github(const sw_check_result *checked, bool complete, sw_buffer *result)
{
    (void)complete;
    static const char *const words[] = {[SW_NOTE] = "notice", [SW_WARNING] = "warning", [SW_ERROR] = "error"};
    for (size_t i = 0; i < checked->count; i++) {
        const sw_checked *item = &checked->items[i];
        const sw_finding *f = &item->finding;
        sw_buffer_format(result, "::%s file=", words[f->severity]);
        add_escaped(result, item->path, true);
        sw_buffer_format(result, ",line=%u", f->line);
        if (item->end_line == f->line) { /* columns count only then */
            sw_buffer_format(result, ",col=%u,endColumn=%u", f->column, item->end_column);
        } else {
            sw_buffer_format(result, ",endLine=%u", item->end_line);
        }
        sw_buffer_string(result, ",title=");
        add_escaped(result, f->rule, true);
        sw_buffer_string(result, "::");
        add_escaped(result, f->message, false);
        sw_buffer_char(result, '\n');
    }
}

#include <stdarg.h>

#include "source/internal.h"

bool sw_source_fail(char **error, const char *format, ...)
{
    sw_buffer sentence = {0};
    va_list arguments;
    va_start(arguments, format);
    sw_buffer_vformat(&sentence, format, arguments);
    va_end(arguments);
    *error = sentence.data;
    return false;
}

char *sw_source_format(const char *format, ...)
{
    sw_buffer text = {0};
    va_list arguments;
    va_start(arguments, format);
    sw_buffer_vformat(&text, format, arguments);
    va_end(arguments);
    return text.data;
}

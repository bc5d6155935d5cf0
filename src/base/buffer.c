#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "stavewright/base.h"

static void reserve(sw_buffer *buffer, size_t more)
{
    size_t needed = buffer->length + more + 1;
    if (needed <= buffer->capacity) {
        return;
    }
    size_t larger = buffer->capacity < 64 ? 64 : buffer->capacity * 2;
    buffer->capacity = larger > needed ? larger : needed;
    buffer->data = sw_realloc(buffer->data, buffer->capacity);
}

void sw_buffer_append(sw_buffer *buffer, sw_slice text)
{
    reserve(buffer, text.length);
    if (text.length > 0) {
        memcpy(buffer->data + buffer->length, text.data, text.length);
    }
    buffer->length += text.length;
    buffer->data[buffer->length] = '\0';
}

void sw_buffer_string(sw_buffer *buffer, const char *text)
{
    sw_buffer_append(buffer, sw_slice_of(text));
}

void sw_buffer_char(sw_buffer *buffer, char c)
{
    sw_buffer_append(buffer, (sw_slice){&c, 1});
}

void sw_buffer_format(sw_buffer *buffer, const char *format, ...)
{
    va_list arguments;
    va_start(arguments, format);
    sw_buffer_vformat(buffer, format, arguments);
    va_end(arguments);
}

void sw_buffer_vformat(sw_buffer *buffer, const char *format, va_list arguments)
{
    va_list again;
    va_copy(again, arguments);
    int length = vsnprintf(NULL, 0, format, arguments);
    if (length > 0) {
        reserve(buffer, (size_t)length);
        vsnprintf(buffer->data + buffer->length, (size_t)length + 1, format, again);
        buffer->length += (size_t)length;
    }
    va_end(again);
}

sw_slice sw_buffer_slice(const sw_buffer *buffer)
{
    return (sw_slice){sw_buffer_text(buffer), buffer->length};
}

const char *sw_buffer_text(const sw_buffer *buffer)
{
    return buffer->data == NULL ? "" : buffer->data;
}

void sw_buffer_clear(sw_buffer *buffer)
{
    buffer->length = 0;
    if (buffer->data != NULL) {
        buffer->data[0] = '\0';
    }
}

void sw_buffer_free(sw_buffer *buffer)
{
    free(buffer->data);
    *buffer = (sw_buffer){0};
}

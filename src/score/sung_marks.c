#include <stdlib.h>
#include <string.h>

#include "score/sung_marks.h"

/* A variable that holds a mark: begin = ( */
typedef struct mark_variable {
    uint32_t name;
    sw_mark_class class;
} mark_variable;

/* Grace notes that are slurred to the main note by their command. */
typedef struct slurred_grace {
    uint32_t file;
    uint32_t start;
    uint32_t end;
} slurred_grace;

struct sw_sung_marks {
    sw_reader *reader;
    mark_variable *marks;
    size_t mark_count;
    size_t mark_capacity;
    slurred_grace *graces; /* by place */
    size_t grace_count;
    size_t grace_capacity;
};

static sw_mark_class class_of(sw_slice text)
{
    while (text.length > 1 && strchr("-^_ ", text.data[0]) != NULL) {
        text = (sw_slice){text.data + 1, text.length - 1};
    }
    static const char signs[] = "()~[]";
    static const sw_mark_class classes[] = {SW_MARK_SLUR_START, SW_MARK_SLUR_END, SW_MARK_TIE,
                                            SW_MARK_BEAM_START, SW_MARK_BEAM_END};
    const char *sign = text.length == 1 ? strchr(signs, text.data[0]) : NULL;
    return sign == NULL ? SW_MARK_ARTICULATION : classes[sign - signs];
}

static void find_marks(sw_sung_marks *s)
{
    const sw_reading *reading = s->reader->reading;
    for (size_t i = 0; i < reading->variable_count; i++) {
        const sw_variable *v = &reading->variables[i];
        sw_mark_class class = class_of(sw_text_slice(reading->files[v->file].text, v->value_start, v->end));
        if (class != SW_MARK_ARTICULATION) {
            s->marks = sw_grow(s->marks, s->mark_count, &s->mark_capacity, sizeof *s->marks);
            s->marks[s->mark_count++] = (mark_variable){v->name, class};
        }
    }
}

static int compare_graces(const void *a, const void *b)
{
    const slurred_grace *x = a;
    const slurred_grace *y = b;
    return x->file != y->file ? (x->file < y->file ? -1 : 1) : x->start < y->start ? -1 : x->start > y->start;
}

static void find_graces(sw_sung_marks *s)
{
    const sw_reading *reading = s->reader->reading;
    for (uint32_t i = 0; i < reading->music_count; i++) {
        const sw_music *m = &reading->music[i];
        if (m->kind != SW_MUSIC_GRACE) {
            continue;
        }
        sw_slice text = sw_music_slice(reading, i);
        if (sw_slice_starts(text, "\\appoggiatura") || sw_slice_starts(text, "\\acciaccatura")) {
            s->graces = sw_grow(s->graces, s->grace_count, &s->grace_capacity, sizeof *s->graces);
            s->graces[s->grace_count++] = (slurred_grace){m->file, m->start, m->end};
        }
    }
    if (s->grace_count > 1) {
        qsort(s->graces, s->grace_count, sizeof *s->graces, compare_graces);
    }
}

sw_sung_marks *sw_sung_marks_new(sw_reader *reader, bool graces)
{
    sw_sung_marks *s = sw_alloc_zero(1, sizeof *s);
    s->reader = reader;
    find_marks(s);
    if (graces) {
        find_graces(s);
    }
    return s;
}

void sw_sung_marks_free(sw_sung_marks *s)
{
    free(s->marks);
    free(s->graces);
    free(s);
}

static sw_mark_class mark_class(const sw_sung_marks *s, uint32_t mark, sw_slice text)
{
    sw_mark_class class = sw_music_mark_class(s->reader->reading, mark);
    const char *slash = memchr(text.data, '\\', text.length);
    if (class != SW_MARK_ARTICULATION || slash == NULL) {
        return class;
    }
    sw_slice name = {slash + 1, (size_t)(text.data + text.length - slash - 1)};
    uint32_t number = s->mark_count > 0 ? sw_names_find(s->reader->reading->names, name) : UINT32_MAX;
    for (size_t i = s->mark_count; i > 0; i--) {
        if (s->marks[i - 1].name == number) {
            return s->marks[i - 1].class;
        }
    }
    return class;
}

static void add_slur(uint32_t *names, size_t *count, uint32_t name)
{
    if (*count < SW_MAX_SLURS) {
        names[(*count)++] = name;
    }
}

/* The marks among the children of a node. `\=name` stands as a mark of its own in front of a slur. */
void sw_sung_marks_read(const sw_sung_marks *s, uint32_t music, sw_turn_marks *t)
{
    uint32_t slur = 0;
    for (uint32_t c = sw_music_at(s->reader, music)->first; c != SW_NO_INDEX;
         c = sw_music_at(s->reader, c)->next) {
        if (sw_music_at(s->reader, c)->kind != SW_MUSIC_MARK) {
            continue;
        }
        sw_slice text = sw_music_slice(s->reader->reading, c);
        uint32_t name = slur;
        const char *equals = sw_slice_starts(text, "\\tweak") ? NULL : memchr(text.data, '=', text.length);
        slur = equals == NULL ? 0
                              : sw_names_add(s->reader->reading->names,
                                             (sw_slice){equals, (size_t)(text.data + text.length - equals)});
        switch (mark_class(s, c, text)) {
        case SW_MARK_SLUR_START:
            add_slur(t->slur_starts, &t->start_count, name);
            break;
        case SW_MARK_SLUR_END:
            add_slur(t->slur_ends, &t->end_count, name);
            break;
        case SW_MARK_BEAM_START:
            t->beam_start = true;
            break;
        case SW_MARK_BEAM_END:
            t->beam_end = true;
            break;
        case SW_MARK_TIE:
            t->tie = true;
            break;
        default:
            break;
        }
    }
}

bool sw_sung_marks_slurs_grace(const sw_sung_marks *s, const sw_event *event)
{
    const sw_music *m = sw_music_at(s->reader, event->music);
    size_t low = 0;
    size_t high = s->grace_count;
    slurred_grace place = {m->file, m->start, 0};
    while (low < high) {
        size_t middle = (low + high) / 2;
        if (compare_graces(&s->graces[middle], &place) <= 0) {
            low = middle + 1;
        } else {
            high = middle;
        }
    }
    return low > 0 && s->graces[low - 1].file == m->file && s->graces[low - 1].end >= m->end;
}

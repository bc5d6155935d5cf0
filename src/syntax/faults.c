/* Where a text with syntax errors is wrong.
 *
 * A parser notices a missing bracket only where the text ends, or where another bracket does not fit. So the
 * brackets are looked at by themselves: for each bracket that may be the culprit, how well would the rest fit
 * together without it? Brackets without partners weigh most; then what the writer's layout says: a closing
 * bracket on a line of its own stands below the line that opens its block, and an assignment at the beginning
 * of a line stands in no music. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "stavewright/syntax.h"
#include "syntax/brackets.h"

enum {
    NO_PARTNER = 1000, /* more than all the layout of a usual file can say */
    NEW_TOP_INSIDE = 3,
    MUSIC_OUTSIDE = 2,
    OTHER_INDENT = 2,
    END_WITHIN_LINE = 1,
    MOST_STEPS = 30000000 /* some tenths of a second */
};

typedef struct pairing {
    const sw_brackets *brackets;
    size_t *open; /* room for all */
    size_t depth;
} pairing;

static const sw_bracket *innermost(const pairing *p)
{
    return p->depth == 0 ? NULL : &p->brackets->items[p->open[p->depth - 1]];
}

/* True when a line may begin like this inside the open blocks. */
static bool may_stand_here(const pairing *p, const sw_bracket *top)
{
    const sw_bracket *inner = innermost(p);
    if (inner == NULL || (top->use == SW_BLOCK_OF_SCORES && inner->use == SW_BLOCK_OF_SCORES) ||
        (top->use == SW_BLOCK_OF_MUSIC && inner->kind != SW_PARENTHESIS)) {
        return true;
    }
    for (size_t i = 0; i < p->depth && top->use == SW_BLOCK_OF_SETTINGS; i++) {
        if (p->brackets->items[p->open[i]].use == SW_BLOCK_OF_SETTINGS) {
            return true;
        }
    }
    return false;
}

/* Takes the next bracket into account; returns how much it does not fit. */
static unsigned step(pairing *p, size_t index)
{
    const sw_bracket *b = &p->brackets->items[index];
    if (b->kind == SW_NEW_TOP) {
        return may_stand_here(p, b) ? 0 : NEW_TOP_INSIDE;
    }
    if (b->kind == SW_MUSIC_ITEM) {
        return p->depth > 0 ? 0 : MUSIC_OUTSIDE;
    }
    if (b->opens) {
        p->open[p->depth++] = index;
        return 0;
    }
    size_t partner = p->depth;
    while (partner > 0 && p->brackets->items[p->open[partner - 1]].kind != b->kind) {
        partner--;
    }
    if (partner == 0) {
        return NO_PARTNER;
    }
    const sw_bracket *opening = &p->brackets->items[p->open[partner - 1]];
    unsigned lost = (unsigned)(p->depth - partner) * NO_PARTNER;
    p->depth = partner - 1;
    if (b->line == opening->line) {
        return lost;
    }
    return lost + (!b->own_line ? END_WITHIN_LINE : b->indent != opening->indent ? OTHER_INDENT : 0);
}

/* How badly the brackets from `first` on fit together without the one at `without`; stops above `limit`. */
static uint64_t misfit(pairing *p, size_t first, size_t without, uint64_t limit)
{
    uint64_t sum = 0;
    p->depth = 0;
    for (size_t i = first; i < p->brackets->count && sum <= limit; i++) {
        sum += i == without ? 0 : step(p, i);
    }
    return sum + (uint64_t)p->depth * NO_PARTNER;
}

/* Where the brackets stop fitting together, their count if only some are open at the end; false: all fit.
 * *first: a place before it from where on to look for the culprit, the outer assignment before the last. */
static bool find_conflict(pairing *p, size_t *first, size_t *conflict)
{
    size_t last = 0;
    *first = 0;
    p->depth = 0;
    for (size_t i = 0; i < p->brackets->count; i++) {
        if (p->depth == 0 && p->brackets->items[i].kind == SW_NEW_TOP) {
            *first = last;
            last = i;
        }
        if (step(p, i) >= NO_PARTNER) {
            *conflict = i;
            return true;
        }
    }
    *conflict = p->brackets->count;
    return p->depth > 0;
}

/* The bracket without which the others fit together best; the count of brackets: all fit. */
static size_t find_culprit(const sw_brackets *brackets)
{
    pairing p = {.brackets = brackets, .open = sw_alloc((brackets->count + 1) * sizeof *p.open)};
    size_t culprit = brackets->count;
    size_t first;
    size_t conflict;
    if (find_conflict(&p, &first, &conflict)) {
        size_t end = conflict < brackets->count ? conflict + 1 : conflict;
        size_t tries = MOST_STEPS / (brackets->count - first) + 1;
        uint64_t best = UINT64_MAX;
        for (size_t i = end - first > tries ? end - tries : first; i < end; i++) {
            const sw_bracket *b = &brackets->items[i];
            if (b->kind >= SW_NEW_TOP) {
                continue;
            }
            uint64_t sum = misfit(&p, first, i, best);
            /* Of equals the first opening one (the outer block) or the last closing one (where it shows).
             * Scheme around a #{ that is not closed can't be closed either. */
            const sw_bracket *old = culprit < brackets->count ? &brackets->items[culprit] : b;
            bool again =
                sum == best && ((!b->opens && !old->opens) ||
                                (b->opens && b->kind == SW_HASH_BRACE && old->kind == SW_PARENTHESIS));
            if (sum < best || again) {
                best = sum;
                culprit = i;
            }
        }
    }
    free(p.open);
    return culprit;
}

static const char *const written[][2] = {[SW_BRACE] = {"}", "{"},
                                         [SW_DOUBLE_ANGLE] = {">>", "<<"},
                                         [SW_ANGLE] = {">", "<"},
                                         [SW_PARENTHESIS] = {")", "("},
                                         [SW_HASH_BRACE] = {"#}", "#{"}};

static void say_bracket(const sw_bracket *b, sw_syntax_fault *fault)
{
    const char *own = written[b->kind][b->opens];
    const char *partner = written[b->kind][!b->opens];
    fault->start = b->start;
    fault->end = b->start + (uint32_t)strlen(own);
    if (b->opens) {
        snprintf(fault->message, sizeof fault->message,
                 "this %s is not closed; add the %s that belongs to it", own, partner);
    } else {
        snprintf(fault->message, sizeof fault->message,
                 "this %s closes nothing; take it away, or add the %s that is missing before it", own,
                 partner);
    }
}

static void say_unfinished(const sw_text *text, uint32_t start, sw_syntax_fault *fault)
{
    char first = text->bytes[start];
    fault->start = start;
    fault->end = start + (first == '"' || first == '(' ? 1 : 2);
    snprintf(fault->message, sizeof fault->message, "this %s is not finished; add the %s where it ends",
             first == '"'   ? "string"
             : first == '(' ? "Scheme expression"
                            : "block comment",
             first == '"'   ? "\""
             : first == '(' ? ")"
             : first == '#' ? "|#"
                            : "%}");
}

/* What the parser says: from where on it could not go on. */
static void say_error(const sw_syntax *syntax, sw_syntax_fault *fault)
{
    const sw_text *text = syntax->text;
    const sw_node *n = &syntax->nodes[syntax->first_error];
    uint32_t end = n->start;
    while (end < n->end && text->bytes[end] != '\n' && text->bytes[end] != '\r' && end < n->start + 30) {
        end++;
    }
    while (end < n->end && ((unsigned char)text->bytes[end] & 0xC0) == 0x80) { /* no half characters */
        end++;
    }
    fault->start = n->start;
    fault->end = n->end;
    if (n->kind == SW_NODE_MISSING || end == n->start) {
        snprintf(fault->message, sizeof fault->message,
                 "something is missing here; complete what stands before");
    } else {
        snprintf(fault->message, sizeof fault->message,
                 "the source can't be read from here: \"%.*s\"%s; complete or correct it",
                 (int)(end - n->start), text->bytes + n->start, end < n->end ? "..." : "");
    }
}

bool sw_syntax_find_fault(const sw_syntax *syntax, sw_syntax_fault *fault)
{
    if (syntax->errors == 0) {
        return false;
    }
    sw_brackets brackets = sw_brackets_read(syntax->text);
    size_t culprit = brackets.unfinished == UINT32_MAX ? find_culprit(&brackets) : brackets.count;
    if (brackets.unfinished != UINT32_MAX) {
        say_unfinished(syntax->text, brackets.unfinished, fault);
    } else if (culprit < brackets.count) {
        say_bracket(&brackets.items[culprit], fault);
    } else {
        say_error(syntax, fault);
    }
    free(brackets.items);
    return true;
}

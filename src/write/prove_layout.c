/* The proof that a new layout changes nothing but white space, comments, and bar checks on bar lines. */
#include <stdio.h>
#include <stdlib.h>

#include "write/print.h"

static bool is_kept(const sw_syntax *syntax, uint32_t node)
{
    return syntax->nodes[node].kind != SW_NODE_BAR_CHECK && syntax->nodes[node].kind != SW_NODE_COMMENT;
}

static uint32_t next_kept(const sw_syntax *syntax, uint32_t node)
{
    while (node < syntax->count && !is_kept(syntax, node)) {
        node++;
    }
    return node;
}

/* Node by node the same, and the same text in each that has no nodes inside. */
static bool same_nodes(const sw_text *before, const sw_text *after)
{
    sw_syntax *a = sw_syntax_parse(before);
    sw_syntax *b = sw_syntax_parse(after);
    uint32_t i = next_kept(a, 0);
    uint32_t k = next_kept(b, 0);
    bool same = true;
    while (same && i < a->count && k < b->count) {
        bool leaf = a->nodes[i].next == i + 1 && b->nodes[k].next == k + 1;
        same = a->nodes[i].kind == b->nodes[k].kind &&
               (!leaf || sw_slice_equal(sw_syntax_slice(a, i), sw_syntax_slice(b, k)));
        i = next_kept(a, i + 1);
        k = next_kept(b, k + 1);
    }
    same = same && i == a->count && k == b->count;
    sw_syntax_free(a);
    sw_syntax_free(b);
    return same;
}

bool sw_prove_layout(sw_reading *const *mains, size_t main_count, const sw_patch *patch,
                     const sw_read_options *options, char **error)
{
    for (size_t i = 0; i < patch->count; i++) {
        if (!same_nodes(patch->files[i].text, patch->files[i].after)) {
            sw_buffer text = {0};
            sw_buffer_format(&text, "the layout of %s is refused: more than white space would change",
                             patch->files[i].text->path);
            *error = text.data;
            return false;
        }
    }
    const sw_reading *with_score = mains[0];
    for (size_t i = 0; i < main_count && with_score->score_count == 0; i++) {
        with_score = mains[i];
    }
    if (with_score->score_count == 0) {
        return true; /* nothing is heard */
    }
    sw_edit_request request = {.reading = with_score,
                               .score = with_score->scores,
                               .mains = mains,
                               .main_count = main_count,
                               .options = options};
    sw_draft *draft = sw_draft_new(&request);
    sw_draft_locate(draft);
    sw_word_mend mend;
    bool proved = sw_draft_prove(draft, patch, &mend, error);
    sw_draft_free(draft);
    return proved;
}

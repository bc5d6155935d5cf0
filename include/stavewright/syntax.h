/* The syntax of one file: a flat, typed copy of the tree-sitter tree.
 *
 * The nodes stand in one array in the order of the text (parents before their children), 16 bytes each; a
 * node's subtree is the run from the node itself to `next`. Walking siblings is adding; no pointers are
 * chased, and the tree of the parser library, several times larger, is freed at once. */
#ifndef STAVEWRIGHT_SYNTAX_H
#define STAVEWRIGHT_SYNTAX_H

#include <stdbool.h>
#include <stdint.h>

#include "stavewright/base.h"
#include "stavewright/source.h"

typedef enum sw_node_kind {
    SW_NODE_OTHER,   /* braces and other fixed characters are left out of the array; this kind never occurs in
                        it */
    SW_NODE_ERROR,   /* the parser skipped this to go on */
    SW_NODE_MISSING, /* the parser assumed something here that is not there; empty */
    SW_NODE_FILE,
    SW_NODE_WORD,
    SW_NODE_NUMBER,
    SW_NODE_STRING,
    SW_NODE_COMMAND,
    SW_NODE_POST_EVENT,
    SW_NODE_BAR_CHECK,
    SW_NODE_VOICE_SEPARATOR,
    SW_NODE_PUNCTUATION,
    SW_NODE_SCHEME,
    SW_NODE_EMBEDDED,
    SW_NODE_SCHEME_TEXT,
    SW_NODE_BLOCK,
    SW_NODE_SIMULTANEOUS,
    SW_NODE_CHORD,
    SW_NODE_CHORD_END,
    SW_NODE_LYRIC_BLOCK,
    SW_NODE_LYRIC_SIMULTANEOUS,
    SW_NODE_LYRIC_WORD,
    SW_NODE_CHORDNAME_BLOCK,
    SW_NODE_CHORDNAME_SIMULTANEOUS,
    SW_NODE_CHORD_MODIFIER,
    SW_NODE_FIGURE_BLOCK,
    SW_NODE_FIGURE_SIMULTANEOUS,
    SW_NODE_FIGURES,
    SW_NODE_MARKUP,
    SW_NODE_MARKUP_BLOCK,
    SW_NODE_MARKUP_WORD,
    SW_NODE_COMMENT,
    SW_NODE_KINDS
} sw_node_kind;

typedef struct sw_node {
    uint32_t start; /* bytes of the text: [start, end) */
    uint32_t end;
    uint32_t next; /* index of the first node behind this node's subtree */
    uint32_t kind; /* sw_node_kind */
} sw_node;

typedef struct sw_syntax {
    const sw_text *text; /* borrowed; must live as long as the syntax */
    sw_node *nodes;      /* nodes[0] is the file; comments stand among the other nodes */
    uint32_t count;
    uint32_t tree_nodes;  /* visible nodes of the parser's tree, fixed characters included */
    uint32_t errors;      /* nodes of kind ERROR or MISSING */
    uint32_t first_error; /* index of the first of them, when there are any */
    bool shared;          /* the nodes belong to another syntax */
} sw_syntax;

/* Parses a text. Never fails: what cannot be parsed is in nodes of kind ERROR. The caller frees the result.
 */
sw_syntax *sw_syntax_parse(const sw_text *text);
/* The same for a text that stands inside a block of this kind, by \include: the words of lyrics, chord names
 * and figures are others than those of notes. Any other kind is as for sw_syntax_parse. */
sw_syntax *sw_syntax_parse_inside(const sw_text *text, sw_node_kind block);
/* The same nodes for a text of the same bytes; both the text and the other syntax must live as long. */
sw_syntax *sw_syntax_share(const sw_syntax *other, const sw_text *text);
void sw_syntax_free(sw_syntax *syntax);
/* The bytes of a node. */
sw_slice sw_syntax_slice(const sw_syntax *syntax, uint32_t node);
/* The name of a kind as in the grammar: "word", "post_event". */
const char *sw_node_kind_name(sw_node_kind kind);

/* What is wrong with a text that has errors: the bracket, string or block comment without an end (the best
 * guess, from the layout), or else where the parser got stuck. */
typedef struct sw_syntax_fault {
    uint32_t start; /* bytes of the text */
    uint32_t end;
    char message[160]; /* what is wrong, and how to mend it */
} sw_syntax_fault;

/* Finds the first fault; false when the text has no errors. */
bool sw_syntax_find_fault(const sw_syntax *syntax, sw_syntax_fault *fault);

/* NULL for a text that may be LilyPond, however broken or incomplete; otherwise a sentence with the path that
 * says why it is none (to be freed with free()). */
char *sw_syntax_refusal(const sw_syntax *syntax);

/* Only parses with the parser library, without the flat copy, and returns the seconds it took: the measure
 * that `make bench` compares with. */
double sw_syntax_bare_parse(const sw_text *text);

#endif

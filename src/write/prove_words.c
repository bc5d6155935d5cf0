/* The part of the proof that listens to the singers. */
#include "write/edit_rows.h"

/* The next syllable that is set, from an index on: an underscore takes a note without being seen. Words go
 * with their bar. */
static size_t next_word(const sw_edit_proof *p, const sw_score *score, bool before, size_t i)
{
    while (i < score->syllable_count && ((score->syllables[i].flags & SW_SYLLABLE_EMPTY) != 0 ||
                                         (before && sw_prove_goes(p, score->syllables[i].onset)))) {
        i++;
    }
    return i;
}

/* What would bring a syllable back to its note: an underscore before it where it comes too early; one less
 * where it comes too late and has one before it. */
static void mend_word(const sw_edit_proof *p, const sw_score *before, size_t i, bool early)
{
    const sw_syllable *syllable = &before->syllables[i];
    if (!early && (i == 0 || (before->syllables[i - 1].flags & SW_SYLLABLE_EMPTY) == 0 ||
                   before->syllables[i - 1].line != syllable->line)) {
        return;
    }
    const sw_music *m = &p->before->music[early ? syllable->music : before->syllables[i - 1].music];
    const sw_text *text = p->before->files[m->file].text;
    *p->mend = (sw_word_mend){text, m->start, early ? m->start : m->end, early ? "_ " : ""};
    while (!early && p->mend->end < text->length && text->bytes[p->mend->end] == ' ') {
        p->mend->end++;
    }
}

/* Syllables are sung on the notes that are there: where one comes or goes, all that follow would move. */
bool sw_prove_words(const sw_edit_proof *p, const sw_score *before, const sw_score *after)
{
    size_t i = next_word(p, before, true, 0);
    size_t k = next_word(p, after, false, 0);
    while (i < before->syllable_count && k < after->syllable_count &&
           sw_rational_equal(sw_prove_moved(p, before->syllables[i].onset), after->syllables[k].onset) &&
           before->syllables[i].line == after->syllables[k].line &&
           sw_prove_same_name(p, p->before->music[before->syllables[i].music].name,
                              p->after->music[after->syllables[k].music].name)) {
        i = next_word(p, before, true, i + 1);
        k = next_word(p, after, false, k + 1);
    }
    if (i == before->syllable_count && k == after->syllable_count) {
        return true;
    }
    bool both = i < before->syllable_count && k < after->syllable_count &&
                before->syllables[i].line == after->syllables[k].line;
    int order =
        both ? sw_rational_compare(after->syllables[k].onset, sw_prove_moved(p, before->syllables[i].onset))
             : 1;
    if (i < before->syllable_count &&
        order != 0) { /* without a note at the end of its line it is late, too */
        mend_word(p, before, i, order < 0);
    }
    const sw_score *score = i < before->syllable_count ? before : after;
    const sw_reading *reading = i < before->syllable_count ? p->before : p->after;
    const sw_syllable *syllable = &score->syllables[i < before->syllable_count ? i : k];
    uint32_t bar = sw_score_bar_at(score, syllable->onset);
    const char *what = sw_arena_format(
        p->arena, "the words would be sung on other notes, from \"%s\" in bar %d on; mend the lyrics first",
        sw_reading_name(reading, reading->music[syllable->music].name),
        bar == SW_NO_INDEX ? 0 : score->bars[bar].number);
    return sw_prove_refuse(p, what);
}

/* Edits in every frame: what the text becomes. Each result has been proved by reading it back; here is what
 * it looks like. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

#include "stavewright/edit.h"

/* A source in memory with the change that is wanted. */
typedef struct edit {
    sw_reading *reading;
    const sw_score *score;
    sw_text *text;
    sw_read_options options;
    const sw_text *overlays[1];
} edit;

static void open_edit(edit *e, const char *source)
{
    *e = (edit){0};
    e->text = sw_text_from_bytes("/dev/null/memory.ly", sw_slice_of(source));
    e->overlays[0] = e->text;
    e->options = (sw_read_options){.overlays = e->overlays, .overlay_count = 1};
    char *error = NULL;
    e->reading = sw_read("/dev/null/memory.ly", &e->options, &error);
    if (e->reading == NULL) {
        fail_msg("%s", error);
    }
    assert_true(e->reading->score_count > 0);
    e->score = &e->reading->scores[0];
}

static void close_edit(edit *e)
{
    sw_reading_free(e->reading);
    sw_text_free(e->text);
}

/* The source after changes, or "refused: why". */
static char *apply(edit *e, const sw_change *changes, size_t count, sw_elsewhere elsewhere)
{
    sw_reading *mains[] = {e->reading};
    sw_edit_request request = {.reading = e->reading,
                               .score = e->score,
                               .changes = changes,
                               .count = count,
                               .elsewhere = elsewhere,
                               .mains = mains,
                               .main_count = 1,
                               .options = &e->options};
    sw_patch patch = {0};
    sw_buffer notes = {0};
    char *error = NULL;
    sw_buffer result = {0};
    if (!sw_edit_score(&request, &patch, &notes, &error)) {
        sw_buffer_format(&result, "refused: %s", error);
        free(error);
    } else if (patch.count == 0) {
        sw_buffer_string(&result, "unchanged");
    } else {
        sw_buffer_append(&result, (sw_slice){patch.files[0].after->bytes, patch.files[0].after->length});
    }
    sw_patch_free(&patch);
    sw_buffer_free(&notes);
    return result.data;
}

/* One change of the n-th event (from 0) of the first score. */
#define CHECK(source, expected, ...)                                                                         \
    do {                                                                                                     \
        edit e;                                                                                              \
        open_edit(&e, source);                                                                               \
        sw_change change = {__VA_ARGS__};                                                                    \
        char *result = apply(&e, &change, 1, SW_ELSEWHERE_REFUSE);                                           \
        assert_string_equal(result, expected);                                                               \
        free(result);                                                                                        \
        close_edit(&e);                                                                                      \
    } while (0)

static const sw_pitch d1 = {1, 0, 0};      /* d' */
static const sw_pitch f_sharp = {3, 0, 2}; /* fis' */
static const sw_pitch high_c = {0, 2, 0};  /* c''' */
static const sw_pitch e_flat = {2, 0, -2}; /* es' */

static void test_pitch(void **state)
{
    (void)state;
    CHECK("{ c'4-. e' g' }", "{ d'4-. e' g' }", .kind = SW_CHANGE_PITCH, .event = 0, .pitch = d1);
    CHECK("\\relative { c'4 e g }", "\\relative { c'''4 e,, g }", .kind = SW_CHANGE_PITCH, .event = 0,
          .pitch = high_c);
    CHECK("\\relative c' { <c e>4 f g }", "\\relative c' { <d e>4 f g }", .kind = SW_CHANGE_PITCH, .event = 0,
          .pitch = d1);
    CHECK("\\relative c' { c4 <e g>  a }", "\\relative c' { c4 <e c''>  a }", .kind = SW_CHANGE_PITCH,
          .event = 2, .pitch = high_c);
    CHECK("\\fixed c'' { c4 e }", "\\fixed c'' { c'4 e }", .kind = SW_CHANGE_PITCH, .event = 0,
          .pitch = high_c);
    CHECK("\\transpose c d { c'4 e' }", "\\transpose c d { e'4 e' }", .kind = SW_CHANGE_PITCH, .event = 0,
          .pitch = f_sharp);
    CHECK("\\language \"english\" { c'4 e' }", "\\language \"english\" { ef'4 e' }", .kind = SW_CHANGE_PITCH,
          .event = 0, .pitch = e_flat);
    CHECK("{ c'2~ c'4 r }", "{ d'2~ d'4 r }", .kind = SW_CHANGE_PITCH, .event = 1, .pitch = d1);
    CHECK("{ <c' e'>4 q q }", "{ <d' e'>4 <c' e'> q }", .kind = SW_CHANGE_PITCH, .event = 0, .pitch = d1);
    CHECK("{ c'4 8 8 }", "{ d'4 c'8 8 }", .kind = SW_CHANGE_PITCH, .event = 0, .pitch = d1);
    CHECK("\\relative { c'4 \\octaveCheck c' e g }", "\\relative { c''4 \\octaveCheck c'' e, g }",
          .kind = SW_CHANGE_PITCH, .event = 0, .pitch = {0, 1, 0});
    CHECK("{ <c'-1>4 < e' g' > }", "{ <d'-1>4 < e' g' > }", .kind = SW_CHANGE_PITCH, .event = 0, .pitch = d1);
    CHECK("{ <c'-1>4 < e' g' > }", "{ <c'-1>4 < e' c''' > }", .kind = SW_CHANGE_PITCH, .event = 2,
          .pitch = high_c);
    CHECK("{ \\tweak color #red c'4 e' }", "{ \\tweak color #red d'4 e' }", .kind = SW_CHANGE_PITCH,
          .event = 0, .pitch = d1);
    CHECK("{ c'4 }", "unchanged", .kind = SW_CHANGE_PITCH, .event = 0, .pitch = {0, 0, 0});
}

static void test_time(void **state)
{
    (void)state;
    CHECK("{ c'1 | d' }", "{ c'2.~ c'8 r | d'1 }", .kind = SW_CHANGE_END, .event = 0, .moment = {7, 8});
    CHECK("{ c'1-> ( | d') }", "{ c'2.-> ( r4 | d'1) }", .kind = SW_CHANGE_END, .event = 0, .moment = {3, 4});
    CHECK("{ c'4 r d'2 }", "{ c'2 d'2 }", .kind = SW_CHANGE_END, .event = 0, .moment = {1, 2});
    CHECK("{ c'4 r8 e' d'2 }", "{ c'4. e'8 d'2 }", .kind = SW_CHANGE_END, .event = 0, .moment = {3, 8});
    CHECK("{ r4 c' r2 }", "{ r4 c'~ c' r }", .kind = SW_CHANGE_END, .event = 1, .moment = {3, 4});
    CHECK("{ c'2. r4 | r1 }", "{ c'1~ | c'4 r r2 }", .kind = SW_CHANGE_END, .event = 0, .moment = {5, 4});
    CHECK("{ \\tuplet 3/2 { c'4 d' e' } f'2 }", "{ \\tuplet 3/2 { c'8 r d'4 e' } f'2 }",
          .kind = SW_CHANGE_END, .event = 0, .moment = {1, 12});
    CHECK("{ \\time 6/8 c'2. }", "{ \\time 6/8 c'4.~ c'4 r8 }", .kind = SW_CHANGE_END, .event = 0,
          .moment = {5, 8});
    CHECK("{ c'2~ c'2 }", "{ c'2 r2 }", .kind = SW_CHANGE_END, .event = 0, .moment = {1, 2});
    CHECK("{ c'2 d' }", "{ c'4~ c' d'2 }", .kind = SW_CHANGE_TIE, .event = 0, .moment = {1, 4});
    CHECK("{ c'2-> ( d') }", "{ c'4-> ( c' d'2) }", .kind = SW_CHANGE_SPLIT, .event = 0, .moment = {1, 4});
    CHECK("{ \\repeat unfold 2 c'2 }",
          "refused: /dev/null/memory.ly:1:20: this is written once and heard in several places (also in bar "
          "1 of \"staff 1\"); say "
          "whether all of them shall change (--everywhere) or this one, in a copy (--copy)",
          .kind = SW_CHANGE_SPLIT, .event = 0, .moment = {1, 4});
    CHECK("{ r4 \\grace d'8 e'4 f'2 }",
          "refused: /dev/null/memory.ly:1:13: a grace note takes no time of its own, so its length stays",
          .kind = SW_CHANGE_SPLIT, .event = 1, .moment = {1, 4});
}

static void test_chords(void **state)
{
    (void)state;
    CHECK("{ c'4-. e' }", "{ <c' d'>4-. e' }", .kind = SW_CHANGE_ADD_NOTE, .event = 0, .pitch = d1);
    CHECK("\\relative { <c' e g>4 g }", "\\relative { <e' g>4 g, }", .kind = SW_CHANGE_REMOVE_NOTE,
          .event = 0);
    CHECK("\\relative { <c'-3 e>4 g }", "\\relative { c'4-3 g }", .kind = SW_CHANGE_REMOVE_NOTE, .event = 1);
    CHECK("\\relative { c'4 ( e g ) c }", "\\relative { r4 e'( g ) c }", .kind = SW_CHANGE_SILENCE,
          .event = 0);
    CHECK("\\relative { c'4 c'( e) c }", "\\relative { c'4 r e' c }", .kind = SW_CHANGE_SILENCE, .event = 1);
    CHECK("{ c'1 d'1 }", "{ R1 d'1 }", .kind = SW_CHANGE_SILENCE, .event = 0);
    CHECK("{ <a><b>}", "{ r<b>}", .kind = SW_CHANGE_SILENCE, .event = 0);
    CHECK("\\drums { bd4 sn hh bd }", "\\drums { bd4 r hh bd }", .kind = SW_CHANGE_SILENCE, .event = 1);
    CHECK("{ << c'1 \\\\ e'1 >> }", "{ << { c'2.~ c'8 r8 } \\\\ e'1 >> }", .kind = SW_CHANGE_END, .event = 0,
          .moment = {7, 8});
}

static void test_rests(void **state)
{
    (void)state;
    sw_pitch notes[] = {{0, 0, 0}, {2, 0, 0}};
    CHECK("{ r1 }", "{ r4 <c' e'>2. }", .kind = SW_CHANGE_FILL, .event = 0, .moment = {1, 4}, .until = {1, 1},
          .pitches = notes, .pitch_count = 2);
    CHECK("\\relative { g'4 r2. | g1 }", "\\relative { g'4 c,2. | g'1 }", .kind = SW_CHANGE_FILL, .event = 1,
          .moment = {1, 4}, .until = {1, 1}, .pitches = notes, .pitch_count = 1);
    CHECK("{ c'1 | R1*4 }", "{ c'1 | R1 | r2 c' | R1*2 }", .kind = SW_CHANGE_FILL, .event = 1,
          .moment = {5, 2}, .until = {3, 1}, .pitches = notes, .pitch_count = 1);
    CHECK("{ R1*4 }", "{ R1 r2 c' R1*2 }", .kind = SW_CHANGE_FILL, .event = 0, .moment = {3, 2},
          .until = {2, 1}, .pitches = notes, .pitch_count = 1);
}

static void test_marks(void **state)
{
    (void)state;
    CHECK("{ c'4 e' }", "{ c'4\\p e' }", .kind = SW_CHANGE_ADD_MARK, .event = 0, .text = "\\p");
    CHECK("{ c'4\\p( e') | g'1 }", "{ c'4\\p( e') \\breathe | g'1 }", .kind = SW_CHANGE_ADD_MARK, .event = 1,
          .text = "\\breathe");
    CHECK("{ \\repeat tremolo 4 c'16 c'2. }", "{ \\repeat tremolo 4 c'16 c'2. \\breathe }",
          .kind = SW_CHANGE_ADD_MARK, .event = 1, .text = "\\breathe");
    CHECK("{ << c'1 \\\\ e'1 >> d'1 }", "{ << { c'1 \\breathe } \\\\ e'1 >> d'1 }",
          .kind = SW_CHANGE_ADD_MARK, .event = 0, .text = "\\breathe");
    CHECK("{ c'4 -. \\p e' }", "unchanged", .kind = SW_CHANGE_ADD_MARK, .event = 0, .text = "\\p");
}

static void test_runs(void **state)
{
    (void)state;
    CHECK("{ c'4 d' e' f' }", "{ c'4 \\magnifyMusic 0.7 { d' e' } f' }", .kind = SW_CHANGE_WRAP, .event = 1,
          .last = 2, .text = "\\magnifyMusic 0.7");
    CHECK("{ c'4 \\magnifyMusic 0.7 { d' e' } f' }", "{ c'4 d' e' f' }", .kind = SW_CHANGE_UNWRAP, .event = 1,
          .mark = 5, .text = "\\magnifyMusic 0.7");
    CHECK("m = { c'4 d' e'8 f' }\n\\score { \\m }\n",
          "motif = {\n  d'4 e'8\n}\n\nm = { c'4 \\motif f'8 }\n\\score { \\m }\n",
          .kind = SW_CHANGE_NEW_VARIABLE, .event = 1, .last = 2, .text = "motif");
    sw_pitch low[] = {{0, -1, 0}};
    CHECK(
        "\\new Staff \\relative { c'4 d e f }",
        "\\new Staff \\relative { c'4 << { \\voiceOne d e } \\new Voice { \\voiceTwo c,4~ c } >> \\oneVoice "
        "f' }",
        .kind = SW_CHANGE_NEW_VOICE, .event = 1, .last = 2, .moment = {1, 4}, .until = {3, 4}, .pitches = low,
        .pitch_count = 1);
    const uint32_t lower[] = {0, 2, 5};
    CHECK("\\new Staff { <c' e'>8-.( <d' f'>4\\p r8 <e' g'>2)~ | <e' g'>1 }",
          "\\new Staff { << { \\voiceOne <c' e'>8-.( <d' f'>4\\p r8 <e' g'>2)~ } \\new Voice { \\voiceTwo "
          "c'8-.( "
          "d'4 s8 e'2) } >> \\oneVoice | <e' g'>1 }",
          .kind = SW_CHANGE_NEW_VOICE, .event = 0, .last = 5, .notes = lower, .note_count = 3);
    CHECK("\\new Staff { c'4 \\times 2/3 { r8 <d' f'> e' } <c' e'>2 }",
          "\\new Staff { c'4 << { \\voiceOne \\times 2/3 { r8 <d' f'> e' } <c' e'>2 } \\new Voice { "
          "\\voiceTwo \\times 2/3 { s8 d' e' } c'2 } >> \\oneVoice }",
          .kind = SW_CHANGE_NEW_VOICE, .event = 1, .last = 5, .notes = (const uint32_t[]){2, 4, 5},
          .note_count = 3);
    CHECK("<< \\new Staff { \\clef bass c1 }\n   \\new Staff { R1 } >>",
          "<< \\new Staff { \\clef bass R1 }\n   \\new Staff { c1 } >>", .kind = SW_CHANGE_MOVE_RUN,
          .event = 0, .last = 0, .voice = 1);
    CHECK("<< \\new Staff { \\tuplet 3/2 { c'4( d' e') } f'2 }\n   \\new Staff { R1 } >>",
          "<< \\new Staff { \\tuplet 3/2 { c'4( d' e') } f'2 }\n"
          "   \\new Staff { \\tuplet 3/2 { c'4( d' e') } f'2 } >>",
          .kind = SW_CHANGE_COPY_RUN, .event = 0, .last = 3, .voice = 1);
    CHECK("<< \\new Staff { c'2( d') }\n   \\new Staff { R1 } >>",
          "<< \\new Staff { c'2( d') }\n   \\new Staff { g'2( a') } >>", .kind = SW_CHANGE_COPY_RUN,
          .event = 0, .last = 1, .voice = 1, .pitch = {4, 0, 0});
    /* slurs and hairpins that the edges of the run cut */
    CHECK("<< \\new Staff { c'4( d' e' f') }\n   \\new Staff { R1 } >>",
          "<< \\new Staff { c'4( d' e' f') }\n   \\new Staff { r4 d'( e') r } >>", .kind = SW_CHANGE_COPY_RUN,
          .event = 1, .last = 2, .voice = 1);
    CHECK("<< \\new Staff { c'4\\< d' e' f'\\! }\n   \\new Staff { R1 } >>",
          "<< \\new Staff { r2 r4 f' }\n   \\new Staff { c'4\\< d' e'\\! r } >>", .kind = SW_CHANGE_MOVE_RUN,
          .event = 0, .last = 2, .voice = 1);
    CHECK("<< \\new Staff { c'4\\< d' e'\\! f' }\n   \\new Staff { R1 } >>",
          "<< \\new Staff { c'4\\< r\\! r f' }\n   \\new Staff { r4 d' e' r } >>", .kind = SW_CHANGE_MOVE_RUN,
          .event = 1, .last = 2, .voice = 1);
    CHECK("<< \\new Staff { c'1~ c'1 d'1 }\n   \\new Staff { R1*3 } >>",
          "<< \\new Staff { c'1 R1 d'1 }\n   \\new Staff { R1 c'1 R1 } >>", .kind = SW_CHANGE_MOVE_RUN,
          .event = 1, .last = 1, .voice = 1);
    CHECK("<< \\new Staff { c'1~ c'1~ c'1 }\n   \\new Staff { R1*3 } >>",
          "<< \\new Staff { c'1 R1 c'1 }\n   \\new Staff { R1 c'1 R1 } >>", .kind = SW_CHANGE_MOVE_RUN,
          .event = 1, .last = 1, .voice = 1);
    CHECK("<< \\new Staff { c'2~ c'2~ c'2 d'2 }\n   \\new Staff { R1*2 } >>",
          "<< \\new Staff { r2 c'2~ c'2 d'2 }\n   \\new Staff { c'2 r2 R1 } >>", .kind = SW_CHANGE_MOVE_RUN,
          .event = 0, .last = 0, .voice = 1);
    CHECK("<<\n  \\new Staff { \\clef bass c1 d }\n>>",
          "<<\n  \\new Staff { \\clef bass c1 d }\n  \\new Staff = \"Tuba\" \\with { instrumentName = "
          "\"Tuba\" } { \\clef bass R1*2 }\n>>",
          .kind = SW_CHANGE_NEW_STAFF, .event = 0, .text = "Tuba");
}

/* Bars come in, in each line as its neighbours are written. */
/* The first node of a kind. */
static uint32_t find_kind(const edit *e, sw_music_kind kind)
{
    uint32_t music = 0;
    while (e->reading->music[music].kind != kind) {
        music++;
    }
    return music;
}

static void test_unite(void **state)
{
    (void)state;
    CHECK("\\new Staff { d'4 << { e'4-. r } \\\\ { c'4-. s } >> f' g' }",
          "\\new Staff { d'4 <c' e'>4-. r f' g' }", .kind = SW_CHANGE_UNITE, .event = 3,
          .mark = find_kind(&e, SW_MUSIC_SIMULTANEOUS));
    CHECK("\\new Staff \\relative { d'4 << { \\voiceOne c''2( d) } \\new Voice { \\voiceTwo e,2( f) } >> "
          "\\oneVoice g4 }",
          "\\new Staff \\relative { d'4 <e' c'>2( <f d'>) g4 }", .kind = SW_CHANGE_UNITE, .event = 1,
          .mark = find_kind(&e, SW_MUSIC_SIMULTANEOUS));
    /* what follows counted from the second voice, and repeats a chord */
    CHECK("\\new Staff \\relative { << { c''4 d } \\\\ { c, d } >> e <e g> q }",
          "\\new Staff \\relative { <c' c'>4 <d d'> e <e g> q }", .kind = SW_CHANGE_UNITE, .event = 0,
          .mark = find_kind(&e, SW_MUSIC_SIMULTANEOUS));
    CHECK("\\new Staff { << { e'4 f' } \\\\ { c'2 } >> }",
          "refused: /dev/null/memory.ly:1:19: the two voices have different rhythms here",
          .kind = SW_CHANGE_UNITE, .event = 0, .mark = find_kind(&e, SW_MUSIC_SIMULTANEOUS));
    CHECK("\\new Staff { << { e'4 f' } \\\\ { c'4 d' d' } >> }",
          "refused: /dev/null/memory.ly:1:14: the two voices are not equally long", .kind = SW_CHANGE_UNITE,
          .event = 0, .mark = find_kind(&e, SW_MUSIC_SIMULTANEOUS));
    CHECK("\\new Staff { << { e'4 f' } \\\\ { c'4 d'-. } >> }",
          "refused: /dev/null/memory.ly:1:23: the two voices are not marked alike here",
          .kind = SW_CHANGE_UNITE, .event = 0, .mark = find_kind(&e, SW_MUSIC_SIMULTANEOUS));
    CHECK("\\new Staff { << { e'4 f' } \\\\ { c'4 \\clef bass d' } >> }",
          "refused: /dev/null/memory.ly:1:14: these are not two voices of nothing but notes and rests",
          .kind = SW_CHANGE_UNITE, .event = 0, .mark = find_kind(&e, SW_MUSIC_SIMULTANEOUS));
}

static void test_insert_bars(void **state)
{
    (void)state;
    CHECK("{ c'1 d' }", "{ c'1 R1 d' }", .kind = SW_CHANGE_INSERT_BARS, .moment = {1, 1}, .count = 1);
    CHECK("{ c'1 | d'2 e' }", "{ c'1 | R1*2 | d'2 e' }", .kind = SW_CHANGE_INSERT_BARS, .moment = {1, 1},
          .count = 2);
    CHECK("{ c'2 d' | e' f' }", "{ c'2 d' | R1 | e'2 f' }", .kind = SW_CHANGE_INSERT_BARS, .moment = {1, 1},
          .count = 1);
    CHECK("{\n  c'1 |\n  d'1 |\n}", "{\n  c'1 |\n  R1 |\n  R1 |\n  d'1 |\n}", .kind = SW_CHANGE_INSERT_BARS,
          .moment = {1, 1}, .count = 2);
    CHECK("{\n  c'1 |\n  d'1\n}", "{\n  c'1 |\n  d'1 |\n  R1\n}", .kind = SW_CHANGE_INSERT_BARS,
          .moment = {2, 1}, .count = 1);
    CHECK("{\n  \\time 3/4 c'2. | % 1\n  d'2. | % 2\n  e'2. | % 3\n}",
          "{\n  \\time 3/4 c'2. | % 1\n  R2. | % 2\n  R2. | % 3\n  d'2. | % 4\n  e'2. | % 5\n}",
          .kind = SW_CHANGE_INSERT_BARS, .moment = {3, 4}, .count = 2);
    CHECK("<< \\new Staff { c'1 | d' } \\new Staff { R1*2 } \\new Dynamics { s1\\p s1\\f } >>",
          "<< \\new Staff { c'1 | R1*3 | d'1 } \\new Staff { R1*5 } \\new Dynamics { s1\\p s1*3 s1\\f } >>",
          .kind = SW_CHANGE_INSERT_BARS, .moment = {1, 1}, .count = 3);
    CHECK(
        "all = { \\time 4/4 s1*2 \\time 2/4 s2 }\none = { c'1 | d' | e'2 }\n<< \\new Staff << \\all \\one >> "
        "\\new Staff << \\all { R1*2 f'2 } >> >>",
        "all = { \\time 4/4 s1*3 \\time 2/4 s2 }\none = { c'1 | d' | R1 | e'2 }\n<< \\new Staff << \\all "
        "\\one "
        ">> \\new Staff << \\all { R1*3 f'2 } >> >>",
        .kind = SW_CHANGE_INSERT_BARS, .moment = {2, 1}, .count = 1);
    CHECK("<< \\new Voice = v { c'2 d' | e'1 } \\new Lyrics \\lyricsto v { a b c } >>",
          "<< \\new Voice = v { c'2 d' | R1 | e'1 } \\new Lyrics \\lyricsto v { a b c } >>",
          .kind = SW_CHANGE_INSERT_BARS, .moment = {1, 1}, .count = 1);
    CHECK("{ c'1~ | c' }", "{ c'1 | R1 | c' }", .kind = SW_CHANGE_INSERT_BARS, .moment = {1, 1}, .count = 1);
    CHECK("{ c'1*2 | c' }",
          "refused: /dev/null/memory.ly:1:3: this goes on over the bar line; divide it there first",
          .kind = SW_CHANGE_INSERT_BARS, .moment = {1, 1}, .count = 1);
    CHECK("m = { c'1 | d' | }\n{ \\m \\m }",
          "refused: /dev/null/memory.ly:1:7: this is written once and heard in several places, and bars "
          "written "
          "here would come in all of them; give the place music of its own first",
          .kind = SW_CHANGE_INSERT_BARS, .moment = {1, 1}, .count = 1);
    CHECK("m = { c'1 | d' | }\n{ \\m \\m }", "m = { c'1 | d' | }\n{ \\m R1 \\m }",
          .kind = SW_CHANGE_INSERT_BARS, .moment = {2, 1}, .count = 1);
}

/* Bars go; what stays keeps its octaves and values. */
static void test_delete_bars(void **state)
{
    (void)state;
    CHECK("{ c'1 | d' | e' }", "{ c'1 | e' }", .kind = SW_CHANGE_DELETE_BARS, .moment = {1, 1},
          .until = {2, 1});
    CHECK("\\relative { c'1 | g'2 g | a1 }", "\\relative { c'1 | a'1 }", .kind = SW_CHANGE_DELETE_BARS,
          .moment = {1, 1}, .until = {2, 1});
    CHECK("{\n  c'1 | % 1\n  d'2 d' | % 2\n  e' f' | % 3\n}", "{\n  c'1 | % 1\n  e'2 f' | % 2\n}",
          .kind = SW_CHANGE_DELETE_BARS, .moment = {1, 1}, .until = {2, 1});
    CHECK("{ c'1 | \\clef bass d1 \\time 3/4 | \\key d \\major e2. | f }",
          "{ c'1 | \\clef bass \\time 3/4 \\key d \\major f2. }", .kind = SW_CHANGE_DELETE_BARS,
          .moment = {1, 1}, .until = {11, 4});
    CHECK("<< \\new Staff { c'1 | d' | e' } \\new Staff { R1*3 } \\new Dynamics { s1*2 s1\\f } >>",
          "<< \\new Staff { c'1 | e' } \\new Staff { R1*2 } \\new Dynamics { s1*1 s1\\f } >>",
          .kind = SW_CHANGE_DELETE_BARS, .moment = {1, 1}, .until = {2, 1});
    CHECK("{ <c' e'>1 | <d' f'>2 q | q1 }", "{ <c' e'>1 | <d' f'>1 }", .kind = SW_CHANGE_DELETE_BARS,
          .moment = {1, 1}, .until = {2, 1});
    CHECK("{ c'2 c' ( | d'1) | e' }", "{ c'2 c' | e'1 }", .kind = SW_CHANGE_DELETE_BARS, .moment = {1, 1},
          .until = {2, 1});
    CHECK("{ c'2 ( c' | d'1) | e' }", "{ c'2 ( c') | e'1 }", .kind = SW_CHANGE_DELETE_BARS, .moment = {1, 1},
          .until = {2, 1});
    CHECK("{ c'1\\< | d'\\f | e'2 f'\\! }", "{ c'1 | e'2 f'\\! }", .kind = SW_CHANGE_DELETE_BARS,
          .moment = {1, 1}, .until = {2, 1});
    CHECK("{ c'2\\< c' | d'1\\f | e'2 f' }", "{ c'2\\< c'\\! | e'2 f' }", .kind = SW_CHANGE_DELETE_BARS,
          .moment = {1, 1}, .until = {2, 1});
    CHECK("{ c'1 | d'2 d'^( | e'2 f') }", "{ c'1 | e'2^( f') }", .kind = SW_CHANGE_DELETE_BARS,
          .moment = {1, 1}, .until = {2, 1});
    CHECK("{ c'1 | d'2 d'\\( | e'2\\) f' }", "{ c'1 | e'2 f' }", .kind = SW_CHANGE_DELETE_BARS,
          .moment = {1, 1}, .until = {2, 1});
    CHECK("{ <c' e'>1~ | q | c' }", "{ <c' e'>1 | c' }", .kind = SW_CHANGE_DELETE_BARS, .moment = {1, 1},
          .until = {2, 1});
    CHECK("{ c'1~ | c'~ | c' }", "{ c'1~ | c' }", .kind = SW_CHANGE_DELETE_BARS, .moment = {1, 1},
          .until = {2, 1});
    CHECK("<< \\new Voice = v { c'2 d' | e'1 | f' } \\new Lyrics \\lyricsto v { a -- b c -- d } >>",
          "<< \\new Voice = v { c'2 d' | f'1 } \\new Lyrics \\lyricsto v { a -- b d } >>",
          .kind = SW_CHANGE_DELETE_BARS, .moment = {1, 1}, .until = {2, 1});
    CHECK("{ c'1 | d'2\\startTrillSpan d' | e'2\\stopTrillSpan f' }",
          "refused: /dev/null/memory.ly:1:33: a trill or another span reaches over the edge of the bars that "
          "go; end "
          "it there first",
          .kind = SW_CHANGE_DELETE_BARS, .moment = {1, 1}, .until = {2, 1});
    CHECK("{ c'1 | d' }", "refused: /dev/null/memory.ly:1:3: no bar of the score would be left",
          .kind = SW_CHANGE_DELETE_BARS, .moment = {0, 1}, .until = {2, 1});
}

/* One written note, two places. */
static void test_elsewhere(void **state)
{
    (void)state;
    edit e;
    open_edit(&e, "m = { c'4 d' }\n\\score { { \\m \\m } }\n");
    sw_change change = {.kind = SW_CHANGE_PITCH, .event = 2, .pitch = {4, 0, 0}};
    char *refused = apply(&e, &change, 1, SW_ELSEWHERE_REFUSE);
    assert_non_null(strstr(
        refused, "refused: /dev/null/memory.ly:1:7: this is written once and heard in several places"));
    char *all = apply(&e, &change, 1, SW_ELSEWHERE_FOLLOW);
    assert_string_equal(all, "m = { g'4 d' }\n\\score { { \\m \\m } }\n");
    char *copy = apply(&e, &change, 1, SW_ELSEWHERE_COPY);
    assert_string_equal(copy, "m = { c'4 d' }\n\nmCopy = { g'4 d' }\n\\score { { \\m \\mCopy } }\n");
    free(refused);
    free(all);
    free(copy);
    close_edit(&e);
}

/* Words stay on the notes that they were sung on. */
static void test_words(void **state)
{
    (void)state;
    CHECK("<< \\new Voice = v { c'4 d' e'2 } \\new Lyrics \\lyricsto v { one two three } >>",
          "<< \\new Voice = v { c'8 c' d'4 e'2 } \\new Lyrics \\lyricsto v { one _ two three } >>",
          .kind = SW_CHANGE_SPLIT, .event = 0, .moment = {1, 8});
    CHECK("<< \\new Voice = v { c'4 d' e'2 } \\new Lyrics \\lyricsto v { one _ three } >>",
          "<< \\new Voice = v { c'4 r e'2 } \\new Lyrics \\lyricsto v { one three } >>",
          .kind = SW_CHANGE_SILENCE, .event = 1);
    CHECK(
        "<< \\new Voice = v { c'4 d' e'2 } \\new Lyrics \\lyricsto v { one two three } >>",
        "refused: the edit is refused: in /dev/null/memory.ly, the words would be sung on other notes, from "
        "\"two\" in bar 1 on; mend the lyrics first; nothing is written",
        .kind = SW_CHANGE_SILENCE, .event = 1);
}

/* Bytes that are not edited stay: odd blanks, comments, tabs, CRLF, no line end at the end. */
static void test_bytes_stay(void **state)
{
    (void)state;
    CHECK("{\r\n\tc'4   d'  % hm\r\n e'4\t}", "{\r\n\tc'4   c'''  % hm\r\n e'4\t}", .kind = SW_CHANGE_PITCH,
          .event = 1, .pitch = high_c);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(test_pitch),       cmocka_unit_test(test_time),
        cmocka_unit_test(test_chords),      cmocka_unit_test(test_rests),
        cmocka_unit_test(test_marks),       cmocka_unit_test(test_runs),
        cmocka_unit_test(test_unite),       cmocka_unit_test(test_insert_bars),
        cmocka_unit_test(test_delete_bars), cmocka_unit_test(test_elsewhere),
        cmocka_unit_test(test_words),       cmocka_unit_test(test_bytes_stay),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}

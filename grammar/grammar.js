/* LilyPond source, kept shallow on purpose: inside a block stands a plain sequence of items. Which words are
 * notes, and which items are the arguments of a command, is settled by the reader (src/score), because it
 * depends on the input language and on the commands that the file defines.
 *
 * Three decisions about speed and size:
 *   - a note is one leaf: `cis''!4.*2/3` is one `word` (name, octave marks, accidental flags, octave check,
 *     duration with dots and factor);
 *   - an articulation, fingering, slur end or quoted text is one leaf (`post_event`), direction included;
 *   - hidden rules (leading underscore) leave no node, so items are direct children of their block.
 *
 * Each input mode has its own block, since the same characters are cut into other tokens there. Scheme and the
 * names of markup commands need the external scanner (src/scanner.c). */

const letter = '[a-zA-Z\\u0080-\\u{10FFFF}]';
const name = `${letter}+([-_]+${letter}+)*`;
const number = '[0-9]+';
const factor = `(\\*${number}(/${number})?)`;
const duration = `(${number}|\\\\(breve|longa|maxima))\\.*${factor}*`;
const text = '"([^"\\\\]|\\\\(.|\\n|\\r))*"';

const re = (source) => new RegExp(source, 'u');

module.exports = grammar({
  name: 'stavewright',

  externals: $ => [
    // What follows the marker # or $:
    $._scheme_whole,   // a Scheme expression without LilyPond inside
    $._scheme_start,   // an expression with LilyPond inside, up to and including #{
    $._scheme_middle,  // between #} and the next #{ of the same expression
    $._scheme_end,     // from behind #} to the end of the expression
    // Names of markup commands, by what follows: m = a markup, s = a Scheme value or string.
    $._markup_none,
    $._markup_s,
    $._markup_ss,
    $._markup_sss,
    $._markup_m,
    $._markup_sm,
    $._markup_ssm,
    $._markup_mm,
    $._markup_smm,
    $._markup_ssmm,
    $._markup_ssmsm,
    $._markup_sssm,
    $._markup_ssmmm,
    $._markup_unknown, // a command that is no markup command of the language: defined by the user
    $._markup_music,   // takes a block of music
    $._never,          // not in any rule: valid only while the parser mends an error
  ],

  extras: $ => [/[\s\u00a0\ufeff]/, $.comment],

  word: $ => $.command,

  conflicts: $ => [],

  rules: {
    file: $ => repeat($._item),

    // ---- notes (and everything outside the other modes) ----------------------------------------------------
    _item: $ => choice(
      $.word, $.number, $.string, $.command, $.post_event, $.bar_check, $.voice_separator, $.punctuation,
      $.scheme, $.embedded, $.block, $.simultaneous, $.chord, $._mode_change),

    block: $ => seq('{', repeat($._item), '}'),
    simultaneous: $ => seq('<<', repeat($._item), '>>'),
    chord: $ => seq('<', repeat($._chord_item), $.chord_end),
    _chord_item: $ => choice(
      $.word, $.number, $.string, $.command, $.post_event, $.bar_check, $.voice_separator, $.punctuation,
      $.scheme, $.embedded, $.block, $.markup),
    chord_end: $ => token(re(`>(${duration}|${factor}+)?`)),

    // ---- changes of mode --------------------------------------------------------------------------------------
    _mode_change: $ => choice($._with, $.markup, $._lyrics, $._chords, $._figures, $._notes),

    _with: $ => prec.right(seq(alias('\\with', $.command), optional(choice($.block, $.command)))),
    _notes: $ => prec.right(seq(
      alias(choice('\\notemode', '\\drummode', '\\drums'), $.command), repeat($._prefix), optional($._notes_body))),
    _notes_body: $ => choice($.block, $.simultaneous),
    _lyrics: $ => prec.right(seq(
      alias(choice('\\lyricmode', '\\lyrics', '\\addlyrics', '\\lyricsto'), $.command),
      repeat($._prefix), optional(choice($.command, $._lyric_body)))),
    _chords: $ => prec.right(seq(
      alias(choice('\\chordmode', '\\chords'), $.command), repeat($._prefix),
      optional(choice($.command, $._chordname_body)))),
    _figures: $ => prec.right(seq(
      alias(choice('\\figuremode', '\\figures'), $.command), repeat($._prefix),
      optional(choice($.command, $._figure_body)))),
    // What may stand between the word for a mode and its block: `\lyricsto "alto"`, `\chords = "x" \with { ... }`,
    // `\lyricmode \repeat unfold 2 { ... }`.
    _prefix: $ => choice(
      $.string, $.word, $.number, $.scheme, $.embedded, alias('=', $.punctuation), $._with,
      alias(choice('\\repeat', '\\tag', '\\keepWithTag', '\\removeWithTag', '\\once', '\\unfoldRepeats',
        '\\transpose', '\\tuplet', '\\times', '\\relative', '\\fixed', '\\new', '\\context'), $.command)),

    // ---- lyrics ------------------------------------------------------------------------------------------------
    _lyric_body: $ => choice($.lyric_block, $.lyric_simultaneous),
    lyric_block: $ => seq('{', repeat($._lyric_item), '}'),
    lyric_simultaneous: $ => seq('<<', repeat($._lyric_item), '>>'),
    _lyric_item: $ => choice(
      $.lyric_word, $.number, $.string, $.command, $.bar_check, $.voice_separator, $.scheme, $.embedded,
      alias($._lyric_punctuation, $.punctuation), alias($._lyric_mark, $.post_event),
      $.lyric_block, $.lyric_simultaneous, $._mode_change),
    lyric_word: $ => token(prec(-1, /[^|*.=$#{}"\\\s0-9][^$#{}"\\\s0-9]*/)),
    _lyric_punctuation: $ => token(/[*.=]+/),
    _lyric_mark: $ => token(/\\[()<>!\[\]]|[-^_]"([^"\\]|\\.)*"/),

    // ---- chord names -------------------------------------------------------------------------------------------
    _chordname_body: $ => choice($.chordname_block, $.chordname_simultaneous),
    chordname_block: $ => seq('{', repeat($._chordname_item), '}'),
    chordname_simultaneous: $ => seq('<<', repeat($._chordname_item), '>>'),
    _chordname_item: $ => choice(
      $.word, $.number, $.string, $.command, $.post_event, $.bar_check, $.voice_separator, $.punctuation,
      $.scheme, $.embedded, $.chord_modifier, $.chordname_block, $.chordname_simultaneous, $.chord,
      $._mode_change),
    chord_modifier: $ => token(prec(1, re(`(:|\\^)[a-z0-9.+^?-]*(/\\+?${letter}+)?|/\\+?${letter}+`))),

    // ---- figured bass ------------------------------------------------------------------------------------------
    _figure_body: $ => choice($.figure_block, $.figure_simultaneous),
    figure_block: $ => seq('{', repeat($._figure_item), '}'),
    figure_simultaneous: $ => seq('<<', repeat($._figure_item), '>>'),
    _figure_item: $ => choice(
      $.word, $.number, $.string, $.command, $.bar_check, $.scheme, $.embedded, $.figure_block,
      $.figure_simultaneous, $.figures, alias($._figure_punctuation, $.punctuation), $._mode_change),
    figures: $ => seq('<', repeat($._figure), $.chord_end),
    _figure: $ => choice(
      $.number, $.string, $.command, $.scheme, $.embedded, $.markup, $.word,
      alias($._figure_sign, $.punctuation)),
    _figure_sign: $ => token(/\\?[-+!\[\]_\/\\*.~]|\\\\/),
    _figure_punctuation: $ => token(/[-^_]?[()~\[\]]|\\[<>!()]|[-^_][-.+^!>_|]|[=.*,:\/+^_'!?-]/),

    // ---- markup ------------------------------------------------------------------------------------------------
    markup: $ => choice(
      seq(alias(choice('\\markup', '^\\markup', '_\\markup', '-\\markup'), $.command), $._markup),
      seq(alias('\\markuplist', $.command), $._markup)),
    // One markup, whose end depends on how many arguments its commands take.
    _markup: $ => choice(
      $.markup_word, $.string, $.scheme, $.embedded, $.markup_block,
      alias($._markup_none, $.command),
      seq(alias($._markup_s, $.command), $._value),
      seq(alias($._markup_ss, $.command), $._value, $._value),
      seq(alias($._markup_sss, $.command), $._value, $._value, $._value),
      seq(alias($._markup_m, $.command), $._markup),
      seq(alias($._markup_sm, $.command), choice(seq($._value, $._markup), alias($._markup_none, $.command))),
      seq(alias($._markup_ssm, $.command), $._value, $._value, $._markup),
      seq(alias($._markup_mm, $.command), $._markup, $._markup),
      seq(alias($._markup_smm, $.command), $._value, $._markup, $._markup),
      seq(alias($._markup_ssmm, $.command), $._value, $._value, $._markup, $._markup),
      seq(alias($._markup_ssmsm, $.command), $._value, $._value, $._markup, $._value, $._markup),
      seq(alias($._markup_sssm, $.command), $._value, $._value, $._value, $._markup),
      seq(alias($._markup_ssmmm, $.command), $._value, $._value, $._markup, $._markup, $._markup),
      seq(alias($._markup_music, $.command), choice($.block, $.simultaneous)),
      $._user_markup),
    // A user's own markup command or a markup kept in a variable: it takes what plainly belongs to a markup.
    _user_markup: $ => prec.right(seq(
      alias($._markup_unknown, $.command),
      optional(choice($.string, $.scheme, $.embedded, $.markup_block)))),
    _value: $ => choice($.scheme, $.embedded, $.string, $.markup_word, $.markup_block,
      alias($._markup_unknown, $.command)),
    markup_block: $ => seq('{', repeat($._markup_item), '}'),
    _markup_item: $ => choice(
      $.markup_word, $.string, $.scheme, $.embedded, $.markup_block,
      alias(choice($._markup_none, $._markup_s, $._markup_ss, $._markup_sss, $._markup_m, $._markup_sm,
        $._markup_ssm, $._markup_mm, $._markup_smm, $._markup_ssmm, $._markup_ssmsm, $._markup_sssm, $._markup_ssmmm,
        $._markup_unknown, '\\markup', '\\markuplist'), $.command),
      seq(alias($._markup_music, $.command), choice($.block, $.simultaneous))),
    markup_word: $ => token(prec(-1, /[^$#{}"\\\s]+/)),

    // ---- Scheme ------------------------------------------------------------------------------------------------
    scheme: $ => seq($._marker, $._scheme_whole),
    _marker: $ => token(/[#$]@?/),
    // Scheme with LilyPond inside it: #(f #{ c4 d #} x)
    embedded: $ => seq(
      $._marker, alias($._scheme_start, $.scheme_text), repeat($._item), '#}',
      repeat(seq(alias($._scheme_middle, $.scheme_text), repeat($._item), '#}')),
      alias($._scheme_end, $.scheme_text)),

    // ---- leaves ------------------------------------------------------------------------------------------------
    word: $ => token(re(
      `${name}(\\.(${name}|${number}))*('+|,+)?[!?]*(=('+|,+))?(${duration}|${factor}+)?`)),
    number: $ => token(choice(re(`${number}\\.*${factor}*`), re(`${number}/${number}`),
      re(`-?${number}?\\.${number}`))),
    string: $ => token(re(text)),
    command: $ => token(re(`[-^_]?\\\\(${name}|"[^"]*")`)),
    post_event: $ => token(choice(
      /[-^_]?[()\[\]~]/,
      /[-^_]?\\[^\s\\a-zA-Z0-9"=\u0080-\u{10FFFF}]/u, // \( \< \! and names of one other character
      /[-^_]?\\=([0-9]+|"[^"]*"|[a-zA-Z]+)?/,
      /[-^_]?\\[0-9]+/,
      /[-^_][-.+^!>_|]/,
      /[-^_][0-9]+/,
      re(`[-^_]${text}`),
      /:[0-9]*/)),
    bar_check: $ => '|',
    voice_separator: $ => '\\\\',
    punctuation: $ => token(prec(-1, /[=.*\/+^_!?@&;`-]|'+|,+/)),
    comment: $ => token(prec(1, choice(
      /%\{([^%]|%+[^%}])*%+\}/,
      /%[^{\n\r][^\n\r]*/,
      /%/))),
  },
});

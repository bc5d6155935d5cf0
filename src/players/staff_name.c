#include <string.h>

#include "players/staff_name.h"

static const char *const number_words[] = {
    "one",      "two",       "three",     "four",      "five",    "six",      "seven",    "eight",
    "first",    "second",    "third",     "fourth",    "primo",   "prima",    "primi",    "prime",
    "secondo",  "seconda",   "secondi",   "seconde",   "terzo",   "terza",    "quarto",   "quarta",
    "erste",    "ersten",    "erster",    "erstes",    "zweite",  "zweiten",  "zweiter",  "dritte",
    "dritten",  "dritter",   "vierte",    "vierter",   "premier", "premiers", "premiere", "premieres",
    "deuxieme", "deuxiemes", "troisieme", "quatrieme", "seconds", "secondes", NULL,
};
/* Behind a figure: 1st, 2nd, 1o, 2do, 1er, 1ers, 2ds, 2e, 1a (the first half of a part). */
static const char *const number_endings[] = {
    "st", "nd", "rd",  "th", "o",  "a",  "b",  "c",   "e",   "er",   "re", "do",   "da",
    "mo", "ma", "eme", "zo", "za", "to", "ta", "ers", "ere", "eres", "ds", "emes", NULL,
};
static const char *const idle_words[] = {
    "solo",      "soli",     "div",       "divisi",    "unis",       "unisoni", "tutti",   "part",
    "parts",     "parte",    "music",     "notes",     "staff",      "stave",   "midi",    "muted",
    "con",       "senza",    "with",      "without",   "mute",       "mutes",   "sord",    "sordino",
    "sordini",   "sourdine", "sourdines", "dampfer",   "gedampft",   "right",   "left",    "rh",
    "lh",        "upper",    "lower",     "up",        "down",       "top",     "bottom",  "mit",
    "ohne",      "avec",     "sans",      "principal", "principale", "princ",   "ripieno", "concertino",
    "obbligato", "section",  "player",    "players",   "desk",       "desks",   "pult",    "pulte",
    "chair",     "optional", "opt",       "offstage",  "gli",        "altri",   "others",  "rest",
    "pizz",      "arco",     NULL,
};
static const char *const conjunctions[] = {"and", "und", "et", "e", "ed", "y", "doubling", "dbl", NULL};
static const char *const accidentals[] = {"flat", "sharp", "bemol", "natural", NULL};
static const char *const in_words[] = {"in", "en", NULL};

static bool is_figure(const sw_staff_words *words, size_t i)
{
    return words->items[i].text[0] >= '0' && words->items[i].text[0] <= '9';
}

/* I to XXXIX and the like. A lone V that begins a name is no number but an abbreviation ("V.c."). */
static bool is_roman(const sw_staff_words *words, size_t i)
{
    const char *text = words->items[i].text;
    bool abbreviation = i == 0 && (strcmp(text, "v") == 0 || strcmp(text, "x") == 0);
    return text[strspn(text, "ivx")] == '\0' && !abbreviation;
}

/* True for the "a" of "a 2", which has nothing to do with A. */
static bool is_a_due(const sw_staff_words *words, size_t i)
{
    return sw_staff_word_is(words, i, "a") && !words->items[i].capital && i + 1 < words->count &&
           is_figure(words, i + 1) && !(i > 0 && sw_staff_word_among(words, i - 1, in_words));
}

/* "e" is "and" between names and numbers, but E in "in E" and "E flat". */
static void mark_conjunctions(sw_staff_words *words)
{
    for (size_t i = 1; i + 1 < words->count; i++) {
        bool letter = words->items[i].text[1] == '\0';
        bool key = letter && (words->items[i].capital || sw_staff_word_among(words, i - 1, in_words) ||
                              sw_staff_word_among(words, i + 1, accidentals));
        if (!key && sw_staff_word_among(words, i, conjunctions)) {
            strcpy(words->items[i].text, "/");
        }
    }
}

static void remove_numbers(sw_staff_words *words)
{
    for (size_t i = 0; i < words->count;) {
        if (is_figure(words, i) && i + 1 < words->count && words->items[i + 1].glued &&
            sw_staff_word_among(words, i + 1, number_endings)) {
            sw_staff_words_remove(words, i, 2);
        } else if (is_figure(words, i) || is_roman(words, i) || is_a_due(words, i) ||
                   sw_staff_word_among(words, i, number_words)) {
            sw_staff_words_remove(words, i, 1);
        } else {
            i++;
        }
    }
}

static void remove_idle_words(sw_staff_words *words)
{
    for (size_t i = 0; i < words->count;) {
        if (sw_staff_word_among(words, i, idle_words)) {
            sw_staff_words_remove(words, i, 1);
        } else {
            i++;
        }
    }
}

/* Takes the first key that "in" introduces out of the words. */
static bool take_stated_key(sw_staff_words *words, char key[SW_STAFF_KEY_TEXT])
{
    for (size_t i = 0; i + 1 < words->count; i++) {
        size_t count = sw_staff_word_among(words, i, in_words) ? sw_staff_key_read(words, i + 1, key) : 0;
        if (count > 0) {
            sw_staff_words_remove(words, i, 1 + count);
            return true;
        }
    }
    return false;
}

static sw_key_demand take_bare_key(sw_staff_words *words, char key[SW_STAFF_KEY_TEXT])
{
    for (size_t i = 0; i < words->count; i++) {
        size_t count = sw_staff_key_read_bare(words, i, key);
        if (count == 0) {
            continue;
        }
        /* Abbreviations of two letters with a letter before them may be anything: "A. Cl.", "B. Kl." */
        bool letter = count == 1 && words->items[i].text[1] == '\0';
        if (letter && i == 0 && words->count > 1 && strlen(words->items[1].text) < 3) {
            continue;
        }
        bool part_letter = letter && words->items[i].glued && strchr("abc", words->items[i].text[0]) != NULL;
        sw_staff_words_remove(words, i, count);
        return part_letter ? SW_KEY_UNCLEAR : i == 0 ? SW_KEY_PREFIXED : SW_KEY_STATED;
    }
    return SW_KEY_NONE;
}

/* "/" once where several stand, and none at the ends. */
static void tidy_breaks(sw_staff_words *words)
{
    for (size_t i = 0; i < words->count;) {
        bool idle = i == 0 || i + 1 == words->count || sw_staff_word_is(words, i + 1, "/");
        if (idle && sw_staff_word_is(words, i, "/")) {
            sw_staff_words_remove(words, i, 1);
            i = i > 0 ? i - 1 : 0; /* what stands before may be the end now */
        } else {
            i++;
        }
    }
}

static void join(const sw_staff_words *words, char text[SW_STAFF_NAME_TEXT])
{
    size_t length = 0;
    text[0] = '\0';
    for (size_t i = 0; i < words->count; i++) {
        size_t more = strlen(words->items[i].text);
        if (length + more + 2 > SW_STAFF_NAME_TEXT) {
            return;
        }
        if (i > 0) {
            text[length++] = ' ';
        }
        memcpy(text + length, words->items[i].text, more + 1);
        length += more;
    }
}

void sw_staff_name_plain(sw_slice name, sw_staff_names *names)
{
    sw_staff_words words;
    sw_staff_words_cut(name, &words);
    mark_conjunctions(&words);
    remove_numbers(&words);
    remove_idle_words(&words);
    *names = (sw_staff_names){0};
    if (take_stated_key(&words, names->stated.key)) {
        names->stated.demand = SW_KEY_STATED;
    }
    tidy_breaks(&words);
    sw_staff_words bare = words;
    join(&words, names->stated.text);
    if (names->stated.demand == SW_KEY_STATED) {
        return;
    }
    names->bare.demand = take_bare_key(&bare, names->bare.key);
    if (names->bare.demand != SW_KEY_NONE) {
        tidy_breaks(&bare);
        join(&bare, names->bare.text);
    }
}

/* The keys that staff names carry: "in B", "en si bemol", "Es-". */
#ifndef STAVEWRIGHT_PLAYERS_STAFF_KEYS_H
#define STAVEWRIGHT_PLAYERS_STAFF_KEYS_H

#include "players/staff_words.h"

enum { SW_STAFF_KEY_TEXT = 16 };

/* Reads the key that begins with word `at` in any of the trade's languages and writes its plain form: letter,
 * "b" or "#", and " alto" or " basso" when that follows: "bb", "f#", "c basso". A lone B is B flat, as on
 * German and Italian title pages; B natural is H, "si" or "B natural". Returns the number of words, 0 when
 * there is no key. */
size_t sw_staff_key_read(const sw_staff_words *words, size_t at, char key[SW_STAFF_KEY_TEXT]);

/* The same for words that no "in" introduces, where less is surely a key: "es", "bb", "e flat", "sib"
 * anywhere, and a single letter as the first or the last word. */
size_t sw_staff_key_read_bare(const sw_staff_words *words, size_t at, char key[SW_STAFF_KEY_TEXT]);

#endif

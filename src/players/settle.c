#include "players/settle.h"

#include <string.h>

/* How written pitches of one instrument are those of another. */
typedef struct way {
    const sw_instrument *from;
    const sw_instrument *to;
    sw_arena *arena;
} way;

static sw_pitch moved(const way *w, sw_pitch written)
{
    return sw_instrument_written(w->to, sw_instrument_sounding(w->from, written));
}

static void *copy(sw_arena *arena, const void *items, size_t count, size_t size)
{
    void *copied = sw_arena_alloc(arena, count * size + 1);
    if (count > 0) {
        memcpy(copied, items, count * size);
    }
    return copied;
}

/* The same abilities with pitches that sound the same on the other instrument. */
static void move_pitches(const way *w, sw_abilities *can)
{
    sw_register *registers = copy(w->arena, can->registers, can->register_count, sizeof *registers);
    for (size_t i = 0; i < can->register_count; i++) {
        registers[i].low = moved(w, registers[i].low);
        registers[i].high = moved(w, registers[i].high);
    }
    can->registers = registers;
    sw_trill_pair *pairs = copy(w->arena, can->trills.pairs, can->trills.count, sizeof *pairs);
    for (size_t i = 0; i < can->trills.count; i++) {
        pairs[i].low = moved(w, pairs[i].low);
        pairs[i].high = moved(w, pairs[i].high);
    }
    can->trills.pairs = pairs;
    can->trills.from = moved(w, can->trills.from);
    can->lips.above = moved(w, can->lips.above);
}

/* Puts what is given over what others have. */
static void apply(const sw_given_abilities *own, sw_abilities *can)
{
    if (own->registers) {
        can->registers = own->said.registers;
        can->register_count = own->said.register_count;
    }
    if (own->lips) {
        can->lips = own->said.lips;
    }
    if (own->weight) {
        can->weight = own->said.weight;
    }
    if (own->trills) {
        can->trills = own->said.trills;
    }
    if (own->tremolo) {
        can->tremolo = own->said.tremolo;
    }
    if (own->techniques) {
        can->techniques = own->said.techniques;
    }
    if (own->tuning) {
        can->tuning = own->said.tuning;
    }
}

/* The chain of entries has no circle: the reader refuses one. */
static sw_abilities settled(const sw_instruments *table, const sw_instrument_entry *entry)
{
    sw_abilities can = {0};
    if (entry->like == SW_NO_ENTRY) {
        apply(&table->families[entry->figures.family], &can);
    } else {
        const sw_instrument_entry *other = &table->entries[entry->like];
        can = settled(table, other);
        if (entry->like_by_sound) {
            move_pitches(&(way){&other->figures, &entry->figures, table->arena}, &can);
        }
    }
    apply(&entry->own, &can);
    return can;
}

void sw_abilities_settle(sw_instruments *table)
{
    for (size_t i = 0; i < table->count; i++) {
        table->entries[i].figures.can = settled(table, &table->entries[i]);
    }
}

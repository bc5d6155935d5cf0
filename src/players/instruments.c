#include <stdlib.h>
#include <string.h>

#include "players/instrument_table.h"
#include "players/settle.h"

/* The bytes of instruments.yaml, in a file that the build makes. */
extern const unsigned char sw_instruments_yaml[];
extern const size_t sw_instruments_yaml_length;

sw_instruments *sw_instruments_load(const char *override_path_or_null, sw_slice override_bytes, char **error)
{
    sw_instruments *table = sw_alloc_zero(1, sizeof *table);
    table->arena = sw_arena_new();
    table->recogniser = sw_recogniser_new();
    *error = NULL;
    sw_slice built_in = {(const char *)sw_instruments_yaml, sw_instruments_yaml_length};
    bool good = sw_instrument_table_read(table, "instruments.yaml (built-in)", built_in, false, error);
    if (good && override_path_or_null != NULL) {
        good = sw_instrument_table_read(table, override_path_or_null, override_bytes, true, error);
    }
    if (!good) {
        sw_instruments_free(table);
        return NULL;
    }
    sw_abilities_settle(table);
    sw_recogniser_compile(table->recogniser);
    return table;
}

void sw_instruments_free(sw_instruments *instruments)
{
    if (instruments == NULL) {
        return;
    }
    sw_recogniser_free(instruments->recogniser);
    sw_arena_free(instruments->arena);
    free(instruments->entries);
    free(instruments);
}

size_t sw_instruments_count(const sw_instruments *instruments)
{
    return instruments->count;
}

const sw_instrument *sw_instruments_get(const sw_instruments *instruments, size_t i)
{
    return i < instruments->count ? &instruments->entries[i].figures : NULL;
}

int sw_instrument_table_find(const sw_instruments *table, const char *id)
{
    for (size_t i = 0; i < table->count; i++) {
        if (strcmp(table->entries[i].figures.id, id) == 0) {
            return (int)i;
        }
    }
    return SW_NO_ENTRY;
}

const sw_instrument *sw_instruments_by_id(const sw_instruments *instruments, const char *id)
{
    int entry = sw_instrument_table_find(instruments, id);
    return entry == SW_NO_ENTRY ? NULL : &instruments->entries[entry].figures;
}

const sw_instrument *sw_instruments_find(const sw_instruments *instruments, const char *staff_name)
{
    int entry = sw_recogniser_find(instruments->recogniser, sw_slice_of(staff_name));
    return entry == SW_NO_ENTRY ? NULL : &instruments->entries[entry].figures;
}

/* ---- compass ------------------------------------------------------------------------------------ */

static const sw_pitch middle_c = {0, 0, 0};

sw_pitch sw_instrument_sounding(const sw_instrument *instrument, sw_pitch written)
{
    return sw_pitch_transpose(written, instrument->sounds);
}

sw_pitch sw_instrument_written(const sw_instrument *instrument, sw_pitch sounding)
{
    return sw_pitch_transpose(sounding, sw_pitch_interval(instrument->sounds, middle_c));
}

sw_compass_place sw_instrument_place_written(const sw_instrument *instrument, sw_pitch written)
{
    if (!instrument->has_compass) {
        return SW_IN_SECTION;
    }
    int height = sw_pitch_quarter_tones(written);
    if (height < sw_pitch_quarter_tones(instrument->extreme_low)) {
        return SW_BELOW_EXTREME;
    }
    if (height < sw_pitch_quarter_tones(instrument->written_low)) {
        return SW_BELOW_SECTION;
    }
    if (height > sw_pitch_quarter_tones(instrument->extreme_high)) {
        return SW_ABOVE_EXTREME;
    }
    return height > sw_pitch_quarter_tones(instrument->written_high) ? SW_ABOVE_SECTION : SW_IN_SECTION;
}

sw_compass_place sw_instrument_place_sounding(const sw_instrument *instrument, sw_pitch sounding)
{
    return sw_instrument_place_written(instrument, sw_instrument_written(instrument, sounding));
}

#include "players/percussion_names.h"

#include <string.h>

/* The instruments of src/syntax/drum_names.c; whistles, cuicas and hands have no entry in instruments.yaml.
 */
static const struct {
    const char *drum;
    const char *id;
} names[] = {
    {"acousticbassdrum", "bass-drum"},
    {"acousticsnare", "snare-drum"},
    {"bassdrum", "bass-drum"},
    {"cabasa", "cabasa"},
    {"chinesecymbal", "suspended-cymbal"},
    {"claves", "claves"},
    {"closedhihat", "hi-hat"},
    {"cowbell", "cowbell"},
    {"crashcymbal", "cymbals"},
    {"crashcymbala", "cymbals"},
    {"crashcymbalb", "cymbals"},
    {"electricsnare", "snare-drum"},
    {"guiro", "guiro"},
    {"halfopenhihat", "hi-hat"},
    {"hiagogo", "agogo-bells"},
    {"hibongo", "bongos"},
    {"hiconga", "congas"},
    {"highfloortom", "tom-toms"},
    {"hightom", "tom-toms"},
    {"hihat", "hi-hat"},
    {"himidtom", "tom-toms"},
    {"hisidestick", "snare-drum"},
    {"hitimbale", "timbales"},
    {"hiwoodblock", "wood-block"},
    {"loagogo", "agogo-bells"},
    {"lobongo", "bongos"},
    {"loconga", "congas"},
    {"longguiro", "guiro"},
    {"losidestick", "snare-drum"},
    {"lotimbale", "timbales"},
    {"lowfloortom", "tom-toms"},
    {"lowmidtom", "tom-toms"},
    {"lowoodblock", "wood-block"},
    {"lowtom", "tom-toms"},
    {"maracas", "maracas"},
    {"mutehibongo", "bongos"},
    {"mutehiconga", "congas"},
    {"mutelobongo", "bongos"},
    {"muteloconga", "congas"},
    {"mutetriangle", "triangle"},
    {"openhibongo", "bongos"},
    {"openhiconga", "congas"},
    {"openhihat", "hi-hat"},
    {"openlobongo", "bongos"},
    {"openloconga", "congas"},
    {"opentriangle", "triangle"},
    {"pedalhihat", "hi-hat"},
    {"ridebell", "suspended-cymbal"},
    {"ridecymbal", "suspended-cymbal"},
    {"ridecymbala", "suspended-cymbal"},
    {"ridecymbalb", "suspended-cymbal"},
    {"shortguiro", "guiro"},
    {"sidestick", "snare-drum"},
    {"snare", "snare-drum"},
    {"splashcymbal", "suspended-cymbal"},
    {"tambourine", "tambourine"},
    {"tamtam", "tam-tam"},
    {"triangle", "triangle"},
    {"vibraslap", "vibraslap"},
};

const sw_instrument *sw_percussion_of_drum(const sw_instruments *instruments, const char *drum)
{
    for (size_t i = 0; i < sizeof names / sizeof names[0]; i++) {
        if (strcmp(names[i].drum, drum) == 0) {
            return sw_instruments_by_id(instruments, names[i].id);
        }
    }
    return NULL;
}

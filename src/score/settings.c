/* What has no length, on the walk through the music of a score. */
#include <stdlib.h>

#include "score/player.h"

/* The voice in which a note written at this place would sound, as far as there is one already; otherwise the
 * staff or group. */
static sw_context *line_at(const sw_spot *here, sw_moment when)
{
    sw_context *context = sw_contexts_at(here->context, when);
    while (context->level != SW_LEVEL_VOICE && context->implicit != NULL) {
        context = context->implicit;
    }
    return context;
}

/* Adds a setting in this line; one that has no notes yet may get its voice later. */
static sw_setting *add_setting(sw_player *p, uint32_t music, sw_moment when, const sw_spot *here,
                               sw_context *line)
{
    sw_score *score = p->score;
    score->settings =
        sw_grow(score->settings, score->setting_count, &score->setting_capacity, sizeof(sw_setting));
    sw_setting *setting = &score->settings[score->setting_count++];
    *setting = (sw_setting){
        .onset = when.main,
        .music = music,
        .staff = sw_contexts_staff_index(p->contexts, line),
        .voice = line->voice,
        .frame = here->frame,
        .grace = here->grace,
        .grace_num = (int32_t)when.grace.num,
        .grace_den = when.grace.den == 0 ? 1 : (int32_t)when.grace.den,
        .pitch = sw_music_at(p->reader, music)->pitch,
    };
    return setting;
}

static void wait_for_voice(sw_player *p, sw_context *line)
{
    p->early = sw_grow(p->early, p->early_count, &p->early_capacity, sizeof *p->early);
    uint32_t setting = (uint32_t)p->score->setting_count - 1;
    p->early[p->early_count++] = (sw_early_setting){setting, line->early, line};
    line->early = (uint32_t)p->early_count;
}

void sw_player_setting(sw_player *p, uint32_t music, sw_moment when, const sw_spot *here)
{
    if (p->muted || p->recording != NULL) {
        return;
    }
    const sw_music *m = sw_music_at(p->reader, music);
    sw_context *line = line_at(here, when);
    sw_setting *setting = add_setting(p, music, when, here, line);
    if (m->kind == SW_MUSIC_KEY) {
        setting->pitch = sw_score_pitch(p->reader->reading, p->score, here->frame, m->pitch);
    } else if (m->kind == SW_MUSIC_SET) {
        sw_contexts_set(p->contexts, sw_contexts_at(here->context, when), m->name, m->name2);
        setting->staff = sw_contexts_staff_index(p->contexts, line_at(here, when));
    }
    if (setting->voice == SW_NO_INDEX) {
        wait_for_voice(p, line);
    }
}

void sw_player_begin_with(sw_player *p, uint32_t with, sw_moment when, const sw_spot *here)
{
    for (uint32_t c = sw_music_at(p->reader, with)->first; c != SW_NO_INDEX;
         c = sw_music_at(p->reader, c)->next) {
        const sw_music *m = sw_music_at(p->reader, c);
        add_setting(p, c, when, here, here->context);
        if (m->kind == SW_MUSIC_SET) {
            sw_contexts_set(p->contexts, here->context, m->name, m->name2);
        }
        if (here->context->level == SW_LEVEL_VOICE) {
            wait_for_voice(p, here->context);
        }
    }
}

void sw_player_settle_voice(sw_player *p, sw_context *voice)
{
    for (uint32_t i = voice->early; i > 0; i = p->early[i - 1].next) {
        p->score->settings[p->early[i - 1].setting].voice = voice->voice;
    }
    voice->early = 0;
}

void sw_player_settle_settings(sw_player *p)
{
    for (size_t i = 0; i < p->early_count; i++) {
        sw_setting *setting = &p->score->settings[p->early[i].setting];
        sw_context *line = p->early[i].line;
        if (setting->voice != SW_NO_INDEX || line->level == SW_LEVEL_VOICE) {
            continue; /* no note has come behind it */
        }
        while (line->level != SW_LEVEL_VOICE && line->implicit != NULL) {
            line = line->implicit;
        }
        setting->staff = setting->staff == SW_NO_INDEX ? line->staff : setting->staff;
        setting->voice = line->voice;
    }
    free(p->early);
    p->early = NULL;
    p->early_count = p->early_capacity = 0;
}

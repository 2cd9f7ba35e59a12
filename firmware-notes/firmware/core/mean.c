/* SPDX-License-Identifier: Apache-2.0 */
#include "mean.h"

void mean_start(struct mean *mean, struct pace pace, uint32_t n, uint32_t t)
{
    mean->pace = pace;
    mean->next.n = n;
    mean->t = t;
    mean->sum = 0;
    mean->count = 0;
}

static void add(struct mean *mean, uint16_t code)
{
    if (code == READING_LOST || mean->sum == MEAN_LOST)
        mean->sum = MEAN_LOST;
    else
        mean->sum = (uint16_t)(mean->sum + code);
}

bool mean_take(struct mean *mean, uint16_t code, struct sample *whole)
{
    const struct pace *pace = &mean->pace;
    if (mean->count == 0)
        mean->next.t = mean->t + (uint32_t)(pace->readings - 1) * pace->reading_us / 2;
    add(mean, code);
    mean->t += pace->reading_us;
    if (++mean->count < pace->readings)
        return false;
    *whole = mean->next;
    whole->sixteenths = mean->sum;
    if (mean->sum != MEAN_LOST)
        whole->sixteenths = (uint16_t)(mean->sum * (uint8_t)(MEAN_STEPS / pace->readings));
    mean->next.n++;
    mean->sum = 0;
    mean->count = 0;
    return true;
}

/* SPDX-License-Identifier: Apache-2.0 */
#include "scale.h"

struct scale scale_of_element(const struct element *element)
{
    int64_t span = ((int64_t)element->high_pa - element->low_pa) * SCALE_ONE;
    int16_t apart = (int16_t)(element->high_share - element->low_share);
    int64_t whole = span * 1000 / apart; /* from nothing to the full supply */
    int32_t full_scale = 1024 * 16;
    struct scale scale = {
        (int32_t)((whole + full_scale / 2) / full_scale),
        (int32_t)((int64_t)element->low_pa * SCALE_ONE - span * element->low_share / apart),
    };
    return scale;
}

static int32_t rounded(int32_t scaled)
{
    int32_t half = scaled < 0 ? -SCALE_ONE / 2 : SCALE_ONE / 2;
    return (scaled + half) / SCALE_ONE;
}

int32_t scale_pressure(const struct scale *scale, uint16_t sixteenths)
{
    return rounded(scale->at_zero + scale->gain * (int32_t)sixteenths);
}

bool scale_is_at_end(uint16_t sixteenths)
{
    return sixteenths < CODE_MARGIN || sixteenths > CODE_END - CODE_MARGIN;
}

/* SPDX-License-Identifier: Apache-2.0 */
#ifndef THUMBSEAL_TRIM_H
#define THUMBSEAL_TRIM_H

#include <stdint.h>

#include "scale.h"

/*
 * What the maker of a sensor writes into it once: its name, its scale from two points against a
 * good gauge, and the code of the inner reference at a known supply. It lies in two copies, for a
 * write that was cut off must not become a scale.
 */
enum {
    TRIM_SENSOR = 20,        /* longest name */
    TRIM_BYTES = 36,         /* a copy */
    TRIM_COPIES = 2,
    TRIM_STEP = 64           /* from one copy to the next */
};

enum trim_state {
    TRIM_GOOD,
    TRIM_BLANK,              /* never written */
    TRIM_SPOILT              /* written, and no copy is whole: there is no scale to trust */
};

struct trim {
    char sensor[TRIM_SENSOR + 1];
    struct scale scale;
    uint16_t supply_code;    /* of the inner reference, 10 bits; 0 where it was not measured */
};

/* Reads both copies, which begin at 0 and at TRIM_STEP. */
enum trim_state trim_read(const uint8_t bytes[TRIM_STEP + TRIM_BYTES], struct trim *trim);

/* Writes one copy. */
void trim_write(const struct trim *trim, uint8_t copy[TRIM_BYTES]);

/* The scale that makes what was read into what was true, at two points some 20 kPa apart or more. */
struct scale trim_scale(const struct scale *old, const int32_t read_pa[2], const int32_t true_pa[2]);

#endif

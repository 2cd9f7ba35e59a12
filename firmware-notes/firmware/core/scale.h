/* SPDX-License-Identifier: Apache-2.0 */
#ifndef THUMBSEAL_SCALE_H
#define THUMBSEAL_SCALE_H

#include <stdbool.h>
#include <stdint.h>

/*
 * From a mean code to a pressure. Element and converter share one supply, so that the code is a
 * share of it and the supply falls out.
 */
struct scale {
    int32_t gain;            /* 1/4096 Pa for 1/16 of a step */
    int32_t at_zero;         /* 1/4096 Pa at code 0 */
};

enum {
    SCALE_ONE = 4096,
    CODE_END = 1023 * 16,    /* largest mean code */
    CODE_MARGIN = CODE_END / 50 /* within 2 % of either end the element is not believed */
};

/* Span of an element at most, in Pa; a trim may add a fifth. No enum: int has 16 bits on the board. */
#define SCALE_MOST_PA 300000L

/* Two points of an element as its data sheet gives them, the lower pressure first. */
struct element {
    int32_t low_pa;
    int32_t high_pa;
    int16_t low_share;       /* its output there, in thousandths of the supply */
    int16_t high_share;
};

/* Overflows nowhere for pressures within SCALE_MOST_PA, of which that many thousandths are left. */
enum { SHARES_APART = 750 };

struct scale scale_of_element(const struct element *element);

/* Rounded to the nearest Pa. */
int32_t scale_pressure(const struct scale *scale, uint16_t sixteenths);

/* Whether the signal is so near an end that a wire may be off or the element overloaded. */
bool scale_is_at_end(uint16_t sixteenths);

#endif

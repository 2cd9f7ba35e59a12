/* SPDX-License-Identifier: Apache-2.0 */
#ifndef THUMBSEAL_MEAN_H
#define THUMBSEAL_MEAN_H

#include <stdbool.h>
#include <stdint.h>

/*
 * Makes a sample of readings that follow one another at equal distances: their mean. That is a
 * low-pass as well: with N readings, T apart, a sine of f is left at
 * sin(pi f N T) / (N sin(pi f T)). At 100 samples a second of 16 readings it is 3 dB down at 44 Hz
 * and lets through nothing of 100 Hz and its multiples. It delays nothing, for a sample bears the
 * time of its middle.
 */
enum {
    READING_LOST = 0xFFFF,   /* the converter gave none */
    READINGS_MOST = 16,      /* to a sample */
    MEAN_LOST = 0xFFFF,      /* a reading of the sample was lost */
    MEAN_STEPS = 16          /* a mean is given in 1/16 of a step of the converter */
};

/* How readings become samples. */
struct pace {
    uint8_t readings;        /* to a sample: 1, 2, 4, 8 or 16 */
    uint16_t reading_us;     /* from one reading to the next */
};

/* A sample before it is made a pressure. */
struct sample {
    uint32_t n;              /* its number */
    uint32_t t;              /* middle of its readings, microseconds */
    uint16_t sixteenths;     /* mean code in 1/16, or MEAN_LOST */
};

/* A mean that is being made. */
struct mean {
    struct pace pace;
    struct sample next;
    uint32_t t;              /* of the next reading */
    uint16_t sum;
    uint8_t count;
};

/* n: number of the first sample; t: time of the first reading. */
void mean_start(struct mean *mean, struct pace pace, uint32_t n, uint32_t t);

/* Takes a code of 10 bits or READING_LOST; whether a sample is whole, and then gives it. */
bool mean_take(struct mean *mean, uint16_t code, struct sample *whole);

#endif

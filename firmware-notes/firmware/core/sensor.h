/* SPDX-License-Identifier: Apache-2.0 */
#ifndef THUMBSEAL_SENSOR_H
#define THUMBSEAL_SENSOR_H

#include <stdbool.h>
#include <stdint.h>

#include "faults.h"
#include "key.h"
#include "mean.h"
#include "record.h"
#include "trim.h"

/*
 * A sensor: readings go in from an interrupt, lines come out of the main program. The two share
 * nothing but queues of which one writes and the other reads.
 */

/* What the same firmware has in common on all its boards. */
struct product {
    const char *name;        /* of a sensor without a trim of its own */
    const char *firmware;
    struct element element;
    uint16_t rate_hz;
    struct pace pace;
    uint32_t first_n;        /* both 0, but where a test wants to see them wrap */
    uint32_t first_t;        /* clock at the start; the first reading is one later */
};

/* A sample on its way, with what was found wrong while it was made. */
struct taken {
    struct sample sample;
    uint8_t faults;
};

struct pressed {
    uint32_t t;
    bool down;
};

enum {
    SAMPLES_WAITING = 16,    /* a power of two, as the next */
    KEYS_WAITING = 4,
    CHECKED_AFTER = 12       /* readings until what has gone wrong is handed to sensor_checked() */
};

struct sensor {
    const struct product *product;
    struct trim trim;
    enum trim_state trim_state;
    uint8_t once;            /* faults to be told once */
    uint8_t later;           /* samples that cover the time of a check */
    struct fault_log log;
    bool has_said_who;
    uint32_t said_who;

    struct mean mean;        /* of the interrupt */
    struct key key;
    uint8_t found;
    volatile uint16_t reference; /* code of the inner reference, for who trims the sensor */

    struct taken samples[SAMPLES_WAITING];
    struct pressed keys[KEYS_WAITING];
    volatile uint8_t samples_in, samples_out;
    volatile uint8_t keys_in, keys_out;
};

/*
 * Before the first reading. memory: what lies in the memory that outlives the supply, see trim.h;
 * why: faults for which the board started anew.
 */
void sensor_start(struct sensor *sensor, const struct product *product,
                  const uint8_t memory[TRIM_STEP + TRIM_BYTES], uint8_t why);

/* From the interrupt that is called for each reading: its code or READING_LOST, and the button. */
void sensor_reading(struct sensor *sensor, uint16_t code, bool down);

/*
 * From an interrupt: codes of the inner reference and of ground, each taken CHECKED_AFTER readings
 * ago or less, and again before so many have passed.
 */
void sensor_checked(struct sensor *sensor, uint16_t reference, uint16_t ground);

/* From the main program, again and again: sends what there is room for. */
void sensor_work(struct sensor *sensor);

#endif

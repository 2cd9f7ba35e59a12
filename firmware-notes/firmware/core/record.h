/* SPDX-License-Identifier: Apache-2.0 */
#ifndef THUMBSEAL_RECORD_H
#define THUMBSEAL_RECORD_H

#include <stdbool.h>
#include <stdint.h>

/*
 * Lines of wire protocol 1. Each function writes a whole line into the room, its checksum and end
 * included, and gives its length; 0 where it would be longer than the protocol allows.
 */
enum {
    RECORD_LONGEST = 96,              /* without its end */
    RECORD_ROOM = RECORD_LONGEST + 1, /* with it */
    NAME_LONGEST = 32                 /* of a sensor, a firmware or a fault */
};

/* What a sensor says of itself. */
struct identity {
    const char *sensor;   /* printable ASCII without space, comma and star */
    const char *firmware; /* the same */
    char sense;           /* 'G' relative to ambient, 'A' absolute */
    int32_t low_pa;       /* the range in which it can be believed */
    int32_t high_pa;
    uint16_t rate_hz;
};

uint8_t record_identity(char room[RECORD_ROOM], const struct identity *identity);

/* n: number of the sample; t: microseconds; both wrap from 2^32 - 1 to 0. */
uint8_t record_sample(char room[RECORD_ROOM], uint32_t n, uint32_t t, int32_t pa);

/* Ambient pressure in Pa and temperature in 0.01 degC; either may be unknown. */
struct ambient {
    bool has_pressure;
    bool has_temperature;
    int32_t pa;
    int32_t centidegrees;
};

uint8_t record_ambient(char room[RECORD_ROOM], uint32_t t, const struct ambient *ambient);

uint8_t record_key(char room[RECORD_ROOM], uint32_t t, bool down);

uint8_t record_fault(char room[RECORD_ROOM], uint32_t t, const char *code);

/* A record of the maker's own: a type of two letters or more, and one number. */
uint8_t record_own(char room[RECORD_ROOM], const char *type, uint32_t t, int32_t value);

#endif

/* SPDX-License-Identifier: Apache-2.0 */
#include "faults.h"

#include "board.h"
#include "record.h"

enum {
    AGAIN_US = 1000000,
    GROUND_MOST = 8,         /* codes */
    REFERENCE_LEAST = 60,    /* a supply of 19 V: the board would not be alive */
    /* 4.0 V to 6.3 V with a reference of 1.1 V, which differs by 10 % from piece to piece. */
    UNKNOWN_LOW = 180,
    UNKNOWN_HIGH = 280,
    TENTH = 10               /* of the usual: a supply of 5 V may be 4.55 to 5.55 V */
};

static const char *const codes[FAULT_KINDS] = {"ADC", "POWER", "RANGE", "TRIM", "WATCHDOG"};

/* After a second it is as if it had never been told, or a wrap of the clock would hide the next. */
static void forget(struct fault_log *log, uint8_t kind, uint32_t t)
{
    if ((uint32_t)(t - log->at[kind]) >= AGAIN_US)
        log->told = (uint8_t)(log->told & ~(1u << kind));
}

static bool is_due(const struct fault_log *log, uint8_t faults, uint8_t kind)
{
    return (faults & 1u << kind) && !(log->told & 1u << kind);
}

static bool tell(struct fault_log *log, uint8_t kind, uint32_t t)
{
    char room[RECORD_ROOM];
    uint8_t length = record_fault(room, t, codes[kind]);
    if (board_room() < length)
        return false;
    board_send(room, length);
    log->told = (uint8_t)(log->told | 1u << kind);
    log->at[kind] = t;
    return true;
}

bool faults_tell(struct fault_log *log, uint8_t faults, uint32_t t)
{
    for (uint8_t kind = 0; kind < FAULT_KINDS; kind++) {
        forget(log, kind, t);
        if (is_due(log, faults, kind) && !tell(log, kind, t))
            return false;
    }
    return true;
}

uint8_t faults_of_check(uint16_t reference, uint16_t ground, uint16_t usual)
{
    uint16_t low = usual == 0 ? UNKNOWN_LOW : (uint16_t)(usual - usual / TENTH);
    uint16_t high = usual == 0 ? UNKNOWN_HIGH : (uint16_t)(usual + usual / TENTH);
    if (ground > GROUND_MOST || reference < REFERENCE_LEAST)
        return FAULT_ADC;
    return reference < low || reference > high ? FAULT_POWER : 0;
}

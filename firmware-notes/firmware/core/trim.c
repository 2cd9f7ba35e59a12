/* SPDX-License-Identifier: Apache-2.0 */
#include "trim.h"

#include <stdbool.h>
#include <string.h>

#include "crc16.h"

/* Places within a copy; numbers with their lowest byte first. */
enum { MARK = 0, SENSOR = 2, GAIN = 22, AT_ZERO = 26, SUPPLY = 30, CHECK = 34 };

static const uint8_t mark[] = {0x54, 0x31}; /* kind and version of what follows */

static uint32_t number(const uint8_t *bytes, uint8_t count)
{
    uint32_t value = 0;
    while (count-- > 0)
        value = value << 8 | bytes[count];
    return value;
}

static void put_number(uint8_t *bytes, uint32_t value, uint8_t count)
{
    for (uint8_t i = 0; i < count; i++) {
        bytes[i] = (uint8_t)value;
        value >>= 8;
    }
}

static bool is_whole(const uint8_t *copy)
{
    return memcmp(copy + MARK, mark, sizeof mark) == 0
           && number(copy + CHECK, 2) == crc16(copy, CHECK) && copy[SENSOR] != '\0';
}

static bool is_blank(const uint8_t *copy)
{
    for (uint8_t i = 0; i < TRIM_BYTES; i++)
        if (copy[i] != 0xFF)
            return false;
    return true;
}

static void take(const uint8_t *copy, struct trim *trim)
{
    memcpy(trim->sensor, copy + SENSOR, TRIM_SENSOR);
    trim->sensor[TRIM_SENSOR] = '\0';
    trim->scale.gain = (int32_t)number(copy + GAIN, 4);
    trim->scale.at_zero = (int32_t)number(copy + AT_ZERO, 4);
    trim->supply_code = (uint16_t)number(copy + SUPPLY, 2);
}

enum trim_state trim_read(const uint8_t bytes[TRIM_STEP + TRIM_BYTES], struct trim *trim)
{
    bool blank = true;
    for (uint8_t i = 0; i < TRIM_COPIES; i++) {
        const uint8_t *copy = bytes + i * TRIM_STEP;
        if (is_whole(copy)) {
            take(copy, trim);
            return TRIM_GOOD;
        }
        blank = blank && is_blank(copy);
    }
    return blank ? TRIM_BLANK : TRIM_SPOILT;
}

void trim_write(const struct trim *trim, uint8_t copy[TRIM_BYTES])
{
    memset(copy, 0, TRIM_BYTES);
    memcpy(copy + MARK, mark, sizeof mark);
    memcpy(copy + SENSOR, trim->sensor, strlen(trim->sensor));
    put_number(copy + GAIN, (uint32_t)trim->scale.gain, 4);
    put_number(copy + AT_ZERO, (uint32_t)trim->scale.at_zero, 4);
    put_number(copy + SUPPLY, trim->supply_code, 2);
    put_number(copy + CHECK, crc16(copy, CHECK), 2);
}

static int64_t rounded(int64_t number, int64_t by)
{
    int64_t half = (by < 0 ? -by : by) / 2;
    return (number + (number < 0 ? -half : half)) / by;
}

struct scale trim_scale(const struct scale *old, const int32_t read_pa[2], const int32_t true_pa[2])
{
    int64_t was = (int64_t)read_pa[1] - read_pa[0];
    int64_t is = (int64_t)true_pa[1] - true_pa[0];
    int64_t from_first = old->at_zero - (int64_t)read_pa[0] * SCALE_ONE;
    struct scale scale = {
        (int32_t)rounded(old->gain * is, was),
        (int32_t)(rounded(from_first * is, was) + (int64_t)true_pa[0] * SCALE_ONE),
    };
    return scale;
}

/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Makes the trim of a sensor: an Intel HEX file for its EEPROM, from two points against a good
 * gauge.
 *
 *   trim ID READ1 TRUE1 READ2 TRUE2 [SUPPLY_CODE] > trim.hex
 *
 * ID: 1 to 20 printable signs without space, comma and star. READ: what the sensor said before it
 * was trimmed, Pa; TRUE: what the gauge said, Pa, negative under vacuum. SUPPLY_CODE: from the
 * sensor's SUPPLY record, with the supply in order.
 */
#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "../boards/atmega328p/settings.h"
#include "trim.h"

enum { HEX_ROW = 16, LEAST_APART = 20000, MOST_OFF_PERCENT = 20, MOST_OFF = 20000 };

/* The scale by which READ was made: of the firmware, so both are made with the same EXTRA. */
static const struct element element = {LOW_PA, HIGH_PA, LOW_SHARE, HIGH_SHARE};

static bool is_name(const char *text)
{
    size_t length = strlen(text);
    if (length == 0 || length > TRIM_SENSOR)
        return false;
    for (; *text != '\0'; text++)
        if (*text <= ' ' || *text > '~' || *text == ',' || *text == '*')
            return false;
    return true;
}

static bool take_number(const char *text, int32_t low, int32_t high, int32_t *number)
{
    char *end;
    long value = strtol(text, &end, 10);
    *number = (int32_t)value;
    return *text != '\0' && *end == '\0' && value >= low && value <= high;
}

/* Intel HEX: count, address, kind, bytes, and what brings the sum of all to 0. */
static void print_row(unsigned address, const uint8_t *bytes, unsigned count)
{
    unsigned sum = count + (address >> 8) + (address & 0xFF);
    printf(":%02X%04X00", count, address);
    for (unsigned i = 0; i < count; i++) {
        printf("%02X", bytes[i]);
        sum += bytes[i];
    }
    printf("%02X\n", -sum & 0xFF);
}

static void print_hex(const uint8_t *copy)
{
    for (unsigned start = 0; start <= TRIM_STEP; start += TRIM_STEP)
        for (unsigned at = 0; at < TRIM_BYTES; at += HEX_ROW) {
            unsigned left = TRIM_BYTES - at;
            print_row(start + at, copy + at, left < HEX_ROW ? left : HEX_ROW);
        }
    puts(":00000001FF");
}

static int refuse(const char *why)
{
    fprintf(stderr, "trim: %s\n", why);
    return 2;
}

/* Another unit, or two numbers exchanged, show in the slope; a gauge of absolute pressure does not. */
static bool is_likely(const int32_t read[2], const int32_t is[2])
{
    int64_t was = (int64_t)read[1] - read[0];
    int64_t now = (int64_t)is[1] - is[0];
    int64_t off = 100 * llabs(now - was);
    bool near = llabs((int64_t)is[0] - read[0]) <= MOST_OFF
                && llabs((int64_t)is[1] - read[1]) <= MOST_OFF;
    return near && llabs(was) >= LEAST_APART && off <= MOST_OFF_PERCENT * llabs(was);
}

int main(int count, char **words)
{
    int32_t read[2], is[2], supply = 0;
    uint8_t copy[TRIM_BYTES];
    if (count != 6 && count != 7)
        return refuse("ID READ1 TRUE1 READ2 TRUE2 [SUPPLY_CODE]");
    if (!is_name(words[1]))
        return refuse("ID: 1 to 20 signs without space, comma and star");
    for (int i = 0; i < 2; i++)
        if (!take_number(words[2 + 2 * i], -150000, 150000, &read[i])
            || !take_number(words[3 + 2 * i], -150000, 150000, &is[i]))
            return refuse("READ and TRUE are whole Pa, negative under vacuum: -80000");
    if (count == 7 && !take_number(words[6], 180, 280, &supply))
        return refuse("SUPPLY_CODE: 180 to 280, from the SUPPLY record");
    if (!is_likely(read, is))
        return refuse("the points are less than 20 kPa apart, or one is more than 20 kPa off, or the"
                      " scale is more than 20 % off: look at unit, sign, order, and whether the"
                      " gauge reads 0 in the room");
    struct trim trim = {.supply_code = (uint16_t)supply};
    struct scale usual = scale_of_element(&element);
    strcpy(trim.sensor, words[1]);
    trim.scale = trim_scale(&usual, read, is);
    trim_write(&trim, copy);
    print_hex(copy);
    return 0;
}

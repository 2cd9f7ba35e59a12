/* SPDX-License-Identifier: Apache-2.0 */
/* The parts of the core, each by itself. */
#include <math.h>
#include <string.h>

#include "check.h"
#include "crc16.h"
#include "faults.h"
#include "key.h"
#include "mean.h"
#include "record.h"
#include "scale.h"
#include "trim.h"

/* Check value of the CRC catalogue for CRC-16/IBM-3740. */
static void crc_gives_the_check_value(void)
{
    CHECK(crc16("123456789", 9) == 0x29B1);
    CHECK(crc16("", 0) == 0xFFFF);
}

static void is_line(const char *room, uint8_t length, const char *line)
{
    CHECK(length == strlen(line) && memcmp(room, line, length) == 0);
}

/* The lines are worked out in wire-protocol.md. */
static void records_are_the_worked_bytes(void)
{
    char room[RECORD_ROOM];
    const struct identity identity = {"tp-01", "1.0.0", 'G', -115000, 15000, 100};
    const struct ambient both = {true, true, 87510, 3120}, heat = {false, true, 0, 3120};
    is_line(room, record_sample(room, 0, 1200345, -35), "S,0,1200345,-35*EAE5\n");
    is_line(room, record_sample(room, UINT32_MAX, UINT32_MAX, -80012),
            "S,4294967295,4294967295,-80012*C32D\n");
    is_line(room, record_identity(room, &identity), "I,1,tp-01,1.0.0,G,-115000,15000,100*BF2A\n");
    is_line(room, record_ambient(room, 1200345, &both), "A,1200345,87510,3120*9343\n");
    is_line(room, record_ambient(room, 1200345, &heat), "A,1200345,,3120*2FE3\n");
    is_line(room, record_key(room, 1300000, true), "K,1300000,1*F30F\n");
    is_line(room, record_fault(room, 1500000, "RANGE"), "F,1500000,RANGE*5425\n");
    is_line(room, record_own(room, "BATT", 1500000, 3712), "BATT,1500000,3712*67C1\n");
}

static void no_line_is_longer_than_the_protocol_allows(void)
{
    char room[RECORD_ROOM], code[RECORD_LONGEST + 1] = "";
    for (size_t i = 0; i < RECORD_LONGEST; i++) {
        uint8_t length = record_fault(room, UINT32_MAX, code);
        size_t whole = strlen("F,4294967295,") + i + 5;
        CHECK(length == (whole <= RECORD_LONGEST ? whole + 1 : 0));
        code[i] = 'X';
    }
}

/* Gives the mean's amplitude for a sine through all samples' middles, by fitting at their times. */
static double left_of(double hertz, uint8_t readings)
{
    struct mean mean;
    struct sample whole;
    double in_phase = 0, across = 0;
    int count = 0;
    mean_start(&mean, (struct pace){readings, 625}, 0, 0);
    for (uint32_t i = 0; i < 1600 * 60; i++) {
        double code = 512 + 400 * sin(2 * M_PI * hertz * i * 625e-6);
        if (mean_take(&mean, (uint16_t)lround(code), &whole)) {
            double phase = 2 * M_PI * hertz * whole.t * 1e-6;
            double value = whole.sixteenths / 16.0 - 512;
            in_phase += value * sin(phase);
            across += value * cos(phase);
            count++;
        }
    }
    return hypot(in_phase, across) * 2 / count / 400;
}

/* The response of a moving mean: sin(pi f N T) / (N sin(pi f T)). */
static void mean_is_the_low_pass_it_says(void)
{
    static const double hertz[] = {1.3, 11.7, 31.1, 43.9, 61.3, 83.9};
    for (size_t i = 0; i < sizeof hertz / sizeof hertz[0]; i++) {
        double angle = M_PI * hertz[i] * 625e-6;
        double expected = fabs(sin(16 * angle) / (16 * sin(angle)));
        CHECK(fabs(left_of(hertz[i], 16) - expected) < 0.002);
    }
    CHECK(fabs(left_of(44.3, 16) - sqrt(0.5)) < 0.003);
}

static void mean_bears_the_time_of_its_middle_across_a_wrap(void)
{
    struct mean mean;
    struct sample whole;
    mean_start(&mean, (struct pace){16, 625}, UINT32_MAX, UINT32_MAX - 4999);
    for (int i = 0; i < 15; i++)
        CHECK(!mean_take(&mean, 100, &whole));
    CHECK(mean_take(&mean, 100, &whole));
    CHECK(whole.n == UINT32_MAX && whole.t == (uint32_t)(UINT32_MAX - 4999 + 4687));
    CHECK(whole.sixteenths == 1600);
    for (int i = 0; i < 16; i++)
        mean_take(&mean, i == 3 ? READING_LOST : 100, &whole);
    CHECK(whole.n == 0 && whole.t == 9687 && whole.sixteenths == MEAN_LOST);
    for (int i = 0; i < 16; i++)
        mean_take(&mean, 1023, &whole);
    CHECK(whole.n == 1 && whole.sixteenths == CODE_END);
}

static const struct element usual = {-115000, 15000, 100, 900};

/* Against the formula of wiring.md, in floating point, at every code that can be. */
static void agrees_with_its_formula(const struct element *element, double within)
{
    const struct scale scale = scale_of_element(element);
    for (uint32_t code = 0; code <= CODE_END; code++) {
        double share = code / 16.0 / 1024 - element->low_share / 1000.0;
        double pa = element->low_pa + (element->high_pa - element->low_pa) * share
                                          / ((element->high_share - element->low_share) / 1000.0);
        CHECK(fabs(scale_pressure(&scale, (uint16_t)code) - pa) < within);
    }
}

/*
 * Half a unit of the gain is 2 Pa at the last code, and rounding adds half a pascal. The last two
 * elements are the largest that a build takes.
 */
static void scale_agrees_with_its_formula(void)
{
    static const struct element elements[] = {{-115000, 0, 40, 920}, {-100000, 0, 50, 950},
                                              {-300000, 0, 200, 950}, {0, 300000, 25, 775}};
    agrees_with_its_formula(&usual, 1.0);
    for (size_t i = 0; i < sizeof elements / sizeof elements[0]; i++)
        agrees_with_its_formula(&elements[i], 2.6);
    CHECK(scale_is_at_end(0) && scale_is_at_end(CODE_END) && !scale_is_at_end(CODE_END / 2));
}

static void trim_survives_what_happens_to_its_memory(void)
{
    uint8_t memory[TRIM_STEP + TRIM_BYTES];
    struct trim trim = {"tp-07", {40000, -500000000}, 226}, read;
    memset(memory, 0xFF, sizeof memory);
    CHECK(trim_read(memory, &read) == TRIM_BLANK);
    trim_write(&trim, memory);
    CHECK(trim_read(memory, &read) == TRIM_GOOD && strcmp(read.sensor, "tp-07") == 0);
    CHECK(read.scale.gain == 40000 && read.scale.at_zero == -500000000 && read.supply_code == 226);
    for (int bit = 0; bit < TRIM_BYTES * 8; bit++) {
        memory[bit / 8] ^= (uint8_t)(1 << bit % 8);
        CHECK(trim_read(memory, &read) == TRIM_SPOILT);
        trim_write(&trim, memory + TRIM_STEP);
        CHECK(trim_read(memory, &read) == TRIM_GOOD && read.scale.gain == 40000);
        memset(memory + TRIM_STEP, 0xFF, TRIM_BYTES);
        memory[bit / 8] ^= (uint8_t)(1 << bit % 8);
    }
}

static void trimmed_points_are_true(void)
{
    const struct scale old = scale_of_element(&usual);
    const int32_t read[] = {-850, -78400}, is[] = {0, -80000};
    const struct scale trimmed = trim_scale(&old, read, is);
    for (uint32_t code = 0; code <= CODE_END; code++) {
        double was = scale_pressure(&old, (uint16_t)code);
        double line = (was + 850) * 80000 / 77550;
        /* Half a unit of the gain is 2 Pa at the last code; each rounding adds half a pascal. */
        CHECK(fabs(scale_pressure(&trimmed, (uint16_t)code) - line) < 3.1);
    }
}

/* The sanitizer is the judge: the largest elements, by the largest trims that the tool makes. */
static void no_trim_overflows(void)
{
    static const struct element elements[] = {{-300000, 0, 225, 975}, {0, 300000, 25, 775}};
    static const int32_t read[] = {0, -100000}, is[][2] = {{20000, -100000}, {-20000, -120000},
                                                           {0, -120000}, {20000, -80000}};
    for (size_t i = 0; i < sizeof elements / sizeof elements[0]; i++)
        for (size_t j = 0; j < sizeof is / sizeof is[0]; j++) {
            const struct scale old = scale_of_element(&elements[i]);
            const struct scale trimmed = trim_scale(&old, read, is[j]);
            for (uint32_t code = 0; code <= CODE_END; code += 16) {
                double was = old.at_zero / 4096.0 + old.gain / 4096.0 * code;
                double line = is[j][0] + (is[j][1] - is[j][0]) * was / -100000;
                CHECK(fabs(scale_pressure(&trimmed, (uint16_t)code) - line) < 3.1);
            }
        }
}

static void key_counts_once_it_holds(void)
{
    struct key key = {false, false, 0};
    uint32_t t = UINT32_MAX - 30000; /* right across a wrap */
    for (int i = 0; i < 40; i++, t += 625)
        CHECK(!key_look(&key, t, i % 3 != 0)); /* bounces */
    uint32_t began = t;
    CHECK(!key_look(&key, t, false));
    CHECK(!key_look(&key, t += 625, true));
    began = t;
    while ((uint32_t)(t - began) < KEY_STEADY_US - 625)
        CHECK(!key_look(&key, t += 625, true));
    CHECK(key_look(&key, t += 625, true) && key.down && key.since == began);
    for (int i = 0; i < 100; i++)
        CHECK(!key_look(&key, t += 625, true));
}

/* Codes of a reference of 1.1 V: 1.1 / supply * 1024. */
static void checks_tell_supply_from_converter(void)
{
    CHECK(faults_of_check(225, 0, 0) == 0);           /* 5.0 V */
    CHECK(faults_of_check(289, 0, 0) == FAULT_POWER); /* 3.9 V */
    CHECK(faults_of_check(250, 0, 0) == 0);           /* 4.5 V, or a reference that is 10 % high */
    CHECK(faults_of_check(250, 0, 225) == FAULT_POWER);
    CHECK(faults_of_check(200, 0, 225) == FAULT_POWER);
    CHECK(faults_of_check(235, 2, 225) == 0);
    CHECK(faults_of_check(431, 431, 225) == FAULT_ADC);
    CHECK(faults_of_check(225, 225, 225) == FAULT_ADC);
    CHECK(faults_of_check(0, 0, 225) == FAULT_ADC);
}

int main(void)
{
    crc_gives_the_check_value();
    records_are_the_worked_bytes();
    no_line_is_longer_than_the_protocol_allows();
    mean_is_the_low_pass_it_says();
    mean_bears_the_time_of_its_middle_across_a_wrap();
    scale_agrees_with_its_formula();
    trim_survives_what_happens_to_its_memory();
    trimmed_points_are_true();
    no_trim_overflows();
    key_counts_once_it_holds();
    checks_tell_supply_from_converter();
    puts("parts: good");
    return 0;
}

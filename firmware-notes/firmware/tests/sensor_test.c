/* SPDX-License-Identifier: Apache-2.0 */
/* The whole core on a board that is made up. */
#include <string.h>

#include "board.h"
#include "check.h"
#include "sensor.h"

enum { SENT_ROOM = 1 << 20, GOOD = 700, REFERENCE = 225 };

static const struct product product = {
    .name = "untrimmed", .firmware = "1.0.0", .element = {-115000, 15000, 100, 900},
    .rate_hz = 100, .pace = {16, 625},
};

static struct sensor sensor;
static uint8_t memory[TRIM_STEP + TRIM_BYTES];
static uint32_t now;
static char sent[SENT_ROOM];
static size_t length;
static double room_left, bytes_a_second;

uint32_t board_now(void)
{
    return now;
}

uint8_t board_room(void)
{
    return room_left < 255 ? (uint8_t)room_left : 255;
}

void board_send(const char *bytes, uint8_t count)
{
    CHECK(count <= board_room());
    CHECK(length + count < SENT_ROOM);
    memcpy(sent + length, bytes, count);
    length += count;
    room_left -= count;
}

static void start(void)
{
    memset(memory, 0xFF, sizeof memory);
    now = 0;
    length = 0;
    room_left = 255;
    bytes_a_second = 11520;
}

/* One slot: a reading, a check, and the main program at some time after. */
static void slot(uint16_t code, uint16_t reference, bool down)
{
    now += 625;
    room_left += bytes_a_second * 625e-6;
    if (room_left > 255)
        room_left = 255;
    sensor_reading(&sensor, code, down);
    sensor_checked(&sensor, reference, 0);
    sensor_work(&sensor);
}

static void slots(unsigned count, uint16_t code, uint16_t reference)
{
    while (count-- > 0)
        slot(code, reference, false);
}

static unsigned count_of(const char *beginning)
{
    unsigned count = 0;
    sent[length] = '\0';
    for (const char *line = sent; line < sent + length; line = strchr(line, '\n') + 1)
        count += strncmp(line, beginning, strlen(beginning)) == 0;
    return count;
}

static void says_who_it_is_and_sends_what_it_reads(void)
{
    start();
    sensor_start(&sensor, &product, memory, 0);
    slots(1600 * 10, GOOD, REFERENCE);
    CHECK(strncmp(sent, "I,1,untrimmed,1.0.0,G,-115000,15000,100*", 40) == 0);
    CHECK(count_of("I,") == 5 && count_of("SUPPLY,") >= 4);
    CHECK(count_of("S,") >= 998 && count_of("F,") == 0);
    CHECK(strstr(sent, "\nS,0,5312,") != NULL && strstr(sent, "\nS,1,15312,") != NULL);
}

static void sends_no_pressure_of_a_bad_supply_not_even_the_first(void)
{
    start();
    sensor_start(&sensor, &product, memory, 0);
    slots(1600, GOOD, REFERENCE);
    unsigned before = count_of("S,");
    /* The supply falls with the last reading of a sample: only the check after it can tell. */
    slots(3100, GOOD, 300);
    CHECK(count_of("S,") <= before + 1 && count_of("F,") == 2);
    slots(1600, GOOD, REFERENCE);
    CHECK(count_of("S,") >= before + 97 && count_of("F,") == 2);
}

static void sends_no_pressure_that_was_not_read(void)
{
    start();
    sensor_start(&sensor, &product, memory, 0);
    slots(1600, GOOD, REFERENCE);
    unsigned before = count_of("S,");
    slot(READING_LOST, REFERENCE, false);
    slots(1599, GOOD, REFERENCE);
    CHECK(count_of("S,") == before + 98 || count_of("S,") == before + 99);
    CHECK(count_of("F,") == 1 && strstr(sent, ",ADC*") != NULL);
}

static void tells_an_end_of_the_range_each_second_and_goes_on(void)
{
    start();
    sensor_start(&sensor, &product, memory, 0);
    slots(1600 * 5, 2, REFERENCE);
    CHECK(count_of("F,") == 5 && count_of("S,") >= 498);
    CHECK(strstr(sent, ",RANGE*") != NULL);
}

static void sends_no_pressure_by_a_spoilt_trim(void)
{
    start();
    struct trim trim = {"tp-07", {40000, -500000000}, REFERENCE};
    trim_write(&trim, memory);
    memory[5] ^= 1;
    sensor_start(&sensor, &product, memory, 0);
    slots(1600 * 3, GOOD, REFERENCE);
    CHECK(count_of("S,") == 0 && count_of("F,") == 3 && strstr(sent, ",TRIM*") != NULL);
    memory[5] ^= 1;
    start();
    trim_write(&trim, memory + TRIM_STEP);
    sensor_start(&sensor, &product, memory, 0);
    slots(1600 * 3, GOOD, REFERENCE);
    CHECK(count_of("S,") >= 298 && strncmp(sent, "I,1,tp-07,", 10) == 0);
    CHECK(count_of("SUPPLY,") == 0);
}

static void tells_once_why_it_started_anew(void)
{
    start();
    sensor_start(&sensor, &product, memory, FAULT_WATCHDOG);
    slots(1600 * 5, GOOD, REFERENCE);
    CHECK(count_of("F,") == 1 && strstr(sent, ",WATCHDOG*") != NULL);
}

/* The start tells of it by the clock, then the samples by theirs. */
static void tells_a_brown_out_that_lasts_once_a_second(void)
{
    start();
    sensor_start(&sensor, &product, memory, FAULT_POWER);
    slots(1600 * 3 - 160, GOOD, 300);
    CHECK(count_of("F,") == 3 && count_of("S,") == 0);
}

static void sends_a_key_with_the_time_at_which_it_began(void)
{
    start();
    sensor_start(&sensor, &product, memory, 0);
    slots(100, GOOD, REFERENCE);
    uint32_t began = now + 625;
    for (int i = 0; i < 200; i++)
        slot(GOOD, REFERENCE, true);
    slots(200, GOOD, REFERENCE);
    char down[RECORD_ROOM + 1] = "";
    record_key(down, began, true);
    CHECK(strstr(sent, down) != NULL && count_of("K,") == 2);
}

/* A line that takes a tenth of what comes: only whole lines, who it is among them, n tells. */
static void never_sends_half_a_line_however_slow_the_line(void)
{
    start();
    sensor_start(&sensor, &product, memory, 0);
    bytes_a_second = 300;
    slots(1600 * 60, GOOD, REFERENCE);
    CHECK(count_of("I,") >= 25 && count_of("S,") > 100);
    CHECK(count_of("I,") + count_of("S,") + count_of("SUPPLY,") == count_of(""));
    for (const char *line = sent; line < sent + length; line = strchr(line, '\n') + 1)
        CHECK(strchr(line, '\n')[-5] == '*');
    bytes_a_second = 0;
    size_t before = length;
    slots(1600 * 60, GOOD, REFERENCE);
    CHECK(length <= before + 255);
    bytes_a_second = 11520;
    unsigned samples = count_of("S,");
    slots(1600, GOOD, REFERENCE);
    CHECK(count_of("S,") >= samples + 95);
}

/* A supply that was bad only while samples had no room: the sample before it is not vouched for. */
static void remembers_what_it_found_while_there_was_no_room(void)
{
    start();
    sensor_start(&sensor, &product, memory, 0);
    slots(1600, GOOD, REFERENCE);
    room_left = bytes_a_second = 0;
    slots(16 * (SAMPLES_WAITING + 2), GOOD, REFERENCE);
    unsigned before = count_of("S,");
    slots(16, GOOD, 300);
    slots(16 * 4, GOOD, REFERENCE);
    CHECK(count_of("F,") == 0 && count_of("S,") == before);
    bytes_a_second = 11520;
    slots(1600, GOOD, REFERENCE);
    CHECK(count_of("F,") == 1 && strstr(sent, ",POWER*") != NULL);
}

/* As the board does it: the reference every 8 readings, handed over with ground 4 readings later. */
static unsigned sent_after_a_fall(const struct product *quick, unsigned falls)
{
    uint16_t seen = REFERENCE;
    start();
    bytes_a_second = 25000;
    sensor_start(&sensor, quick, memory, 0);
    for (unsigned i = 1; i < 400; i++) {
        now += 625;
        room_left = 255;
        sensor_reading(&sensor, GOOD, false);
        if (i % 8 == 3)
            seen = i < falls ? REFERENCE : 300;
        if (i % 8 == 7)
            sensor_checked(&sensor, seen, 0);
        sensor_work(&sensor);
    }
    return count_of("S,");
}

static void sends_no_sample_of_a_bad_supply_at_any_rate(void)
{
    static const uint8_t readings[] = {16, 8, 4};
    for (unsigned i = 0; i < sizeof readings; i++) {
        struct product quick = product;
        quick.pace.readings = readings[i];
        for (unsigned falls = 200; falls < 216; falls++)
            CHECK(sent_after_a_fall(&quick, falls) <= (falls - 1) / readings[i]);
    }
}

/* The clock comes round after 4294.967 s: a fault just as old as that is a new one. */
static void tells_a_fault_one_turn_of_the_clock_later(void)
{
    struct fault_log log = {0};
    start();
    CHECK(faults_tell(&log, FAULT_RANGE, 5000000) && count_of("F,") == 1);
    CHECK(faults_tell(&log, FAULT_RANGE, 5900000) && count_of("F,") == 1);
    CHECK(faults_tell(&log, 0, 7000000) && count_of("F,") == 1);
    CHECK(faults_tell(&log, FAULT_RANGE, 5300000) && count_of("F,") == 2);
}

static void counters_wrap(void)
{
    start();
    struct product late = product;
    late.first_n = UINT32_MAX - 50;
    late.first_t = UINT32_MAX - 500000;
    now = late.first_t;
    sensor_start(&sensor, &late, memory, 0);
    slots(1600, GOOD, REFERENCE);
    CHECK(strstr(sent, "\nS,4294967295,") != NULL && strstr(sent, "\nS,0,") != NULL);
    CHECK(count_of("I,") == 1 && count_of("S,") >= 98);
}

int main(void)
{
    says_who_it_is_and_sends_what_it_reads();
    sends_no_pressure_of_a_bad_supply_not_even_the_first();
    sends_no_pressure_that_was_not_read();
    tells_an_end_of_the_range_each_second_and_goes_on();
    sends_no_pressure_by_a_spoilt_trim();
    tells_once_why_it_started_anew();
    tells_a_brown_out_that_lasts_once_a_second();
    sends_a_key_with_the_time_at_which_it_began();
    never_sends_half_a_line_however_slow_the_line();
    remembers_what_it_found_while_there_was_no_room();
    sends_no_sample_of_a_bad_supply_at_any_rate();
    tells_a_fault_one_turn_of_the_clock_later();
    counters_wrap();
    puts("sensor: good");
    return 0;
}

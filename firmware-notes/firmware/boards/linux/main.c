/* SPDX-License-Identifier: Apache-2.0 */
/*
 * The same core on Linux: a sensor that is made up, on a pump that is made up, for who has no board
 * yet. It writes its lines to standard output in real time, 50 s long:
 *
 *   sensor-linux > /dev/pts/N          or through socat to a pseudo-terminal or a TCP port
 *   sensor-linux at-once > lines.txt   without waiting
 */
#define _POSIX_C_SOURCE 200809L
#include <math.h>
#include <stdbool.h>
#include <stdio.h>
#include <string.h>
#include <time.h>

#include "board.h"
#include "sensor.h"

enum { READING_US = 625, SECONDS = 50, REFERENCE = 225, ROOM = 255 };

static const double low_pa = -115000, high_pa = 15000;

static const struct product product = {
    .name = "made-up", .firmware = "1.0.0", .element = {-115000, 15000, 100, 900},
    .rate_hz = 100, .pace = {16, READING_US},
};

static uint32_t now;

uint32_t board_now(void)
{
    return now;
}

uint8_t board_room(void)
{
    return ROOM; /* a pipe waits for its reader, which no board may do */
}

void board_send(const char *bytes, uint8_t length)
{
    fwrite(bytes, 1, length, stdout);
}

/* At rest, pump on from 5 s, blocked from 11 s, open again from 41 s, off from 46 s; kPa. */
static double vacuum(double t)
{
    if (t < 5 || t > 46)
        return 0;
    if (t < 11 || t > 41)
        return 3;
    return 88 - 85 * exp(-(t - 11) / 5.2);
}

/* As a converter of 10 bits sees the element, with noise of half a step at most. */
static uint16_t code(double t)
{
    static uint32_t noise = 1;
    noise = noise * 1664525u + 1013904223u; /* Numerical Recipes, 2nd edition, section 7.1 */
    double share = 0.1 + 0.8 * (-1000 * vacuum(t) - low_pa) / (high_pa - low_pa);
    return (uint16_t)(share * 1024 + noise / 4294967296.0);
}

static void wait_for(uint64_t us)
{
    static struct timespec start;
    struct timespec until;
    if (us == READING_US)
        clock_gettime(CLOCK_MONOTONIC, &start);
    until.tv_sec = start.tv_sec + (time_t)(us / 1000000);
    until.tv_nsec = start.tv_nsec + (long)(us % 1000000) * 1000;
    if (until.tv_nsec >= 1000000000) {
        until.tv_sec++;
        until.tv_nsec -= 1000000000;
    }
    clock_nanosleep(CLOCK_MONOTONIC, TIMER_ABSTIME, &until, NULL);
}

int main(int count, char **words)
{
    static struct sensor sensor;
    uint8_t memory[TRIM_STEP + TRIM_BYTES];
    bool at_once = count == 2 && strcmp(words[1], "at-once") == 0;
    if (count > 1 && !at_once) {
        fputs("sensor-linux: at-once, or nothing\n", stderr);
        return 2;
    }
    memset(memory, 0xFF, sizeof memory);
    sensor_start(&sensor, &product, memory, 0);
    for (uint64_t us = READING_US; us < SECONDS * UINT64_C(1000000); us += READING_US) {
        now = (uint32_t)us;
        sensor_reading(&sensor, code((double)us / 1e6), false);
        sensor_checked(&sensor, REFERENCE, 0);
        sensor_work(&sensor);
        if (!at_once) {
            fflush(stdout);
            wait_for(us);
        }
    }
    return 0;
}

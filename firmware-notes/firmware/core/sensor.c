/* SPDX-License-Identifier: Apache-2.0 */
#include "sensor.h"

#include <stdatomic.h>
#include <string.h>

#include "board.h"

enum { WHO_EVERY_US = 2000000 };

/* How many samples cover the time until a check has seen what went wrong. */
static uint8_t samples_of_check(const struct product *product)
{
    uint8_t readings = product->pace.readings;
    return (uint8_t)((CHECKED_AFTER + readings - 1) / readings);
}

void sensor_start(struct sensor *sensor, const struct product *product,
                  const uint8_t memory[TRIM_STEP + TRIM_BYTES], uint8_t why)
{
    memset(sensor, 0, sizeof *sensor);
    sensor->product = product;
    sensor->once = why;
    sensor->later = samples_of_check(product);
    sensor->trim_state = trim_read(memory, &sensor->trim);
    if (sensor->trim_state != TRIM_GOOD)
        sensor->trim.scale = scale_of_element(&product->element);
    mean_start(&sensor->mean, product->pace, product->first_n,
               product->first_t + product->pace.reading_us);
}

/* An item is whole before the other side is told of it. */
static void publish(volatile uint8_t *place)
{
    atomic_signal_fence(memory_order_release);
    (*place)++;
}

static uint8_t waiting(uint8_t in, uint8_t out)
{
    uint8_t count = (uint8_t)(in - out);
    atomic_signal_fence(memory_order_acquire);
    return count;
}

/*
 * A change takes 20 ms to count, a line for it 2 ms to go out at 115200 baud, before any sample: on a
 * line that goes at all no four wait. Beyond that one is lost; the daemon needs none of them.
 */
static void push_key(struct sensor *sensor, struct pressed pressed)
{
    if (waiting(sensor->keys_in, sensor->keys_out) == KEYS_WAITING)
        return;
    sensor->keys[sensor->keys_in % KEYS_WAITING] = pressed;
    publish(&sensor->keys_in);
}

/*
 * Where there is no room the sample is lost, and the next one's number tells; what was found wrong
 * goes with the next one.
 */
static void push_sample(struct sensor *sensor, const struct sample *sample)
{
    struct taken taken = {*sample, sensor->found};
    if (waiting(sensor->samples_in, sensor->samples_out) == SAMPLES_WAITING)
        return;
    sensor->found = 0;
    sensor->samples[sensor->samples_in % SAMPLES_WAITING] = taken;
    publish(&sensor->samples_in);
}

void sensor_reading(struct sensor *sensor, uint16_t code, bool down)
{
    struct sample whole;
    if (key_look(&sensor->key, sensor->mean.t, down))
        push_key(sensor, (struct pressed){sensor->key.since, down});
    if (mean_take(&sensor->mean, code, &whole))
        push_sample(sensor, &whole);
}

void sensor_checked(struct sensor *sensor, uint16_t reference, uint16_t ground)
{
    sensor->reference = reference;
    uint8_t found = faults_of_check(reference, ground, sensor->trim.supply_code);
    sensor->found = (uint8_t)(sensor->found | found);
}

static bool send(const char *line, uint8_t length)
{
    if (board_room() < length)
        return false;
    board_send(line, length);
    return true;
}

/* An interrupt may come between its two bytes. */
static uint16_t reference_of(const struct sensor *sensor)
{
    uint16_t once, again = sensor->reference;
    do {
        once = again;
        again = sensor->reference;
    } while (once != again);
    return once;
}

/* For who trims the sensor: the supply as the inner reference sees it. It may get lost. */
static void say_supply(const struct sensor *sensor, uint32_t now)
{
    char room[RECORD_ROOM];
    uint16_t reference = reference_of(sensor);
    if (sensor->trim_state == TRIM_BLANK && reference != 0)
        send(room, record_own(room, "SUPPLY", now, reference));
}

/* Who it is, on power-up and every two seconds. */
static bool say_who(struct sensor *sensor)
{
    char room[RECORD_ROOM];
    uint32_t now = board_now();
    if (sensor->has_said_who && (uint32_t)(now - sensor->said_who) < WHO_EVERY_US)
        return true;
    const struct product *product = sensor->product;
    const struct identity identity = {
        sensor->trim_state == TRIM_GOOD ? sensor->trim.sensor : product->name,
        product->firmware, 'G', product->element.low_pa, product->element.high_pa,
        product->rate_hz};
    if (!send(room, record_identity(room, &identity)))
        return false;
    sensor->has_said_who = true;
    sensor->said_who = now;
    say_supply(sensor, now);
    return true;
}

static bool say_keys(struct sensor *sensor)
{
    char room[RECORD_ROOM];
    while (waiting(sensor->keys_in, sensor->keys_out) > 0) {
        const struct pressed *pressed = &sensor->keys[sensor->keys_out % KEYS_WAITING];
        if (!send(room, record_key(room, pressed->t, pressed->down)))
            return false;
        publish(&sensor->keys_out);
    }
    return true;
}

static uint8_t faults_of(const struct sensor *sensor, const struct taken *taken)
{
    uint8_t faults = taken->faults;
    if (taken->sample.sixteenths == MEAN_LOST)
        faults = (uint8_t)(faults | FAULT_ADC);
    else if (scale_is_at_end(taken->sample.sixteenths))
        faults |= FAULT_RANGE;
    if (sensor->trim_state == TRIM_SPOILT)
        faults |= FAULT_TRIM;
    return faults;
}

static bool say_sample(struct sensor *sensor, const struct taken *taken, uint8_t faults)
{
    char room[RECORD_ROOM];
    const struct sample *sample = &taken->sample;
    if (!faults_tell(&sensor->log, faults, sample->t))
        return false;
    if (faults & FAULTS_WITHOUT_PRESSURE)
        return true;
    int32_t pa = scale_pressure(&sensor->trim.scale, sample->sixteenths);
    return send(room, record_sample(room, sample->n, sample->t, pa));
}

/*
 * A sample waits for the check after it: what is found wrong then may have begun within it.
 */
static void say_samples(struct sensor *sensor)
{
    uint8_t later = sensor->later;
    while (waiting(sensor->samples_in, sensor->samples_out) > later) {
        uint8_t out = sensor->samples_out;
        const struct taken *taken = &sensor->samples[out % SAMPLES_WAITING];
        uint8_t faults = faults_of(sensor, taken);
        for (uint8_t i = 1; i <= later; i++)
            faults |= sensor->samples[(uint8_t)(out + i) % SAMPLES_WAITING].faults;
        if (!say_sample(sensor, taken, faults))
            return;
        publish(&sensor->samples_out);
    }
}

static bool say_once(struct sensor *sensor)
{
    if (sensor->once == 0)
        return true;
    if (!faults_tell(&sensor->log, sensor->once, board_now()))
        return false;
    sensor->once = 0;
    return true;
}

void sensor_work(struct sensor *sensor)
{
    /* The rare lines first: where room is short, samples would never leave any for them. */
    if (say_who(sensor) && say_once(sensor) && say_keys(sensor))
        say_samples(sensor);
}

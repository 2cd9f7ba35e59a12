/*
 * A sensor for wire protocol 1 in portable C99: an analogue pressure sensor on a 12 bit ADC,
 * read 1000 times a second, ten readings averaged into each sample.
 *
 * Your board gives the six board_ functions, calls sensor_tick() from a 1 kHz timer interrupt and
 * sensor_loop() without pause from its main program. On a computer, compile with -DON_A_COMPUTER
 * to get a made-up board that prints eight seconds of lines.
 *
 * SPDX-License-Identifier: Apache-2.0
 */
#include <stdbool.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

uint32_t board_micros(void);               /* free running, wraps from 2^32 - 1 to 0 */
int board_adc(void);                       /* 0 to 4095, or -1 when the ADC did not answer */
bool board_key_down(void);                 /* start key, not debounced */
int board_write_room(void);                /* bytes board_write takes without waiting */
void board_write(const char *bytes, int length);
void board_critical(bool begin);           /* interrupts off, and on again */

#define SENSOR_ID "tp-01"
#define FIRMWARE "1.0.0"
#define LOW_PA (-115000L)                  /* pressure at 10 % of the supply */
#define HIGH_PA 15000L                     /* pressure at 90 % of the supply */
#define ADC_CODES 4096
#define READINGS 10                        /* to a sample */
#define RATE_HZ 100
#define FULL ((int32_t)ADC_CODES * READINGS)
#define IDENTITY_EVERY 2000000u            /* microseconds */
#define FAULT_EVERY 1000000u
#define KEY_STEADY 20000u
#define LONGEST_BODY 91                    /* 96 less the star and four digits */
#define WAITING 16                         /* samples that fit between interrupt and main loop */

struct sample { uint32_t n, t; int32_t sum; };   /* sum below 0: the ADC failed */

static struct sample waiting[WAITING];
static volatile uint8_t first_waiting, number_waiting;

uint16_t crc16(const char *body, int length)
{
    uint16_t crc = 0xFFFF;
    for (int i = 0; i < length; i++) {
        crc ^= (uint16_t)((uint16_t)(uint8_t)body[i] << 8);
        for (int bit = 0; bit < 8; bit++)
            crc = (uint16_t)(crc & 0x8000 ? (crc << 1) ^ 0x1021 : crc << 1);
    }
    return crc;
}

/* The whole line or nothing: false when it does not fit, and then nothing was sent. */
static bool send_line(const char *body)
{
    char line[LONGEST_BODY + 7];
    int body_length = (int)strlen(body);
    int length = snprintf(line, sizeof line, "%s*%04X\n", body, (unsigned)crc16(body, body_length));
    if (length < 0 || length >= (int)sizeof line || board_write_room() < length)
        return false;
    board_write(line, length);
    return true;
}

static void keep(struct sample s)
{
    if (number_waiting < WAITING)          /* when full, this one is lost: a gap in n says so */
        waiting[(first_waiting + number_waiting++) % WAITING] = s;
}

void sensor_tick(void)
{
    static struct sample now;
    static int readings;
    static uint32_t first_t;
    uint32_t t = board_micros();           /* as near to the conversion as the board allows */
    int code = board_adc();
    if (readings == 0) {
        first_t = t;
        now.sum = 0;
    }
    now.sum = code < 0 || now.sum < 0 ? -1 : now.sum + code;
    if (++readings == READINGS) {
        now.t = first_t + (t - first_t) / 2;   /* the middle of the readings, right across a wrap */
        keep(now);
        now.n++;
        readings = 0;
    }
}

static int32_t pascals(int32_t sum)
{
    int64_t above = (int64_t)(HIGH_PA - LOW_PA) * (10 * (int64_t)sum - FULL);
    int64_t codes = 8 * (int64_t)FULL;
    return (int32_t)(LOW_PA + (above + (above < 0 ? -codes : codes) / 2) / codes);
}

static void send_fault(uint32_t t, const char *code)
{
    static const char *last_code = "";
    static uint32_t last_t;
    char body[LONGEST_BODY + 1];
    if (code == last_code && t - last_t < FAULT_EVERY)
        return;
    snprintf(body, sizeof body, "F,%lu,%s", (unsigned long)t, code);
    if (send_line(body)) {
        last_code = code;
        last_t = t;
    }
}

static bool send_sample(const struct sample *s)
{
    static const char range[] = "RANGE", adc[] = "ADC";
    char body[LONGEST_BODY + 1];
    if (s->sum < 0) {
        send_fault(s->t, adc);             /* no reading, no sample: n was counted all the same */
        return true;
    }
    if (s->sum < FULL / 50 || s->sum > FULL - FULL / 50)
        send_fault(s->t, range);
    snprintf(body, sizeof body, "S,%lu,%lu,%ld", (unsigned long)s->n, (unsigned long)s->t,
             (long)pascals(s->sum));
    return send_line(body);
}

static void send_samples(void)
{
    while (number_waiting > 0 && send_sample(&waiting[first_waiting])) {
        board_critical(true);
        first_waiting = (uint8_t)((first_waiting + 1) % WAITING);
        number_waiting--;
        board_critical(false);
    }
}

static void send_identity(uint32_t now)
{
    static bool sent;
    static uint32_t last;
    char body[LONGEST_BODY + 1];
    if (sent && now - last < IDENTITY_EVERY)
        return;
    snprintf(body, sizeof body, "I,1,%s,%s,G,%ld,%ld,%d", SENSOR_ID, FIRMWARE, LOW_PA, HIGH_PA,
             RATE_HZ);
    if (send_line(body)) {
        sent = true;
        last = now;
    }
}

static void send_key(uint32_t now)
{
    static bool told, seen;
    static uint32_t since;
    char body[LONGEST_BODY + 1];
    if (board_key_down() != seen) {
        seen = !seen;
        since = now;
    }
    if (seen == told || now - since < KEY_STEADY)
        return;
    snprintf(body, sizeof body, "K,%lu,%d", (unsigned long)since, seen ? 1 : 0);
    if (send_line(body))
        told = seen;
}

void sensor_loop(void)
{
    uint32_t now = board_micros();
    send_identity(now);
    send_key(now);
    send_samples();
}

#ifdef ON_A_COMPUTER
/*
 * The made-up board. Its clock stands 3 s before its wrap when it starts. Seconds 0 to 2: at rest;
 * 1.0 to 1.2: key down, with a bounce; 2 to 6: 25 kPa of vacuum more each second; 4.4 to 4.7: the
 * host reads nothing; 5.005: one conversion fails; 6 to 7.5: signal wire off; then at rest again.
 */
#define AT_START 4291967296u
static uint32_t elapsed;

uint32_t board_micros(void) { return AT_START + elapsed; }
bool board_key_down(void)
{
    return elapsed == 900000u || (elapsed >= 1000000u && elapsed < 1200000u);
}
int board_write_room(void) { return elapsed >= 4400000u && elapsed < 4700000u ? 0 : 256; }
void board_write(const char *bytes, int length) { fwrite(bytes, 1, (size_t)length, stdout); }
void board_critical(bool begin) { (void)begin; }

int board_adc(void)
{
    double s = elapsed / 1e6;
    double pa = s < 2 || s >= 7.5 ? 0 : -25000 * (s - 2);
    if (elapsed == 5005000u)
        return -1;
    if (s >= 6 && s < 7.5)
        return 0;
    return (int)(ADC_CODES * (0.1 + 0.8 * (pa - LOW_PA) / (HIGH_PA - LOW_PA)) + 0.5);
}

int main(void)
{
    for (; elapsed < 8000000u; elapsed += 1000) {
        sensor_tick();
        sensor_loop();
    }
    return 0;
}
#endif

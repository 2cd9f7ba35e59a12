/* SPDX-License-Identifier: Apache-2.0 */
#include "record.h"

#include "crc16.h"

enum { LONGEST_BODY = RECORD_LONGEST - 5 }; /* a star and four digits follow */

/* A line that is being written. Once it is full it stays so, and becomes no line. */
struct line {
    char *room;
    uint8_t length;
    bool full;
};

static void put(struct line *line, char c)
{
    if (line->length == LONGEST_BODY)
        line->full = true;
    else
        line->room[line->length++] = c;
}

static void put_text(struct line *line, const char *text)
{
    while (*text != '\0')
        put(line, *text++);
}

/* By subtraction: a division of 32 bits takes an 8-bit processor longer than all of these. */
static void put_number(struct line *line, uint32_t number)
{
    static const uint32_t powers[] = {1000000000, 100000000, 10000000, 1000000, 100000,
                                      10000,      1000,      100,      10};
    bool begun = false;
    for (uint8_t i = 0; i < sizeof powers / sizeof powers[0]; i++) {
        char digit = '0';
        while (number >= powers[i]) {
            number -= powers[i];
            digit++;
        }
        begun = begun || digit != '0';
        if (begun)
            put(line, digit);
    }
    put(line, (char)('0' + number));
}

static void put_signed(struct line *line, int32_t number)
{
    if (number < 0)
        put(line, '-');
    put_number(line, number < 0 ? 0 - (uint32_t)number : (uint32_t)number);
}

static void put_field(struct line *line, uint32_t number)
{
    put(line, ',');
    put_number(line, number);
}

static void put_signed_field(struct line *line, int32_t number)
{
    put(line, ',');
    put_signed(line, number);
}

static void put_text_field(struct line *line, const char *text)
{
    put(line, ',');
    put_text(line, text);
}

static struct line begin(char *room, const char *type)
{
    struct line line = {room, 0, false};
    put_text(&line, type);
    return line;
}

static uint8_t end(struct line *line)
{
    static const char digits[] = "0123456789ABCDEF";
    if (line->full)
        return 0;
    uint16_t crc = crc16(line->room, line->length);
    char *next = line->room + line->length;
    *next++ = '*';
    for (int8_t shift = 12; shift >= 0; shift = (int8_t)(shift - 4))
        *next++ = digits[(crc >> shift) & 0xF];
    *next++ = '\n';
    return (uint8_t)(next - line->room);
}

uint8_t record_identity(char room[RECORD_ROOM], const struct identity *identity)
{
    const char sense[] = {identity->sense, '\0'};
    struct line line = begin(room, "I,1");
    put_text_field(&line, identity->sensor);
    put_text_field(&line, identity->firmware);
    put_text_field(&line, sense);
    put_signed_field(&line, identity->low_pa);
    put_signed_field(&line, identity->high_pa);
    put_field(&line, identity->rate_hz);
    return end(&line);
}

uint8_t record_sample(char room[RECORD_ROOM], uint32_t n, uint32_t t, int32_t pa)
{
    struct line line = begin(room, "S");
    put_field(&line, n);
    put_field(&line, t);
    put_signed_field(&line, pa);
    return end(&line);
}

uint8_t record_ambient(char room[RECORD_ROOM], uint32_t t, const struct ambient *ambient)
{
    struct line line = begin(room, "A");
    put_field(&line, t);
    put(&line, ',');
    if (ambient->has_pressure)
        put_signed(&line, ambient->pa);
    put(&line, ',');
    if (ambient->has_temperature)
        put_signed(&line, ambient->centidegrees);
    return end(&line);
}

uint8_t record_key(char room[RECORD_ROOM], uint32_t t, bool down)
{
    struct line line = begin(room, "K");
    put_field(&line, t);
    put_field(&line, down ? 1 : 0);
    return end(&line);
}

uint8_t record_fault(char room[RECORD_ROOM], uint32_t t, const char *code)
{
    struct line line = begin(room, "F");
    put_field(&line, t);
    put_text_field(&line, code);
    return end(&line);
}

uint8_t record_own(char room[RECORD_ROOM], const char *type, uint32_t t, int32_t value)
{
    struct line line = begin(room, type);
    put_field(&line, t);
    put_signed_field(&line, value);
    return end(&line);
}

/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Shows what the core makes of records, for a decoder to be held against it.
 *
 *   encode                      reads records from standard input, one a line, and writes their lines
 *   encode random SEED COUNT    makes up records; writes each with its line behind it
 *
 * A record is written as its fields, "-" for none:
 *   sample N T PA    key T 1|0    fault T CODE    ambient T PA|- CENTIDEGREES|-
 *   identity SENSOR FIRMWARE G|A LOW HIGH RATE
 */
#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "record.h"

enum { FIELDS = 7, FIELD_ROOM = 40 };

typedef char fields[FIELDS][FIELD_ROOM];

static uint32_t natural(const char *text)
{
    return (uint32_t)strtoul(text, NULL, 10);
}

static int32_t whole(const char *text)
{
    return (int32_t)strtol(text, NULL, 10);
}

static uint8_t encode_ambient(char *room, fields f)
{
    struct ambient ambient = {strcmp(f[2], "-") != 0, strcmp(f[3], "-") != 0, whole(f[2]),
                              whole(f[3])};
    return record_ambient(room, natural(f[1]), &ambient);
}

static uint8_t encode_identity(char *room, fields f)
{
    struct identity identity = {f[1], f[2], f[3][0], whole(f[4]), whole(f[5]),
                                (uint16_t)natural(f[6])};
    return record_identity(room, &identity);
}

static uint8_t encode(char *room, fields f)
{
    if (strcmp(f[0], "sample") == 0)
        return record_sample(room, natural(f[1]), natural(f[2]), whole(f[3]));
    if (strcmp(f[0], "key") == 0)
        return record_key(room, natural(f[1]), f[2][0] == '1');
    if (strcmp(f[0], "fault") == 0)
        return record_fault(room, natural(f[1]), f[2]);
    if (strcmp(f[0], "ambient") == 0)
        return encode_ambient(room, f);
    return strcmp(f[0], "identity") == 0 ? encode_identity(room, f) : 0;
}

static int encode_input(void)
{
    char line[256], room[RECORD_ROOM];
    while (fgets(line, sizeof line, stdin) != NULL) {
        fields f = {""};
        sscanf(line, "%39s %39s %39s %39s %39s %39s %39s", f[0], f[1], f[2], f[3], f[4], f[5], f[6]);
        uint8_t length = encode(room, f);
        if (length == 0)
            puts("no line");
        fwrite(room, 1, length, stdout);
    }
    return 0;
}

/* xorshift64* (Marsaglia, J. Stat. Softw. 8 (2003) 14; Vigna, ACM TOMS 42 (2016) 30). */
static uint64_t state;

static uint32_t drawn(void)
{
    state ^= state >> 12;
    state ^= state << 25;
    state ^= state >> 27;
    return (uint32_t)(state * UINT64_C(2685821657736338717) >> 32);
}

/* Of all sizes, small ones as often as large ones. */
static uint32_t of_any_size(void)
{
    return drawn() >> (drawn() % 32);
}

/* At most 9 digits, as the protocol allows. */
static int32_t pascals(void)
{
    int32_t size = (int32_t)(of_any_size() % 1000000000u);
    return drawn() % 2 == 0 ? size : -size;
}

static void draw_word(char *word)
{
    static const char signs[] = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-._/+#";
    size_t length = 1 + drawn() % 12;
    for (size_t i = 0; i < length; i++)
        word[i] = signs[drawn() % (sizeof signs - 1)];
    word[length] = '\0';
}

static void draw_maybe(char *field, int32_t number)
{
    if (drawn() % 4 == 0)
        strcpy(field, "-");
    else
        sprintf(field, "%" PRId32, number);
}

static void draw_ambient(fields f)
{
    strcpy(f[0], "ambient");
    sprintf(f[1], "%" PRIu32, of_any_size());
    draw_maybe(f[2], (int32_t)(20000 + drawn() % 100000));
    draw_maybe(f[3], (int32_t)(drawn() % 12000) - 4000);
}

static void draw_identity(fields f)
{
    int32_t low = -(int32_t)(drawn() % 200000);
    strcpy(f[0], "identity");
    draw_word(f[1]);
    draw_word(f[2]);
    strcpy(f[3], drawn() % 2 == 0 ? "G" : "A");
    sprintf(f[4], "%" PRId32, low);
    sprintf(f[5], "%" PRId32, low + 1 + (int32_t)(drawn() % 300000));
    sprintf(f[6], "%" PRIu32, 1 + drawn() % 1000);
}

static void draw(fields f)
{
    uint32_t kind = drawn() % 16;
    if (kind == 0) {
        draw_identity(f);
    } else if (kind == 1) {
        draw_ambient(f);
    } else if (kind == 2) {
        strcpy(f[0], "fault");
        sprintf(f[1], "%" PRIu32, of_any_size());
        draw_word(f[2]);
    } else if (kind == 3) {
        strcpy(f[0], "key");
        sprintf(f[1], "%" PRIu32, of_any_size());
        strcpy(f[2], drawn() % 2 == 0 ? "1" : "0");
    } else {
        strcpy(f[0], "sample");
        sprintf(f[1], "%" PRIu32, of_any_size());
        sprintf(f[2], "%" PRIu32, of_any_size());
        sprintf(f[3], "%" PRId32, pascals());
    }
}

static int make_up(uint64_t seed, unsigned long count)
{
    char room[RECORD_ROOM];
    state = seed * UINT64_C(0x9E3779B97F4A7C15) + 1;
    for (; count > 0; count--) {
        fields f = {""};
        draw(f);
        for (int i = 0; i < FIELDS && f[i][0] != '\0'; i++)
            printf("%s ", f[i]);
        fputs("=> ", stdout);
        fwrite(room, 1, encode(room, f), stdout);
    }
    return 0;
}

int main(int count, char **words)
{
    if (count == 4 && strcmp(words[1], "random") == 0)
        return make_up(strtoull(words[2], NULL, 10), strtoul(words[3], NULL, 10));
    return encode_input();
}

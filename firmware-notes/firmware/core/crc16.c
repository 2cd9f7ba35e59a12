/* SPDX-License-Identifier: Apache-2.0 */
#include "crc16.h"

uint16_t crc16(const void *bytes, uint8_t length)
{
    const uint8_t *next = bytes;
    uint16_t crc = 0xFFFF;
    while (length-- > 0) {
        crc ^= (uint16_t)((uint16_t)*next++ << 8);
        for (uint8_t bit = 0; bit < 8; bit++)
            crc = (uint16_t)(crc & 0x8000 ? (crc << 1) ^ 0x1021 : crc << 1);
    }
    return crc;
}

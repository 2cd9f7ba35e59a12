/* SPDX-License-Identifier: Apache-2.0 */
#ifndef THUMBSEAL_CRC16_H
#define THUMBSEAL_CRC16_H

#include <stdint.h>

/*
 * CRC-16/IBM-3740: polynomial 1021, start FFFF, not reflected, not inverted at the end; the CRC
 * catalogue's check value is 29B1 for "123456789".
 */
uint16_t crc16(const void *bytes, uint8_t length);

#endif

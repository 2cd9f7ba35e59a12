/* SPDX-License-Identifier: Apache-2.0 */
#ifndef THUMBSEAL_BOARD_H
#define THUMBSEAL_BOARD_H

#include <stdint.h>

/* What the core needs of a board, called from the main program only. None of it waits. */

/* Microseconds since the start, from the clock that times the readings; wraps after 2^32 - 1. */
uint32_t board_now(void);

/* How many bytes board_send() takes at once. */
uint8_t board_room(void);

/* Sends bytes for which there is room. */
void board_send(const char *bytes, uint8_t length);

#endif

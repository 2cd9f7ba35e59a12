/* SPDX-License-Identifier: Apache-2.0 */
#ifndef THUMBSEAL_KEY_H
#define THUMBSEAL_KEY_H

#include <stdbool.h>
#include <stdint.h>

/* A push button whose contacts bounce: a new state counts once it has held for a while. */
struct key {
    bool down;               /* what counts */
    bool seen;               /* as it was last looked at */
    uint32_t since;          /* when that began, microseconds */
};

enum { KEY_STEADY_US = 20000 };

/* Looks at the button at a time; whether a new state counts from now on, which began at since. */
bool key_look(struct key *key, uint32_t t, bool down);

#endif

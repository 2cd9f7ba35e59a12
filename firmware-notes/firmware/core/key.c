/* SPDX-License-Identifier: Apache-2.0 */
#include "key.h"

bool key_look(struct key *key, uint32_t t, bool down)
{
    if (down != key->seen) {
        key->seen = down;
        key->since = t;
    }
    if (key->seen == key->down || (uint32_t)(t - key->since) < KEY_STEADY_US)
        return false;
    key->down = key->seen;
    return true;
}

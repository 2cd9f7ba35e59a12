/* SPDX-License-Identifier: Apache-2.0 */
#ifndef THUMBSEAL_CHECK_H
#define THUMBSEAL_CHECK_H

#include <stdio.h>
#include <stdlib.h>

/* Ends the test program at the first thing that is not so. */
#define CHECK(so)                                                                                 \
    do {                                                                                          \
        if (!(so)) {                                                                              \
            fprintf(stderr, "%s:%d: not so: %s\n", __FILE__, __LINE__, #so);                      \
            exit(1);                                                                              \
        }                                                                                         \
    } while (0)

#endif

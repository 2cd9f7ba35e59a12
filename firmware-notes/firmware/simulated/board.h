/* SPDX-License-Identifier: Apache-2.0 */
#ifndef THUMBSEAL_SIMULATED_BOARD_H
#define THUMBSEAL_SIMULATED_BOARD_H

#include <stdint.h>
#include <stdio.h>

#include "pump.h"

/* What happens to the board, and when. */
enum trouble {
    TROUBLE_NONE,
    TROUBLE_RESET,       /* its reset line is pulled */
    TROUBLE_BROWN_OUT,   /* the supply falls so far that it starts anew */
    TROUBLE_DIP,         /* the supply falls for 0.4 s, and it runs on */
    TROUBLE_STUCK,       /* the converter gives one code whatever it looks at */
    TROUBLE_DEAD,        /* the converter never ends a conversion */
    TROUBLE_WIRE_OFF,    /* the element's output is off for good */
    TROUBLE_LOOSE,       /* it is off for a while */
    TROUBLE_HANG,        /* the timer's interrupt is off: the watchdog has to bite */
    TROUBLE_KEY          /* the key is pressed and let go, and bounces both times */
};

struct scene {
    const char *firmware;    /* ELF file */
    const char *memory;      /* file with the bytes of its EEPROM; may be absent */
    struct pump pump;
    enum trouble trouble;
    double at;               /* when the trouble begins, s */
    double lasts;            /* s, where it ends by itself */
    double dip_mv;           /* to which the supply falls */
    double clock_off;        /* by how much the board's clock is too fast: 0.01 is 1 % */
    double noise_mv;         /* standard deviation */
    int readings;            /* to a sample, to compare times of samples */
    uint32_t first_n;
};

/* Receives what the board sends, with the true time. */
typedef void receiver(void *own, double t, uint8_t byte);

struct outlet {
    receiver *receive;
    void *own;
    void (*pace)(double t);  /* called each millisecond of the board; may wait */
};

/* What was seen of the board from outside. */
struct seen {
    unsigned stack;          /* bytes at the deepest */
    unsigned conversions;    /* of the element */
    unsigned starts;
};

/* Runs the board for so many true seconds. Returns false where the firmware cannot be loaded. */
int board_run(const struct scene *scene, const struct outlet *outlet, double seconds,
              struct seen *seen);

/* True time at which the conversion of this number began since the last start; below 0: unknown. */
double board_conversion(uint32_t number);

#endif

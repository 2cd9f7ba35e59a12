/* SPDX-License-Identifier: Apache-2.0 */
#ifndef THUMBSEAL_FAULTS_H
#define THUMBSEAL_FAULTS_H

#include <stdbool.h>
#include <stdint.h>

/* What can be wrong, as bits of a set. */
enum fault {
    FAULT_ADC = 1,           /* the converter gives nothing, or the same whatever it looks at */
    FAULT_POWER = 2,         /* supply out of its limits, or the board started anew for that */
    FAULT_RANGE = 4,         /* signal at an end: wire off, element overloaded */
    FAULT_TRIM = 8,          /* what the maker wrote into it is spoilt */
    FAULT_WATCHDOG = 16      /* the program hung, and was started anew */
};

enum { FAULT_KINDS = 5 };

/* With one of these a reading is no pressure: nothing is sent for it. */
enum { FAULTS_WITHOUT_PRESSURE = FAULT_ADC | FAULT_POWER | FAULT_TRIM };

/* What was told, and when. */
struct fault_log {
    uint8_t told;
    uint32_t at[FAULT_KINDS];
};

/* Sends those of the set that were not sent within a second; false where one found no room. */
bool faults_tell(struct fault_log *log, uint8_t faults, uint32_t t);

/*
 * What two looks of the converter at known voltages say: at ground, and at its inner reference of
 * about 1.1 V with the supply for full scale.
 *
 * usual: code of the reference at a known supply; 0 where it was never measured
 */
uint8_t faults_of_check(uint16_t reference, uint16_t ground, uint16_t usual);

#endif

/* SPDX-License-Identifier: Apache-2.0 */
#ifndef THUMBSEAL_SETTINGS_H
#define THUMBSEAL_SETTINGS_H

/* What a build may say otherwise: make EXTRA='-DRATE_HZ=200 -DREADINGS=8'. */

#ifndef SENSOR_NAME
#define SENSOR_NAME "untrimmed" /* until a trim names it */
#endif

#define FIRMWARE "1.0.0"

#ifndef LOW_PA
#define LOW_PA (-115000L) /* ends of the range, from the data sheet of the element */
#define HIGH_PA 15000L
#endif

#ifndef LOW_SHARE
#define LOW_SHARE 100     /* its output there, in thousandths of the supply */
#define HIGH_SHARE 900
#endif

#ifndef RATE_HZ
#define RATE_HZ 100       /* times READINGS this is 1600 */
#define READINGS 16
#endif

#ifndef BAUD
#define BAUD 115200UL
#endif

/* A test that wants to see the counters wrap begins shortly before. */
#ifndef FIRST_N
#define FIRST_N 0
#define FIRST_T 0
#endif

#endif

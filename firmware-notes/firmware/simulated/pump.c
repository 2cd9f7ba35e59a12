/* SPDX-License-Identifier: Apache-2.0 */
#include "pump.h"

#include <math.h>

enum { OPEN_TAU_MS = 150 }; /* of an open inlet: the jar fills and empties within that */

const struct pump usual_pump = {
    .on = 3, .blocked = 7, .released = 29, .off = 31,
    .open = 3, .maximum = 88, .tau = 5.2,
    .ripple = 0.05, .stroke_hz = 48.5,
};

static double towards(double from, double to, double t, double tau)
{
    return to - (to - from) * exp(-t / tau);
}

static double level(const struct pump *pump, double t)
{
    const double quick = OPEN_TAU_MS / 1000.0;
    if (t < pump->on)
        return 0;
    if (t < pump->blocked)
        return towards(0, pump->open, t - pump->on, quick);
    if (t < pump->released)
        return towards(pump->open, pump->maximum, t - pump->blocked, pump->tau);
    double before = towards(pump->open, pump->maximum, pump->released - pump->blocked, pump->tau);
    if (t < pump->off)
        return towards(before, pump->open, t - pump->released, quick);
    return towards(pump->open, 0, t - pump->off, quick);
}

double pump_vacuum(const struct pump *pump, double t)
{
    double strokes = t < pump->on || t > pump->off ? 0 : pump->ripple;
    return level(pump, t) + strokes * sin(2 * M_PI * pump->stroke_hz * t);
}

double pump_rise_time(const struct pump *pump, double by_kpa)
{
    double span = pump->maximum - pump->open;
    return by_kpa < span ? pump->tau * log(span / (span - by_kpa)) : INFINITY;
}

/* The mean of the last second, by the integral of the curve. */
double pump_maximum(const struct pump *pump)
{
    double end = (pump->released - pump->blocked) / pump->tau;
    double second = pump->tau * (exp(1 / pump->tau) - 1) * exp(-end);
    return pump->maximum - (pump->maximum - pump->open) * second;
}

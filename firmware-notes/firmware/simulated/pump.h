/* SPDX-License-Identifier: Apache-2.0 */
#ifndef THUMBSEAL_PUMP_H
#define THUMBSEAL_PUMP_H

/*
 * A pump test in closed form: at rest, pump on with an open inlet, inlet blocked, opened again. The
 * blocked vacuum follows maximum - (maximum - open) exp(-(t - blocked) / tau), so that what has to
 * be measured is known without any measuring. All in kPa of vacuum and seconds.
 */
struct pump {
    double on, blocked, released, off;
    double open, maximum, tau;
    double ripple, stroke_hz; /* amplitude of the strokes while the pump runs */
};

extern const struct pump usual_pump;

/* With the strokes. */
double pump_vacuum(const struct pump *pump, double t);

/* Until it stands so far above the open vacuum, without strokes; infinite where it never does. */
double pump_rise_time(const struct pump *pump, double by_kpa);

/* Highest mean over one second while blocked, without strokes. */
double pump_maximum(const struct pump *pump);

#endif

package org.thumbseal.measurement;

import org.thumbseal.phase.Phase;

/**
 * A phase and how long it lasted.
 *
 * @param phase which
 * @param start s from the first sample, device clock
 * @param end s from the first sample, device clock
 */
public record PhaseSpan(Phase phase, double start, double end) {}

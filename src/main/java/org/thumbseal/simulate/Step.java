package org.thumbseal.simulate;

/**
 * An act and its time.
 *
 * @param seconds true time since the first sample, s; negative for what was done before it
 * @param act what happens
 */
public record Step(double seconds, Act act) {}

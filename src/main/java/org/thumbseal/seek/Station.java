package org.thumbseal.seek;

/**
 * A place where the suction path is blocked for a test.
 *
 * @param name for people
 * @param inward what lies between here and the next station towards the pump
 */
public record Station(String name, Section inward) {}

package org.thumbseal.trend;

/**
 * The values jumped between two tests.
 *
 * @param before day of the last test before it
 * @param after day of the first test after it
 * @param size by how much, in the unit of the values: what came after less what came before
 * @param known whether something was changed on the pump in between
 */
public record Step(double before, double after, double size, boolean known) {}

package org.thumbseal.measurement;

/**
 * One line of an uncertainty budget.
 *
 * @param name what it is
 * @param standardUncertainty in the unit of the quantity
 * @param source how it is known
 */
public record Contribution(String name, double standardUncertainty, String source) {}

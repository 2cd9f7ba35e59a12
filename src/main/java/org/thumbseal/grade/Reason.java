package org.thumbseal.grade;

/**
 * One reason for a verdict.
 *
 * @param code from the closed list
 * @param text one or two sentences for a person, with the numbers and what to do
 */
public record Reason(ReasonCode code, String text) {}

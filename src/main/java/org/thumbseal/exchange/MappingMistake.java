package org.thumbseal.exchange;

/**
 * What is wrong in a mapping file.
 *
 * @param line where, from 1
 * @param text what is wrong and what to do
 */
public record MappingMistake(int line, String text) {}

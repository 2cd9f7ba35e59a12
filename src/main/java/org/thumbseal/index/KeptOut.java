package org.thumbseal.index;

/**
 * A file that is not counted, because nobody who is trusted vouches for it.
 *
 * @param file its path in its results directory
 * @param reason why, in half a sentence
 */
public record KeptOut(String file, String reason) {}

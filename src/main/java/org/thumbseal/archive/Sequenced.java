package org.thumbseal.archive;

import java.nio.file.Path;

/**
 * A document of a results directory and its place in its chain.
 *
 * @param kid of the key that sealed it
 * @param sequence its number among the documents of this key, from 1
 * @param file where it lies
 */
public record Sequenced(String kid, long sequence, Path file) {}

package org.thumbseal.record;

import java.util.Collections;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * What a result was graded from.
 *
 * @param capture file name without folder
 * @param sha256 of the file, 64 hexadecimal digits
 * @param columns where a table has time and pressure; absent for a capture
 * @param samples number of samples in it
 * @param gaps number of stretches in which samples are missing
 * @param rejected lines and rows left out, by cause
 */
public record Evidence(
    String capture,
    String sha256,
    Optional<String> columns,
    long samples,
    long gaps,
    Map<String, Integer> rejected) {
  /** The same in a file of another name. */
  public Evidence named(String name) {
    return new Evidence(name, sha256, columns, samples, gaps, rejected);
  }

  /** Keeps a copy of the counts, in order of their names. */
  public Evidence {
    rejected = Collections.unmodifiableMap(new TreeMap<>(rejected));
  }
}

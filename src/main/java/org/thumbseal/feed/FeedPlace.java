package org.thumbseal.feed;

import java.nio.file.Path;

/**
 * Where documents come from.
 *
 * @param results directory with the sealed documents
 * @param outbox folder in which is kept how far each target has acknowledged
 */
public record FeedPlace(Path results, Path outbox) {
  /** A folder that no reader of results looks into. */
  private static final String FOLDER = ".feed";

  /** With the outbox in the results directory. */
  public static FeedPlace in(Path results) {
    return new FeedPlace(results, results.resolve(FOLDER));
  }
}

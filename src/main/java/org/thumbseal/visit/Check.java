package org.thumbseal.visit;

import java.util.Optional;

/**
 * One item as it was found.
 *
 * @param item what was looked at
 * @param state how it was found
 * @param part what was put in, where it was replaced
 * @param reason why it was replaced, or what is wrong with it
 */
public record Check(
    CheckItem item, CheckState state, Optional<String> part, Optional<String> reason) {
  /** Makes the words fit for one line: no control characters, 200 characters at most. */
  public Check {
    part = part.flatMap(Words::line);
    reason = reason.flatMap(Words::line);
  }

  /** An item without more words. */
  public static Check of(CheckItem item, CheckState state) {
    return new Check(item, state, Optional.empty(), Optional.empty());
  }
}

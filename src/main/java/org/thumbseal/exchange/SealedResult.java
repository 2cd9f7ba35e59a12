package org.thumbseal.exchange;

import java.nio.file.Path;
import java.util.List;
import org.thumbseal.archive.SealedCorrection;
import org.thumbseal.json.DocumentView;
import org.thumbseal.record.Standing;

/**
 * The result of a test with all that is known of it.
 *
 * @param file where it lies
 * @param view what it says
 * @param standing what holds of it, its corrections considered
 * @param corrections all there are, in the order in which they apply; strangers' too
 * @param seal what its seal came to
 * @param hasCapture whether the recording it was graded from lies beside it, unaltered
 */
public record SealedResult(
    Path file,
    DocumentView view,
    Standing standing,
    List<SealedCorrection> corrections,
    KnownSeal seal,
    boolean hasCapture) {
  /** Keeps a copy of the corrections. */
  public SealedResult {
    corrections = List.copyOf(corrections);
  }

  /** Whether it counts: a void one is kept and shown, and nothing rests on it. */
  public boolean counts() {
    return standing.voided().isEmpty();
  }

  /** Whether it is a test of a pump that counts: not one at some place where a leak was sought. */
  public boolean isMonthly() {
    return counts() && !view.has("/test/leakSearch");
  }

  /** How many corrections changed it. */
  public long corrected() {
    return corrections.stream().filter(SealedCorrection::counts).count();
  }

  String id() {
    return view.text("/id").orElseThrow();
  }
}

package org.thumbseal.exchange;

import java.io.IOException;
import java.util.Optional;

/** Writes the results of {@link ResultFiles} in their order, one in memory at a time. */
public final class Export {
  private final ResultReader reader;
  private final boolean unverified;
  private final boolean voidToo;
  private String last = "";
  private Optional<String> lastDigest = Optional.empty();

  /**
   * An export that has not begun.
   *
   * @param unverified whether results without a trusted seal are taken as well
   * @param layout what is written; void results are left out where it would not show them
   */
  public Export(ResultReader reader, boolean unverified, Layout layout) {
    this.reader = reader;
    this.unverified = unverified;
    this.voidToo = layout.showsVoid();
  }

  /**
   * Writes them all.
   *
   * @throws IOException if they cannot be written
   */
  public void run(ResultFiles files, ResultTable table, LeftOut leftOut) throws IOException {
    for (ResultFile file : files.inOrder()) {
      try {
        SealedResult sealed = reader.read(file.outcome().file(), file.outcome());
        FlatResult flat = FlatResult.of(sealed);
        if (isWanted(sealed, leftOut)) {
          table.result(sealed, flat);
          leftOut.exported(sealed);
        }
      } catch (ResultRefused e) {
        leftOut.refused(file.outcome().file(), e);
      }
    }
    table.end();
  }

  private boolean isWanted(SealedResult sealed, LeftOut leftOut) {
    if (!unverified && !sealed.seal().isTrusted()) {
      leftOut.unverified(sealed);
      return false;
    }
    if (!voidToo && !sealed.counts()) {
      leftOut.voided(sealed);
      return false;
    }
    return isFirst(sealed, leftOut);
  }

  /** Copies come one after the other: they begin at the same instant. */
  private boolean isFirst(SealedResult sealed, LeftOut leftOut) {
    Optional<String> digest = sealed.seal().entry().map(e -> e.digest());
    if (sealed.id().equals(last)) {
      leftOut.again(sealed, digest.equals(lastDigest));
      return false;
    }
    last = sealed.id();
    lastDigest = digest;
    return true;
  }
}

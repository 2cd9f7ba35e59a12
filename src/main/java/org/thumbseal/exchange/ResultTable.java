package org.thumbseal.exchange;

import java.io.IOException;

/** Writes results one after the other, each when it comes; nothing of them is kept. */
public interface ResultTable {
  /**
   * Writes a result.
   *
   * @throws IOException if it cannot be written
   */
  void result(SealedResult sealed, FlatResult flat) throws IOException;

  /**
   * Writes what comes after the last one.
   *
   * @throws IOException if it cannot be written
   */
  void end() throws IOException;
}

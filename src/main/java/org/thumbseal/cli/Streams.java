package org.thumbseal.cli;

import java.io.InputStream;
import java.io.OutputStream;
import java.util.Optional;

/**
 * Where a command reads and writes.
 *
 * @param in standard input
 * @param out the answer alone
 * @param err what else there is to say
 * @param terminal a person to ask, if there is one
 */
record Streams(InputStream in, OutputStream out, OutputStream err, Optional<Terminal> terminal) {
  /** Without a person to ask. */
  Streams(InputStream in, OutputStream out, OutputStream err) {
    this(in, out, err, Optional.empty());
  }
}

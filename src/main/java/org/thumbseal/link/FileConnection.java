package org.thumbseal.link;

import java.io.IOException;
import java.io.InputStream;

/** Reads a plain file, which never makes one wait. */
final class FileConnection implements LinkConnection {
  private final InputStream in;

  FileConnection(InputStream in) {
    this.in = in;
  }

  @Override
  public int read(byte[] buffer) {
    try {
      return in.read(buffer);
    } catch (IOException e) {
      return LOST;
    }
  }

  @Override
  public void close() {
    Closing.quietly(in);
  }
}

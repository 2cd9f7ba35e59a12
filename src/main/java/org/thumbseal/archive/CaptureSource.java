package org.thumbseal.archive;

import java.io.IOException;
import java.io.InputStream;

/** Bytes of a capture, wherever they are; opened once, closed by the archive. */
@FunctionalInterface
public interface CaptureSource {
  /** Begins at the first byte. */
  InputStream open() throws IOException;
}

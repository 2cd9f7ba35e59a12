package org.thumbseal.cli;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.thumbseal.simulate.TimedLine;

/** Lines as on the wire, each ended by LF. */
final class BareLines implements LineSink {
  private final OutputStream bytes;

  private BareLines(OutputStream bytes) {
    this.bytes = bytes;
  }

  /** To a device that must be there already. */
  static BareLines toPort(Path device) throws IOException {
    OutputStream port = Files.newOutputStream(device, StandardOpenOption.WRITE);
    return new BareLines(new BufferedOutputStream(port));
  }

  /** To a stream that is not closed when the lines end. */
  static BareLines to(OutputStream stream) {
    return new BareLines(new BufferedOutputStream(new Honest(stream)));
  }

  @Override
  public void write(TimedLine line) throws IOException {
    bytes.write(line.line().getBytes(StandardCharsets.ISO_8859_1));
    bytes.write('\n');
  }

  @Override
  public void flush() throws IOException {
    bytes.flush();
  }

  @Override
  public void close() throws IOException {
    bytes.close();
  }

  /** A print stream hides that its reader has gone; here that ends the writing. */
  private static final class Honest extends OutputStream {
    private final OutputStream stream;

    Honest(OutputStream stream) {
      this.stream = stream;
    }

    @Override
    public void write(int octet) throws IOException {
      write(new byte[] {(byte) octet}, 0, 1);
    }

    @Override
    public void write(byte[] buffer, int offset, int length) throws IOException {
      stream.write(buffer, offset, length);
      if (stream instanceof PrintStream print && print.checkError()) {
        throw new IOException("nobody reads standard output any more");
      }
    }

    @Override
    public void flush() throws IOException {
      stream.flush();
    }
  }
}

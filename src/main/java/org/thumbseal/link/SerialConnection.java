package org.thumbseal.link;

import com.fazecast.jSerialComm.SerialPort;
import java.time.Duration;

/**
 * Reads an open serial port. The library goes on calling a port open after it was unplugged; only a
 * read tells.
 */
final class SerialConnection implements LinkConnection {
  private static final Duration LONGEST_CLOSE = Duration.ofSeconds(2);

  private final SerialPort port;
  private volatile boolean lost;

  SerialConnection(SerialPort port) {
    this.port = port;
  }

  @Override
  public int read(byte[] buffer) {
    int count = lost ? LOST : port.readBytes(buffer, buffer.length);
    lost = count < 0;
    return count;
  }

  @Override
  public void close() {
    lost = true;
    Closing.within(LONGEST_CLOSE, port::closePort);
  }
}

package org.thumbseal.link;

import com.fazecast.jSerialComm.SerialPort;
import com.fazecast.jSerialComm.SerialPortInvalidPortException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;
import org.thumbseal.link.LinkUnavailable.Reason;

/**
 * A serial port. Its name is looked up at every opening, for a port that was unplugged may come
 * back under another one and an object kept from before cannot be opened again.
 */
record SerialLink(LinkAddress.Serial address, SerialPorts ports) implements Link {
  // The library rounds this to steps of 100 ms everywhere but on Windows.
  static final int READ_MILLIS = 300;

  @Override
  public String name() {
    return address.text();
  }

  @Override
  public boolean finite() {
    return false;
  }

  @Override
  public Duration settle() {
    return address.settings().settle();
  }

  @Override
  public boolean isPort() {
    return true;
  }

  @Override
  public Optional<String> otherProgram() {
    try {
      Path device = Path.of(SerialPath.resolve(address.port(), ports));
      return SerialPath.windows() ? Optional.empty() : OtherPrograms.system().having(device);
    } catch (LinkUnavailable e) {
      return Optional.empty();
    }
  }

  @Override
  public LinkConnection open() throws LinkUnavailable {
    NativeLibrary.load();
    String path = SerialPath.resolve(address.port(), ports);
    SerialPort port = find(path);
    configure(port, address.settings());
    if (!port.openPort()) {
      throw SerialFault.of(port.getLastErrorCode(), Path.of(path), ports);
    }
    return new SerialConnection(port);
  }

  private SerialPort find(String path) throws LinkUnavailable {
    try {
      return SerialPort.getCommPort(path);
    } catch (SerialPortInvalidPortException e) {
      throw new LinkUnavailable(Reason.MISSING, SerialFault.noSuchPort(ports));
    }
  }

  private static void configure(SerialPort port, SerialSettings settings) {
    port.setComPortParameters(settings.baud(), 8, SerialPort.ONE_STOP_BIT, SerialPort.NO_PARITY);
    port.setFlowControl(SerialPort.FLOW_CONTROL_DISABLED);
    port.setComPortTimeouts(SerialPort.TIMEOUT_READ_SEMI_BLOCKING, READ_MILLIS, 0);
    if (settings.lines() != ModemLines.LEAVE) {
      boolean on = settings.lines() == ModemLines.ASSERT;
      port.setDTRandRTS(on, on);
    }
  }
}

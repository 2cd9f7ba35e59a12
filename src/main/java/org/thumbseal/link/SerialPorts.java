package org.thumbseal.link;

import java.util.List;

/** The serial ports of this machine. */
@FunctionalInterface
public interface SerialPorts {

  /**
   * Those there are now, by name.
   *
   * @throws LinkUnavailable if the system does not tell within a few seconds, or the serial library
   *     is not to be had
   */
  List<PortDescription> list() throws LinkUnavailable;

  /** Asks the system. */
  static SerialPorts system() {
    return SystemPorts.ofLibrary();
  }
}

package org.thumbseal.link;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Takes the text of an address apart; every surprise is one line for a person. */
final class AddressParser {
  private static final String KINDS =
      "use a serial port (/dev/ttyUSB0, COM3), tcp:HOST:PORT, sim:KIND, file:PATH or -";

  private static final List<String> SERIAL_OPTIONS = List.of("baud", "board", "dtr", "settle");

  // A colon behind a slash belongs to a by-path name of a port.
  private static final Pattern SCHEME = Pattern.compile("([A-Za-z][A-Za-z0-9+.-]*):(.*)");
  private static final Pattern HOST_AND_PORT =
      Pattern.compile("(?:\\[([0-9A-Fa-f:.%A-Za-z-]+)]|([^:\\[\\]\\s/]+)):(\\d{1,5})");

  private AddressParser() {}

  static LinkAddress parse(String text) throws LinkAddressException {
    if (text.isBlank() || text.chars().anyMatch(Character::isISOControl)) {
      throw new LinkAddressException("an address must be plain text: " + KINDS);
    }
    Matcher scheme = SCHEME.matcher(text);
    if (text.equals("-")) {
      return new LinkAddress.StandardInput(text);
    }
    return scheme.matches() ? withScheme(text, scheme) : serial(text);
  }

  private static LinkAddress withScheme(String text, Matcher scheme) throws LinkAddressException {
    String rest = scheme.group(2);
    return switch (scheme.group(1)) {
      case "tcp" -> tcp(text, rest);
      case "sim" -> simulated(text, rest);
      case "file" -> file(text, rest);
      default ->
          throw new LinkAddressException("'" + text + "' is no address known here: " + KINDS);
    };
  }

  private static LinkAddress tcp(String text, String rest) throws LinkAddressException {
    Matcher parts = HOST_AND_PORT.matcher(rest);
    if (!parts.matches()) {
      throw new LinkAddressException(
          "'"
              + text
              + "' is not tcp:HOST:PORT (an IPv6 address stands in brackets: tcp:[::1]:4001)");
    }
    int port = Integer.parseInt(parts.group(3));
    if (port < 1 || port > 65_535) {
      throw new LinkAddressException("'" + text + "': the port must be between 1 and 65535");
    }
    String bracketed = parts.group(1);
    return new LinkAddress.Tcp(text, bracketed != null ? bracketed : parts.group(2), port);
  }

  private static LinkAddress simulated(String text, String rest) throws LinkAddressException {
    String[] parts = rest.split(",", -1);
    if (!parts[0].matches("[a-z][a-z0-9-]*")) {
      throw new LinkAddressException("'" + text + "' is not sim:KIND[,seed=N][,speed=N]");
    }
    List<String> options = Arrays.asList(parts).subList(1, parts.length);
    AddressOptions given = AddressOptions.read(text, options, List.of("seed", "speed"));
    double speed = given.decimal("speed", 1);
    if (!(speed >= 0.1 && speed <= 100)) {
      throw new LinkAddressException("'" + text + "': speed must be between 0.1 and 100");
    }
    return new LinkAddress.Simulated(text, parts[0], given.whole("seed", 1), speed);
  }

  private static LinkAddress file(String text, String rest) throws LinkAddressException {
    if (rest.isEmpty()) {
      throw new LinkAddressException("'" + text + "' names no file: use file:PATH");
    }
    try {
      return new LinkAddress.RawFile(text, Path.of(rest));
    } catch (InvalidPathException e) {
      throw new LinkAddressException("'" + text + "' is not a path this system knows");
    }
  }

  private static LinkAddress serial(String text) throws LinkAddressException {
    int mark = text.lastIndexOf('?');
    String port = mark < 0 ? text : text.substring(0, mark);
    if (port.isBlank()) {
      throw new LinkAddressException("'" + text + "' names no port: " + KINDS);
    }
    List<String> options =
        mark < 0 ? List.of() : Arrays.asList(text.substring(mark + 1).split("&", -1));
    AddressOptions given = AddressOptions.read(text, options, SERIAL_OPTIONS);
    return new LinkAddress.Serial(text, port, given.serial());
  }
}

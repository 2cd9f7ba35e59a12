package org.thumbseal.link;

import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** The {@code name=value} pairs of an address; unknown and doubled names are refused. */
final class AddressOptions {
  private final String address;
  private final Map<String, String> values = new LinkedHashMap<>();

  private AddressOptions(String address) {
    this.address = address;
  }

  static AddressOptions read(String address, List<String> pairs, List<String> known)
      throws LinkAddressException {
    AddressOptions options = new AddressOptions(address);
    for (String pair : pairs) {
      options.add(pair, known);
    }
    return options;
  }

  private void add(String pair, List<String> known) throws LinkAddressException {
    int equals = pair.indexOf('=');
    String name = equals < 0 ? pair : pair.substring(0, equals);
    if (equals < 0 || !known.contains(name)) {
      throw wrong("'" + pair + "' is no option here; there are " + String.join("=, ", known) + "=");
    }
    if (values.putIfAbsent(name, pair.substring(equals + 1)) != null) {
      throw wrong(name + " is given twice");
    }
  }

  long whole(String name, long otherwise) throws LinkAddressException {
    String value = values.get(name);
    if (value == null) {
      return otherwise;
    }
    try {
      return Long.parseLong(value);
    } catch (NumberFormatException e) {
      throw wrong(name + " must be a whole number, not '" + value + "'");
    }
  }

  double decimal(String name, double otherwise) throws LinkAddressException {
    String value = values.get(name);
    if (value == null) {
      return otherwise;
    }
    if (!value.matches("\\d{1,6}(\\.\\d{1,6})?")) {
      throw wrong(name + " must be a number, not '" + value + "'");
    }
    return Double.parseDouble(value);
  }

  SerialSettings serial() throws LinkAddressException {
    try {
      BoardFamily board = board();
      int baud = Math.toIntExact(whole("baud", SerialSettings.STANDARD.baud()));
      Duration settle = Duration.ofMillis(whole("settle", board.settle().toMillis()));
      return new SerialSettings(baud, lines(board), settle);
    } catch (IllegalArgumentException e) {
      throw wrong(String.valueOf(e.getMessage()));
    } catch (ArithmeticException e) {
      throw wrong("a number is far too large");
    }
  }

  private BoardFamily board() throws LinkAddressException {
    String value = values.getOrDefault("board", BoardFamily.PLAIN.code());
    return BoardFamily.ofCode(value)
        .orElseThrow(
            () -> wrong("board must be one of " + BoardFamily.codes() + ", not '" + value + "'"));
  }

  private ModemLines lines(BoardFamily board) throws LinkAddressException {
    String value = values.getOrDefault("dtr", board.lines().name().toLowerCase(Locale.ROOT));
    for (ModemLines lines : ModemLines.values()) {
      if (lines.name().toLowerCase(Locale.ROOT).equals(value)) {
        return lines;
      }
    }
    throw wrong("dtr must be leave, assert or clear, not '" + value + "'");
  }

  private LinkAddressException wrong(String what) {
    return new LinkAddressException("'" + address + "': " + what);
  }
}

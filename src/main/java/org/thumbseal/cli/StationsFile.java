package org.thumbseal.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.thumbseal.seek.Section;
import org.thumbseal.seek.Station;
import org.thumbseal.seek.SuctionPath;

/**
 * The stations of a suction path as a text file: a line each from the patient end inwards, {@code
 * station; what lies behind it; share}, the share optional; a star before the jar inlet; {@code #}
 * begins a remark.
 */
final class StationsFile {
  private static final int LARGEST = 1 << 14;
  private static final int USUAL_SHARE = 10;

  private final Path file;
  private final List<Station> stations = new ArrayList<>();
  private int jarInlet = -1;
  private int line;

  private StationsFile(Path file) {
    this.file = file;
  }

  /** The path in a file; a mistake in it ends the command. */
  static SuctionPath read(Path file) {
    return new StationsFile(file).read();
  }

  private SuctionPath read() {
    for (String text : text().lines().toList()) {
      line++;
      String plain = text.strip();
      if (!plain.isEmpty() && !plain.startsWith("#")) {
        take(plain);
      }
    }
    if (jarInlet < 0) {
      throw Failure.usage(file + ": put a * before the jar inlet, where the monthly test is made");
    }
    try {
      return new SuctionPath(stations, jarInlet);
    } catch (IllegalArgumentException e) {
      throw Failure.usage(file + ": " + e.getMessage());
    }
  }

  private void take(String text) {
    boolean starred = text.startsWith("*");
    String[] parts = (starred ? text.substring(1) : text).split(";", -1);
    if (parts.length < 2 || parts.length > 3) {
      throw wrong("write it as: station; what lies between it and the next; share");
    }
    if (starred && jarInlet >= 0) {
      throw wrong("a second * : there is one jar inlet");
    }
    jarInlet = starred ? stations.size() : jarInlet;
    stations.add(new Station(name(parts[0]), section(parts)));
  }

  private Section section(String[] parts) {
    try {
      return new Section(name(parts[1]), parts.length == 2 ? USUAL_SHARE : share(parts[2]));
    } catch (IllegalArgumentException e) {
      throw wrong(String.valueOf(e.getMessage()));
    }
  }

  private int share(String text) {
    return Optional.of(text.strip())
        .filter(digits -> digits.matches("[0-9]{1,4}"))
        .map(Integer::parseInt)
        .orElseThrow(() -> wrong("the share must be a whole number, 1 to 100"));
  }

  private String name(String text) {
    return SaidText.required(place() + "a name", text, SaidText.NAME);
  }

  private Failure wrong(String what) {
    return Failure.usage(place() + what);
  }

  private String place() {
    return file + ": line " + line + ": ";
  }

  private String text() {
    if (Files.exists(file) && !Files.isRegularFile(file)) {
      throw Failure.usage(file + ": is no file");
    }
    try (InputStream in = Files.newInputStream(file)) {
      byte[] bytes = in.readNBytes(LARGEST + 1);
      if (bytes.length > LARGEST) {
        throw Failure.usage(file + ": is larger than " + LARGEST + " bytes: no list of stations");
      }
      return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
    } catch (CharacterCodingException e) {
      throw Failure.usage(file + ": is not UTF-8 text; save it as such");
    } catch (NoSuchFileException e) {
      throw Failure.usage(file + ": no such file");
    } catch (IOException e) {
      throw Failure.usage(file + ": cannot be read: " + e.getMessage());
    }
  }
}

package org.thumbseal.fuzz;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.thumbseal.calibration.Calibration;
import org.thumbseal.calibration.CalibrationFacts;
import org.thumbseal.calibration.CalibrationPoint;
import org.thumbseal.calibration.CalibrationRefused;
import org.thumbseal.calibration.ReferenceGauge;
import org.thumbseal.json.CalibrationTree;
import org.thumbseal.json.Canonical;
import org.thumbseal.json.ExampleDocument;
import org.thumbseal.seal.ChainEnd;
import org.thumbseal.seal.Head;
import org.thumbseal.seal.Seal;
import org.thumbseal.seal.SigningKey;
import tools.jackson.databind.node.ObjectNode;

/** What the program itself writes: the originals of all that is spoilt. */
final class Genuine {
  private static final Path CAPTURES = Path.of("fixtures", "captures");

  private Genuine() {}

  /** Unsealed results, a calibration among them. */
  static List<ObjectNode> contents() {
    List<ObjectNode> all = new ArrayList<>();
    for (int number = 1; number <= 3; number++) {
      all.add(ExampleDocument.unsealed(number));
    }
    all.add(calibration());
    return all;
  }

  /** The same, sealed one after another, and the head behind them. */
  static List<ObjectNode> sealed(SigningKey key) {
    List<ObjectNode> all = new ArrayList<>();
    ChainEnd end = ChainEnd.none(key.verifyingKey().kid());
    for (ObjectNode content : contents()) {
      ObjectNode document = Seal.seal(content, end.next(), key);
      end = end.then(Seal.digest(document));
      all.add(document);
    }
    all.add(new Head(end, List.of(), "2026/last.json").sealed(key));
    return all;
  }

  static byte[] bytes(ObjectNode tree) {
    return Canonical.bytes(tree);
  }

  static ObjectNode calibration() {
    CalibrationFacts facts =
        new CalibrationFacts(
            "tp-01",
            Instant.parse("2026-03-02T07:00:00Z"),
            LocalDate.parse("2027-03-02"),
            new ReferenceGauge("RG-7", "C-2211", 0.25, 2),
            CalibrationFacts.USUAL_REPEATABILITY,
            Optional.of(24.0),
            Optional.of("a fitter"));
    List<CalibrationPoint> points =
        Stream.of(0, 20, 40, 60, 80).map(v -> new CalibrationPoint(v, v * 1.01 + 0.2)).toList();
    try {
      return CalibrationTree.of(
          Calibration.of("1f0c6a52-5b7d-8c41-9e02-6a1d4f8b2c70", facts, points));
    } catch (CalibrationRefused e) {
      throw new IllegalStateException(e);
    }
  }

  /** Recorded sessions, the smaller ones, so that many can be spoilt in a short time. */
  static List<byte[]> captures() {
    return Stream.of("capture-version-1", "slipped", "replugged", "leak", "crlf", "no-test")
        .map(name -> CAPTURES.resolve(name + ".log"))
        .map(Genuine::read)
        .toList();
  }

  /** The result of a pump that passed, with its model. */
  static byte[] soundRecord() {
    return read(CAPTURES.resolve("sound.json"));
  }

  static List<byte[]> tables() {
    StringBuilder points = new StringBuilder("Time [s],Pressure [kPa],note\n");
    StringBuilder commas = new StringBuilder("t (ms);p_mbar\r\n");
    for (int i = 0; i < 300; i++) {
      double kilopascals = -80 * (1 - Math.exp(-Math.max(0, i - 100) / 40.0));
      points.append(i / 10.0).append(',').append(kilopascals).append(",\"a \"\"b\"\"\"\n");
      String millibar = Double.toString(kilopascals * 10).replace('.', ',');
      commas.append(i * 100).append(';').append(millibar).append("\r\n");
    }
    return List.of(Bytes.of(points.toString()), Bytes.of(commas.toString()));
  }

  static List<byte[]> criteria() {
    return List.of(
        Bytes.of(
            "{\"name\":\"site\",\"rise\":\"65 kPa\",\"riseTimeLimit\":\"10 s\",\"usualRiseTimeFrom\":"
                + "\"5 s\",\"maximumVacuumLimit\":\"600 mmHg\",\"altitudeRule\":\"strict\","
                + "\"decisionRule\":\"simple\",\"jar\":\"2 L\",\"ratedSpeed\":\"30 L/min\"}"),
        Bytes.of("{\"openVacuumLimit\": \"9.5 kPa\", \"jar\": \"750 mL\"}"));
  }

  private static byte[] read(Path file) {
    try {
      return Files.readAllBytes(file);
    } catch (java.io.IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }
}

package org.thumbseal.accuracy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import org.thumbseal.capture.CaptureFormatException;
import org.thumbseal.capture.CaptureReader;
import org.thumbseal.json.JsonGate;
import org.thumbseal.json.JsonRefusedException;
import tools.jackson.databind.JsonNode;

/** A folder of captures {@code name.log} and one {@code truth.json} that says what they show. */
final class CaptureFolder {
  static final String TRUTH = "truth.json";

  private CaptureFolder() {}

  /**
   * The captures in which a test is said to be, by name.
   *
   * @throws UnreadableCapturesException if the truth or a capture it names cannot be read
   */
  static Map<String, Trial> trials(Path folder) throws UnreadableCapturesException {
    Map<String, Trial> trials = new TreeMap<>();
    for (Map.Entry<String, JsonNode> entry : truths(folder.resolve(TRUTH)).entrySet()) {
      Truth truth = Truth.of(entry.getValue());
      if (truth.value(Truth.ONSET).isPresent()) {
        trials.put(entry.getKey(), trial(folder.resolve(entry.getKey() + ".log"), truth));
      }
    }
    return trials;
  }

  private static Map<String, JsonNode> truths(Path file) throws UnreadableCapturesException {
    try {
      Map<String, JsonNode> truths = new TreeMap<>();
      JsonGate.read(file).propertyStream().forEach(e -> truths.put(e.getKey(), e.getValue()));
      return truths;
    } catch (JsonRefusedException e) {
      throw new UnreadableCapturesException(file + ": " + e.getMessage(), e);
    }
  }

  private static Trial trial(Path file, Truth truth) throws UnreadableCapturesException {
    try {
      return Trial.of(CaptureReader.read(Files.readAllBytes(file)), truth);
    } catch (NoSuchFileException e) {
      throw new UnreadableCapturesException(file + ": named in " + TRUTH + ", but not there", e);
    } catch (CaptureFormatException e) {
      throw new UnreadableCapturesException(file + ": " + e.getMessage(), e);
    } catch (IOException e) {
      throw new UnreadableCapturesException(file + ": cannot be read", e);
    }
  }
}

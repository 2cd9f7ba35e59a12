package org.thumbseal.archive;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import org.thumbseal.calibration.Calibration;
import org.thumbseal.calibration.Calibrations;
import org.thumbseal.json.CalibrationReader;
import org.thumbseal.json.JsonGate;
import org.thumbseal.json.JsonRefusedException;
import org.thumbseal.seal.SealAnswer;
import org.thumbseal.seal.SealCheck;
import org.thumbseal.seal.SealVerifier;
import org.thumbseal.seal.TrustStore;
import tools.jackson.databind.node.ObjectNode;

/**
 * Finds the calibrations whose seal is good and by a trusted key; says which others it found, and
 * leaves them out. The place in the chain is for {@code verify} to check.
 */
public final class SealedCalibrations {
  private final SealVerifier verifier;
  private final Consumer<String> remarks;
  private final Map<String, Calibration> found = new TreeMap<>();

  /** A search that trusts these keys, and says a line about each calibration that is not used. */
  public SealedCalibrations(TrustStore trust, Consumer<String> remarks) {
    this.verifier = new SealVerifier(trust);
    this.remarks = remarks;
  }

  /** What was found, each once. */
  public Calibrations all() {
    return new Calibrations(List.copyOf(found.values()));
  }

  /**
   * Takes the calibration in a file.
   *
   * @throws JsonRefusedException if the file is no calibration at all; the message names no file
   */
  public void addFile(Path file) throws JsonRefusedException {
    ObjectNode document = JsonGate.read(file);
    if (!CalibrationReader.isCalibration(document)) {
      throw new JsonRefusedException("is no calibration");
    }
    add(file, document);
  }

  /**
   * Takes all calibrations among the documents of a directory, whatever their names.
   *
   * @throws ArchiveException if it cannot be read
   */
  public void addDirectory(Path path) throws ArchiveException {
    search(path, file -> true);
  }

  /**
   * The same for a directory of results, of which only those files are opened that are named as
   * calibrations are when they are stored: there may be thousands of others.
   *
   * @throws ArchiveException if it cannot be read
   */
  public void addResults(Path path) throws ArchiveException {
    search(path, ResultName::isCalibration);
  }

  private void search(Path path, Predicate<Path> wanted) throws ArchiveException {
    try {
      files(path, wanted).forEach(this::addMember);
    } catch (IOException e) {
      throw new ArchiveException(path + ": cannot be read: " + e.getMessage());
    }
  }

  private static Collection<Path> files(Path path, Predicate<Path> wanted) throws IOException {
    List<Path> files = new ArrayList<>();
    new ResultDirectory(path).forEachDocument(files::add);
    return files.stream().filter(wanted).sorted().toList();
  }

  private void addMember(Path file) {
    try {
      ObjectNode document = JsonGate.read(file);
      if (CalibrationReader.isCalibration(document)) {
        add(file, document);
      }
    } catch (JsonRefusedException e) {
      notUsed(file, e.getMessage());
    }
  }

  private void add(Path file, ObjectNode document) {
    SealCheck seal = verifier.check(document);
    if (seal.answer() != SealAnswer.TRUSTED_KEY) {
      String reason = seal.reason().isEmpty() ? "" : ": " + seal.reason();
      notUsed(file, seal.answer().text() + reason);
      return;
    }
    try {
      Calibration calibration = CalibrationReader.read(document);
      found.put(calibration.id(), calibration);
    } catch (JsonRefusedException e) {
      notUsed(file, e.getMessage());
    }
  }

  private void notUsed(Path file, @Nullable String why) {
    remarks.accept(file + ": this calibration is not used: " + why);
  }
}

package org.thumbseal.cli;

import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.thumbseal.archive.ArchiveException;
import org.thumbseal.archive.SealedCalibrations;
import org.thumbseal.calibration.Calibrations;
import org.thumbseal.json.JsonRefusedException;
import org.thumbseal.json.Printable;
import org.thumbseal.seal.TrustStore;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Where calibrations of sensors are looked for. */
final class CalibrationOptions {
  @Option(
      names = "--calibrations",
      paramLabel = "FILE|DIR",
      description =
          "calibrations of sensors, sealed by a trusted key; repeatable. Those in the --results"
              + " directory are used too")
  private List<Path> paths = List.of();

  @Mixin private TrustOption trust = new TrustOption();

  /** All that can be used; a line on standard error for each that cannot. */
  Calibrations load(Optional<Path> results, Path keyFile, PrintWriter err) {
    if (paths.isEmpty() && results.isEmpty()) {
      return Calibrations.NONE;
    }
    SealedCalibrations search =
        new SealedCalibrations(
            trust.trusted(keyFile), line -> err.println("thumbseal: " + Printable.line(line)));
    paths.forEach(path -> add(path, search));
    results.filter(Files::isDirectory).ifPresent(directory -> addResults(directory, search));
    return search.all();
  }

  /** Whose seals count. */
  TrustStore trusted(Path keyFile) {
    return trust.trusted(keyFile);
  }

  private static void add(Path path, SealedCalibrations search) {
    try {
      if (Files.isDirectory(path)) {
        search.addDirectory(path);
      } else {
        search.addFile(path);
      }
    } catch (JsonRefusedException e) {
      throw Failure.usage("--calibrations " + path + ": " + e.getMessage());
    } catch (ArchiveException e) {
      throw Failure.usage("--calibrations " + e.getMessage());
    }
  }

  private static void addResults(Path directory, SealedCalibrations search) {
    try {
      search.addResults(directory);
    } catch (ArchiveException e) {
      throw Failure.machine(String.valueOf(e.getMessage()));
    }
  }
}

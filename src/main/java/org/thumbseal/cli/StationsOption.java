package org.thumbseal.cli;

import java.nio.file.Path;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.thumbseal.guided.Stations;
import picocli.CommandLine.Option;

/** What the stations of a leak search are called here. */
final class StationsOption {
  @Option(
      names = "--stations",
      paramLabel = "FILE",
      description =
          "names of the stations of a leak search, a line each from the patient end inwards:"
              + " 'station; what lies between it and the next', a * before the jar inlet. Default:"
              + " patient end of the tube, jar inlet, jar outlet, pump side of the filter, pump"
              + " inlet")
  private @Nullable Path file;

  Stations stations() {
    return file == null ? Stations.USUAL : new Stations(StationsFile.read(file), Optional.of(file));
  }
}

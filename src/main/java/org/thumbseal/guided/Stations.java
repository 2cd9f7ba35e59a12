package org.thumbseal.guided;

import java.nio.file.Path;
import java.util.Optional;
import org.thumbseal.seek.SuctionPath;

/**
 * Where a search may block the suction path.
 *
 * @param path the stations
 * @param file that names them; absent for the usual ones
 */
public record Stations(SuctionPath path, Optional<Path> file) {
  /** Those that need no file. */
  public static final Stations USUAL = new Stations(SuctionPath.USUAL, Optional.empty());
}

package org.thumbseal.daemon;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Optional;
import org.thumbseal.archive.Archive;
import org.thumbseal.json.ResultTree;

/**
 * Where the capture of results goes that the disk has not taken when the program ends: it stays
 * where it is under way, else it is written into a folder of its own that only its owner can read.
 */
final class LastPlace {
  private static final List<String> PLACES = List.of("java.io.tmpdir", "user.home");

  private final Path results;
  private final BenchListener listener;
  private Optional<Path> folder = Optional.empty();

  LastPlace(Path results, BenchListener listener) {
    this.results = results;
    this.listener = listener;
  }

  /** Finds it a place, and says where; false when there is none. */
  boolean isSafe(Unsaved result) {
    Optional<Path> open = result.safeIn().filter(Files::isRegularFile);
    if (open.isPresent()) {
      say(result, "not stored, but safe in " + open.get() + ": the next watch stores it");
      return true;
    }
    Optional<Path> rescued =
        PLACES.stream().flatMap(place -> write(result, place).stream()).findFirst();
    rescued.ifPresentOrElse(
        file ->
            say(
                result,
                "not stored; its recording is in "
                    + file
                    + ": when the disk is mended, run replay --results "
                    + results
                    + " "
                    + file
                    + " with the same --criteria, if any"),
        () -> say(result, "could not be written anywhere, and is lost"));
    return rescued.isPresent();
  }

  private Optional<Path> write(Unsaved result, String place) {
    try {
      Path into = folder(place);
      Path file = into.resolve(Archive.captureName(ResultTree.of(result.results().getFirst())));
      write(file, result.capture());
      forget(result);
      return Optional.of(file);
    } catch (IOException e) {
      folder = Optional.empty();
      return Optional.empty();
    }
  }

  /** The next start would make another result of what had been written of the same test. */
  private static void forget(Unsaved result) {
    try {
      if (result.open().isPresent()) {
        Files.deleteIfExists(result.open().get());
      }
    } catch (IOException e) {
      // A disk that lets nothing be removed: then it is taken up again, which is better than lost.
    }
  }

  private static void write(Path file, byte[] capture) throws IOException {
    try (FileChannel out =
        FileChannel.open(file, StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE)) {
      ByteBuffer bytes = ByteBuffer.wrap(capture);
      while (bytes.hasRemaining()) {
        out.write(bytes);
      }
      out.force(true);
    }
  }

  private Path folder(String place) throws IOException {
    if (folder.isEmpty()) {
      Path parent = Path.of(System.getProperty(place, ""));
      folder = Optional.of(Files.createTempDirectory(parent, "thumbseal-results-"));
    }
    return folder.get();
  }

  private void say(Unsaved result, String what) {
    listener.notice(result.port() + ": a result was " + what);
  }
}

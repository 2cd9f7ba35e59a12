package org.thumbseal.archive;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.thumbseal.json.JsonGate;
import org.thumbseal.json.JsonRefusedException;
import org.thumbseal.record.Correction.Subject;
import org.thumbseal.seal.LedgerEntry;
import org.thumbseal.seal.Seal;
import tools.jackson.databind.node.ObjectNode;

/**
 * Finds the results that corrections are about: under the name they had then, else by their digest
 * among all documents.
 */
final class SubjectFinder {
  private final ResultDirectory directory;
  private final Map<String, Path> found = new HashMap<>();
  private final Set<String> namesTaken = new HashSet<>();

  SubjectFinder(ResultDirectory directory, Collection<Subject> subjects) throws IOException {
    this.directory = directory;
    List<Path> folders = folders();
    for (Subject subject : subjects) {
      folders.forEach(folder -> tryName(folder, subject));
    }
    Set<String> sought = new HashSet<>();
    subjects.forEach(subject -> sought.add(subject.digest()));
    sought.removeAll(found.keySet());
    if (!sought.isEmpty()) {
      directory.forEachDocument(file -> tryDigest(file, sought));
    }
  }

  /** What is wrong with the result that is named, in half a sentence; empty when nothing is. */
  String fault(Subject subject) {
    Path file = found.get(subject.digest());
    if (file == null) {
      return "corrects "
          + subject.file()
          + (namesTaken.contains(subject.file())
              ? ", which is no longer what it was"
              : ", which is missing");
    }
    return fits(file, subject)
        ? ""
        : "names an id or a place in the ledger that " + file.getFileName() + " does not have";
  }

  /** The file of the result with this digest, if it is there. */
  Optional<Path> file(String digest) {
    return Optional.ofNullable(found.get(digest));
  }

  private List<Path> folders() throws IOException {
    try (Stream<Path> below = Files.list(directory.path())) {
      return Stream.concat(Stream.of(directory.path()), below.filter(Files::isDirectory)).toList();
    }
  }

  private void tryName(Path folder, Subject subject) {
    try {
      Path file = folder.resolve(subject.file());
      if (Files.isRegularFile(file)) {
        namesTaken.add(subject.file());
        tryDigest(file, Set.of(subject.digest()));
      }
    } catch (InvalidPathException e) {
      // A name that this system cannot have is the name of no file here.
    }
  }

  private void tryDigest(Path file, Set<String> sought) {
    try {
      String digest = Seal.digest(JsonGate.read(file));
      if (sought.contains(digest)) {
        found.putIfAbsent(digest, file);
      }
    } catch (JsonRefusedException e) {
      // What is no document has been told where it was read as one.
    }
  }

  private static boolean fits(Path file, Subject subject) {
    try {
      ObjectNode result = JsonGate.read(file);
      return result.path("id").asString("").equals(subject.id())
          && LedgerEntry.read(result)
              .filter(e -> e.kid().equals(subject.kid()))
              .filter(e -> e.position().sequence() == subject.sequence())
              .isPresent();
    } catch (JsonRefusedException e) {
      return false;
    }
  }
}

package org.thumbseal.archive;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.HashSet;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;

/**
 * What lies in a folder and is no part of the evidence: captures that no document names, unfinished
 * writes, things of others. As a rule a document names the capture of its own name, so only where
 * one does not is anything kept.
 */
final class FolderRemarks {
  private final Folder folder;
  private final boolean top;
  private final Set<String> named = new HashSet<>();
  private final Set<String> notNamed = new HashSet<>();
  private final Set<String> strays = new TreeSet<>();
  private long others;
  private String firstOther = "";

  /**
   * Remarks on one folder.
   *
   * @param top whether it is the directory itself, in which there are folders
   */
  FolderRemarks(Folder folder, boolean top) {
    this.folder = folder;
    this.top = top;
  }

  /** A document of the folder names this capture; empty when it names none. */
  void document(String name, String capture) {
    String own = with(ResultName.CAPTURE, name);
    if (!capture.equals(own)) {
      named.add(capture);
      notNamed.add(own);
    }
  }

  /** Says it all, once every document was seen. */
  void report(Consumer<Outcome> report) throws IOException {
    Folder.forEachName(folder.path(), this::sort);
    strays.forEach(name -> report.accept(stray(folder.path().resolve(name))));
    if (others > 0 && (top || !folder.documents().isEmpty())) {
      String what =
          others == 1 ? firstOther + " was" : others + " others, such as " + firstOther + ", were";
      report.accept(
          new Outcome.Remarked(folder.path(), what + " not looked at: not of this program"));
    }
  }

  private void sort(String name) {
    Path path = folder.path().resolve(name);
    if (isUnnamedCapture(name) || Durable.isTemporary(path)) {
      strays.add(name);
    } else if (isOther(name, path)) {
      firstOther = others == 0 || name.compareTo(firstOther) < 0 ? name : firstOther;
      others++;
    }
  }

  private boolean isUnnamedCapture(String name) {
    if (!name.endsWith(ResultName.CAPTURE) || Folder.isHidden(name)) {
      return false;
    }
    boolean ofItsDocument =
        Collections.binarySearch(folder.documents(), with(ResultName.DOCUMENT, name)) >= 0
            && !notNamed.contains(name);
    return !ofItsDocument && !named.contains(name);
  }

  private boolean isOther(String name, Path path) {
    boolean known = name.endsWith(ResultName.DOCUMENT) || name.endsWith(ResultName.CAPTURE);
    return !known && !Folder.isHidden(name) && !(top && isOwn(name, path));
  }

  /** Folders of years, and the index that is derived from all this. */
  private static boolean isOwn(String name, Path path) {
    return Files.isDirectory(path) || name.matches("records\\.sqlite(-wal|-shm|-journal)?");
  }

  private static Outcome stray(Path file) {
    return new Outcome.Remarked(
        file,
        Durable.isTemporary(file)
            ? "is an unfinished write; the next program that writes here clears it away"
            : "is a capture that no document here names");
  }

  /** The name with another ending of the same length or not. */
  private static String with(String ending, String name) {
    return name.substring(0, name.lastIndexOf('.')) + ending;
  }
}

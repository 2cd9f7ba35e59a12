package org.thumbseal.archive;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import org.thumbseal.json.Printable;

/**
 * A result directory that cannot be used or written; the message is one line fit for a person. The
 * machine failed, not the test: exit code 3.
 */
public final class ArchiveException extends Exception {
  private static final long serialVersionUID = 1L;

  /** Says in one line what is wrong and what to do. */
  public ArchiveException(String message) {
    super(Printable.line(message));
  }

  /** A directory that cannot be made or opened, and so cannot be where results go. */
  static ArchiveException unusable(Path path, IOException cause) {
    String why = cause instanceof NoSuchFileException ? "cannot be made" : reason(cause);
    return new ArchiveException(path + ": " + why + "; choose another --results directory");
  }

  static ArchiveException of(Path path, IOException cause) {
    return new ArchiveException(path + ": " + reason(cause) + remedy(cause));
  }

  private static String remedy(IOException cause) {
    if (cause instanceof AccessDeniedException) {
      return "; let this user write there";
    }
    if (cause instanceof NoSuchFileException) {
      return "; put it back, or plug its disk in again";
    }
    String message = String.valueOf(cause.getMessage());
    if (message.contains("No space left")) {
      return "; make room on that disk";
    }
    return message.contains("Read-only") ? "; make that disk writable again" : "";
  }

  /** Why something cannot be read, in half a sentence. */
  static String reading(IOException cause) {
    return cause instanceof AccessDeniedException
        ? "may not be read: permission denied"
        : "cannot be read: " + cause.getMessage();
  }

  private static String reason(IOException cause) {
    if (cause instanceof AccessDeniedException) {
      return "permission denied";
    }
    if (cause instanceof FileAlreadyExistsException || cause instanceof NotDirectoryException) {
      return "is in the way: a directory is needed here";
    }
    if (cause instanceof NoSuchFileException) {
      return "has vanished";
    }
    boolean named = cause instanceof FileSystemException f && f.getReason() != null;
    return "cannot be written: "
        + (named ? ((FileSystemException) cause).getReason() : cause.getMessage());
  }
}

package org.thumbseal.cli;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;

/** What the machine refused, in one line for a person. */
final class FileTrouble {
  private FileTrouble() {}

  static String inWords(IOException trouble) {
    if (trouble instanceof NoSuchFileException missing) {
      return missing.getFile() + " cannot be opened: there is no such port or folder";
    }
    if (trouble instanceof AccessDeniedException denied) {
      return denied.getFile() + " cannot be written: permission denied";
    }
    if (trouble instanceof FileSystemException other && other.getReason() != null) {
      return other.getFile() + " cannot be written: " + other.getReason();
    }
    return "writing stopped: " + trouble.getMessage();
  }
}

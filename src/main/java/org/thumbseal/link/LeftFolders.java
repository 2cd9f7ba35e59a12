package org.thumbseal.link;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.UserPrincipal;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;

/**
 * Private folders that earlier runs could not take away: on Windows always, elsewhere after a kill.
 * Whatever cannot be removed is left, without a word.
 */
public final class LeftFolders {
  /** A younger one may belong to a program that is just starting. */
  private static final Duration OLD = Duration.ofDays(1);

  private LeftFolders() {}

  /** Removes those that lie beside this one, have its owner and are a day older. */
  public static void removeBeside(PrivateFolder fresh) {
    try {
      for (Path path : old(fresh.path())) {
        new PrivateFolder(path).close();
      }
    } catch (IOException e) {
      // Tidying up is no reason not to start.
    }
  }

  private static List<Path> old(Path fresh) throws IOException {
    FileTime limit = FileTime.from(made(fresh).toInstant().minus(OLD));
    UserPrincipal owner = owner(fresh);
    List<Path> old = new ArrayList<>();
    try (DirectoryStream<Path> beside =
        Files.newDirectoryStream(fresh.resolveSibling(""), PrivateFolder.PREFIX + "*")) {
      for (Path path : beside) {
        // Somebody else's folder could be exchanged for a link while it is being emptied.
        if (made(path).compareTo(limit) < 0 && owner(path).equals(owner)) {
          old.add(path);
        }
      }
    }
    return old;
  }

  private static FileTime made(Path path) throws IOException {
    return Files.getLastModifiedTime(path, LinkOption.NOFOLLOW_LINKS);
  }

  private static UserPrincipal owner(Path path) throws IOException {
    return Files.getOwner(path, LinkOption.NOFOLLOW_LINKS);
  }
}

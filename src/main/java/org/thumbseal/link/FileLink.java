package org.thumbseal.link;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.thumbseal.link.LinkUnavailable.Reason;

/**
 * A plain file of the very bytes that came over a wire. It is read as fast as it is taken; when its
 * lines once arrived is not known.
 */
record FileLink(LinkAddress.RawFile address) implements Link {
  @Override
  public String name() {
    return address.text();
  }

  @Override
  public boolean finite() {
    return true;
  }

  @Override
  public LinkConnection open() throws LinkUnavailable {
    Path path = address.path();
    refuse(!Files.exists(path), Reason.UNKNOWN, "no such file");
    refuse(Files.isDirectory(path), Reason.WRONG_KIND, "it is a directory; name a file in it");
    refuse(
        !Files.isRegularFile(path),
        Reason.WRONG_KIND,
        "it is no plain file; give a port without 'file:', a pipe as '-' with '<'");
    refuse(!Files.isReadable(path), Reason.DENIED, "no permission to read it");
    try {
      return new FileConnection(Files.newInputStream(path));
    } catch (IOException e) {
      throw new LinkUnavailable(Reason.FAILED, "cannot be read: " + e.getMessage());
    }
  }

  private static void refuse(boolean condition, Reason reason, String message)
      throws LinkUnavailable {
    if (condition) {
      throw new LinkUnavailable(reason, message);
    }
  }
}

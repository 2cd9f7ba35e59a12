package org.thumbseal.page;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.thumbseal.json.Canonical;
import org.thumbseal.json.Json;
import org.thumbseal.json.JsonGate;
import org.thumbseal.json.JsonRefusedException;
import org.thumbseal.seal.AccessToken;
import org.thumbseal.seal.KeyException;
import tools.jackson.databind.node.ObjectNode;

/**
 * Where a running watch can be spoken to: a file in its folder of results that its owner alone can
 * read, there as long as it runs.
 *
 * @param url of the page
 * @param token where one is asked for
 */
public record PageNote(String url, Optional<String> token) {
  private static final String NAME = ".page";
  private static final String TOKEN = "?token=";

  /**
   * Writes it into a folder of results.
   *
   * @throws KeyException if it cannot be written
   */
  public void write(Path results) throws KeyException {
    ObjectNode node = Json.object().put("url", url);
    token.ifPresent(text -> node.put("token", text));
    AccessToken.writePrivate(results.resolve(NAME), Canonical.text(node) + "\n");
  }

  /** What a link says: the address, and the token behind it. */
  public static PageNote ofLink(String link) {
    int query = link.indexOf(TOKEN);
    return query < 0
        ? new PageNote(link, Optional.empty())
        : new PageNote(
            link.substring(0, query), Optional.of(link.substring(query + TOKEN.length())));
  }

  /** Takes it away, if it can be done: a note that is left leads to nobody, and that is said. */
  public static void remove(Path results) {
    try {
      Files.deleteIfExists(results.resolve(NAME));
    } catch (IOException e) {
      // The next watch writes its own over it.
    }
  }

  /** The note in a folder of results; empty where there is none, or none that can be read. */
  public static Optional<PageNote> read(Path results) {
    try {
      ObjectNode node = JsonGate.read(results.resolve(NAME));
      return Optional.of(
          new PageNote(
              node.path("url").asString(""),
              Optional.ofNullable(node.get("token")).map(text -> text.asString())));
    } catch (JsonRefusedException e) {
      return Optional.empty();
    }
  }
}

package org.thumbseal.archive;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.IntFunction;
import org.thumbseal.json.Canonical;
import org.thumbseal.json.ExampleDocument;
import org.thumbseal.seal.ChainEnd;
import org.thumbseal.seal.Head;
import org.thumbseal.seal.Seal;
import org.thumbseal.seal.Sha256;
import org.thumbseal.seal.SigningKey;
import tools.jackson.databind.node.ObjectNode;

/**
 * A result directory of many documents, as an archive would have left it, but written in a fraction
 * of the time because nothing is forced to the disk.
 */
public final class LargeDirectory {
  private static final Path FIXTURES = Path.of("fixtures", "captures");
  private static final byte[] CAPTURE =
      "# thumbseal capture 1\n".repeat(50).getBytes(StandardCharsets.UTF_8);

  private final Path path;
  private final SigningKey key;
  private final byte[] capture;
  private ChainEnd end;

  private LargeDirectory(Path path, SigningKey key, byte[] capture) {
    this.path = path;
    this.key = key;
    this.capture = capture.clone();
    this.end = ChainEnd.none(key.verifyingKey().kid());
  }

  /** Fills an empty directory with so many documents of about 3 KB, with captures of 1 KB. */
  public static void write(Path path, int documents, SigningKey key) throws IOException {
    write(path, documents, key, ExampleDocument::unsealed);
  }

  /**
   * The same with documents of one's own, made from their numbers; each has to have an id. One
   * without evidence gets no capture.
   */
  public static void write(
      Path path, int documents, SigningKey key, IntFunction<ObjectNode> document)
      throws IOException {
    new LargeDirectory(path, key, CAPTURE).fill(documents, document);
  }

  /** The same with a real result and its recording, over and over: 11 and 47 KB. */
  public static void writeReal(Path path, int documents, SigningKey key) throws IOException {
    byte[] document = Files.readAllBytes(FIXTURES.resolve("sound.json"));
    new LargeDirectory(path, key, Files.readAllBytes(FIXTURES.resolve("sound.log")))
        .fill(documents, number -> ExampleDocument.numbered(document, number));
  }

  private void fill(int documents, IntFunction<ObjectNode> unsealed) throws IOException {
    String last = "";
    for (int number = 1; number <= documents; number++) {
      last = add(unsealed.apply(number));
    }
    String head = Canonical.text(new Head(end, List.of(), last).sealed(key));
    Files.writeString(path.resolve(ResultDirectory.HEAD), head + "\n");
  }

  private String add(ObjectNode document) throws IOException {
    ResultName name = ResultName.of(document);
    String stem = name.withIdDigits(Placement.FEWEST_ID_DIGITS);
    Path folder = Files.createDirectories(path.resolve(name.folder()));
    if (document.get("evidence") instanceof ObjectNode evidence) {
      evidence.put("capture", stem + ResultName.CAPTURE).put("sha256", Sha256.hex(capture));
      Files.write(folder.resolve(stem + ResultName.CAPTURE), capture);
    }
    ObjectNode sealed = Seal.seal(document, end.next(), key);
    Files.writeString(folder.resolve(stem + ResultName.DOCUMENT), Canonical.text(sealed) + "\n");
    end = end.then(Seal.digest(sealed));
    return name.folder() + "/" + stem + ResultName.DOCUMENT;
  }
}

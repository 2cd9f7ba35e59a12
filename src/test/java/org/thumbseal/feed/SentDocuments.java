package org.thumbseal.feed;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.thumbseal.archive.Archive;
import org.thumbseal.archive.ArchiveException;
import org.thumbseal.archive.LargeDirectory;
import org.thumbseal.json.ExampleDocument;
import org.thumbseal.seal.SigningKey;
import tools.jackson.databind.node.ObjectNode;

/** A results directory with documents that are to be sent. */
record SentDocuments(Path path, SigningKey key) {
  /** With so many tests in it, numbered from 1. */
  static SentDocuments in(Path path, int documents) throws IOException {
    SentDocuments all = new SentDocuments(Files.createDirectories(path), SigningKey.generate());
    if (documents > 0) {
      LargeDirectory.write(path, documents, all.key);
    }
    return all;
  }

  /** One more test. */
  Path add(int number) throws ArchiveException {
    return add(ExampleDocument.unsealed(number));
  }

  Path add(ObjectNode document) throws ArchiveException {
    try (Archive archive = Archive.open(path, key)) {
      return archive.store(document, "# capture\n".getBytes(StandardCharsets.US_ASCII)).document();
    }
  }

  static String id(int number) {
    return String.format(Locale.ROOT, "%08x-5b7d-8c41-9e02-6a1d4f8b2c70", number);
  }

  /** The ids of the tests numbered from 1. */
  static List<String> ids(int documents) {
    List<String> ids = new ArrayList<>();
    for (int number = 1; number <= documents; number++) {
      ids.add(id(number));
    }
    return ids;
  }

  FeedPlace place() {
    return FeedPlace.in(path);
  }
}

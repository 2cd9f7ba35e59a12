package org.thumbseal.seal;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.thumbseal.json.Json;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * What {@code head.json} says: where each chain in the directory ends, so that cutting off an end
 * shows. It is sealed like a result.
 *
 * @param last the chain of the key that sealed the head
 * @param earlier the chains of keys that were in use in this directory before
 * @param document path of the last document, relative to the directory, with {@code /}
 */
public record Head(ChainEnd last, List<ChainEnd> earlier, String document) {
  /** Value of the member {@code schema}. */
  public static final String SCHEMA = "thumbseal-head/1";

  /** Keeps a copy of the list. */
  public Head {
    earlier = List.copyOf(earlier);
  }

  /** The end of this key's chain, if the head knows one. */
  public Optional<ChainEnd> end(String kid) {
    return Stream.concat(Stream.of(last), earlier.stream())
        .filter(e -> e.kid().equals(kid))
        .findFirst();
  }

  /** How many documents there are, of all keys. */
  public long documents() {
    return last.sequence() + earlier.stream().mapToLong(ChainEnd::sequence).sum();
  }

  /** The head after one more document; {@code end} belongs to the key that will seal it. */
  public Head moved(ChainEnd end, String path) {
    List<ChainEnd> others = new ArrayList<>();
    Stream.concat(earlier.stream(), Stream.of(last))
        .filter(e -> !e.kid().equals(end.kid()))
        .forEach(others::add);
    return new Head(end, others, path);
  }

  /** The head as a sealed document. */
  public ObjectNode sealed(SigningKey key) {
    ObjectNode head = Json.object().put("schema", SCHEMA).put("document", document);
    last.write(head);
    head.set(Seal.KEY, key.verifyingKey().members());
    ArrayNode others = head.putArray("earlier");
    earlier.forEach(e -> e.write(others.addObject()));
    return Seal.sign(head, key);
  }

  /** Reads a head, whose seal is the caller's to check; empty if this is none. */
  public static Optional<Head> read(ObjectNode tree) {
    List<ChainEnd> earlier = new ArrayList<>();
    JsonNode others = tree.path("earlier");
    for (JsonNode other : others) {
      ChainEnd.read(other).ifPresent(earlier::add);
    }
    boolean complete = others.isArray() && earlier.size() == others.size();
    Optional<String> schema = Jwk.text(tree, "schema").filter(SCHEMA::equals).filter(s -> complete);
    return schema
        .flatMap(s -> Jwk.text(tree, "document"))
        .flatMap(d -> ChainEnd.read(tree).map(last -> new Head(last, earlier, d)));
  }
}

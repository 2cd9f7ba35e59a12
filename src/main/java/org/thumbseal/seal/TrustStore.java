package org.thumbseal.seal;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.thumbseal.json.JsonGate;
import org.thumbseal.json.JsonRefusedException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/** The public keys that are trusted, by {@code kid}. */
public final class TrustStore {
  private final Map<String, TrustedKey> keys = new HashMap<>();

  private TrustStore() {}

  /** Trusts these keys alone. */
  public static TrustStore of(VerifyingKey... keys) {
    TrustStore store = new TrustStore();
    for (VerifyingKey key : keys) {
      store.add(TrustedKey.of(key));
    }
    return store;
  }

  /**
   * Reads files that hold a JWK or a JWK set, and all such files ({@code .jwk}, {@code .jwks},
   * {@code .json}) of folders.
   *
   * @throws KeyException if one of them cannot be read, is missing, is no public Ed25519 key, or
   *     says of a set what has to be said of each key
   */
  public static TrustStore load(List<Path> filesAndFolders) throws KeyException {
    TrustStore store = new TrustStore();
    for (Path path : filesAndFolders) {
      for (Path file : files(path)) {
        store.addFile(file);
      }
    }
    return store;
  }

  /** The trusted key with this thumbprint. */
  Optional<TrustedKey> find(String kid) {
    return Optional.ofNullable(keys.get(kid));
  }

  /** All of them, by name. */
  public List<TrustedKey> all() {
    return keys.values().stream()
        .sorted(Comparator.comparing(TrustedKey::name).thenComparing(k -> k.key().kid()))
        .toList();
  }

  /** How many keys are trusted. */
  public int size() {
    return keys.size();
  }

  private void add(TrustedKey key) {
    keys.merge(key.key().kid(), key, TrustedKey::and);
  }

  private void addFile(Path file) throws KeyException {
    try {
      ObjectNode content = JsonGate.read(file);
      for (JsonNode jwk : jwks(content)) {
        addJwk(jwk);
      }
    } catch (JsonRefusedException e) {
      throw new KeyException(file + ": " + Jwk.withoutContent(e));
    } catch (KeyException e) {
      throw new KeyException(file + ": " + e.getMessage());
    }
  }

  private static Iterable<JsonNode> jwks(ObjectNode content) throws KeyException {
    JsonNode keys = content.get("keys");
    if (keys == null) {
      return List.of(content);
    }
    for (String member : List.of(TrustedKey.NAME, Validity.FROM, Validity.UNTIL)) {
      if (content.has(member)) {
        // Passed over, it would leave a key trusted for longer than whoever wrote it meant.
        throw new KeyException(
            "\"" + member + "\" stands beside \"keys\"; put it into each key that it is about");
      }
    }
    return keys;
  }

  private void addJwk(JsonNode jwk) throws KeyException {
    if (!(jwk instanceof ObjectNode object)) {
      throw new KeyException("is not a JWK");
    }
    add(TrustedKey.read(object));
  }

  private static List<Path> files(Path path) throws KeyException {
    if (!Files.isDirectory(path)) {
      return List.of(path);
    }
    try (Stream<Path> all = Files.list(path)) {
      return all.filter(TrustStore::mayHoldKey).sorted().toList();
    } catch (IOException e) {
      throw new KeyException(path + ": cannot be listed: " + e.getMessage());
    }
  }

  private static boolean mayHoldKey(Path file) {
    return Files.isRegularFile(file)
        && file.getFileName().toString().matches("[^.].*\\.(jwks?|json)");
  }
}

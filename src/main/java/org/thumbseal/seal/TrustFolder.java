package org.thumbseal.seal;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.thumbseal.json.Canonical;
import org.thumbseal.json.JsonGate;
import org.thumbseal.json.JsonRefusedException;
import tools.jackson.databind.node.ObjectNode;

/** The folder {@code trusted} beside a private key, with a public key in each file. */
public final class TrustFolder {
  private static final int LONGEST_NAME = 40;

  private final Path path;

  /** The folder beside this private key; it need not exist. */
  public TrustFolder(Path keyFile) {
    this.path = KeyStore.folder(keyFile).resolve("trusted");
  }

  Path path() {
    return path;
  }

  /**
   * The public key that a file holds, as it would be trusted.
   *
   * @param from a date or time, RFC 3339; without it and {@code until}, what the file itself says
   * @throws KeyException if the file cannot be read, is no public Ed25519 key, or the dates are
   *     none
   */
  public static TrustedKey candidate(
      Path jwk, String name, Optional<String> from, Optional<String> until) throws KeyException {
    try {
      ObjectNode entry = JsonGate.read(jwk).put("name", name);
      from.ifPresent(f -> entry.put(Validity.FROM, f));
      until.ifPresent(u -> entry.put(Validity.UNTIL, u));
      return TrustedKey.read(entry);
    } catch (JsonRefusedException e) {
      throw new KeyException(jwk + ": " + Jwk.withoutContent(e));
    } catch (KeyException e) {
      throw new KeyException(jwk + ": " + e.getMessage());
    }
  }

  /**
   * Refuses a key that is there already, whatever its name.
   *
   * @throws KeyException if it is, or a file there cannot be read
   */
  public void requireNew(TrustedKey key) throws KeyException {
    if (!Files.isDirectory(path)) {
      return;
    }
    Optional<TrustedKey> there = TrustStore.load(List.of(path)).find(key.key().kid());
    if (there.isPresent()) {
      throw new KeyException(
          "this key is trusted already, as " + there.get().text() + "; see: thumbseal key trusted");
    }
  }

  /**
   * Trusts a key from now on.
   *
   * @return the file that says so
   * @throws KeyException if it is there already or cannot be written
   */
  public Path add(TrustedKey key) throws KeyException {
    requireNew(key);
    Path file = fileFor(key);
    try {
      write(file, key.entry());
      return file;
    } catch (IOException e) {
      throw KeyStore.notWritten(file, e);
    }
  }

  /** A file that nothing but this key and name lead to; safe whatever the name is. */
  private Path fileFor(TrustedKey key) {
    String plain = key.name().toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-");
    String cut = plain.substring(0, Math.min(LONGEST_NAME, plain.length()));
    String words = cut.replaceAll("^-|-$", "");
    String print = key.key().fingerprint().substring(0, 9).toLowerCase(Locale.ROOT);
    return path.resolve((words.isEmpty() ? "" : words + "-") + print + ".jwk");
  }

  /** Writes a new entry, which is there whole or not at all. */
  void write(Path file, ObjectNode entry) throws IOException {
    OwnerOnly.createFolder(path);
    if (Files.exists(file)) {
      throw new FileAlreadyExistsException(file.toString());
    }
    Path temporary = file.resolveSibling("." + file.getFileName() + ".new");
    Files.deleteIfExists(temporary);
    OwnerOnly.write(temporary, Canonical.text(entry) + "\n");
    OwnerOnly.replace(temporary, file);
  }
}

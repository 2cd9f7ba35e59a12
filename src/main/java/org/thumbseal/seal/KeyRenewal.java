package org.thumbseal.seal;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.InstantSource;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.thumbseal.json.Canonical;
import org.thumbseal.json.JsonGate;
import org.thumbseal.json.JsonRefusedException;
import tools.jackson.databind.node.ObjectNode;

/**
 * Puts a new key in the place of one in use. At every moment the key file holds one whole key: the
 * new one and a copy of the old one are written beside it ({@code .new}, {@code .old}), then one
 * rename makes the change. What is left after it is finished by {@link #settle} when power was
 * lost: the old public key is trusted until now, the new one lies beside its private half, and the
 * copy of the old private key gets its lasting name.
 */
final class KeyRenewal {
  private static final DateTimeFormatter STAMP =
      DateTimeFormatter.ofPattern("uuuuMMdd'T'HHmmss'Z'", Locale.ROOT).withZone(ZoneOffset.UTC);

  private final Path file;
  private final Path publicFile;
  private final InstantSource clock;

  KeyRenewal(Path file, InstantSource clock) {
    this.file = file;
    this.publicFile = KeyStore.publicFile(file);
    this.clock = clock;
  }

  /**
   * Makes the change; whoever calls it has the {@link KeyLock}.
   *
   * @param old the key in this file
   * @param name whose keys they are; without it the one that the old public key has
   * @param passphrase encrypts the new key, if it is to be
   */
  RenewedKey renew(SigningKey old, Optional<String> name, Optional<Passphrase> passphrase)
      throws KeyException, IOException {
    ObjectNode former = former(old);
    SigningKey key = SigningKey.generate();
    ObjectNode jwk = key.verifyingKey().jwk();
    name.or(() -> Jwk.text(former, "name")).ifPresent(n -> jwk.put("name", n));
    OwnerOnly.write(beside(file, ".new"), key.pem(passphrase));
    OwnerOnly.write(beside(publicFile, ".new"), Canonical.text(jwk) + "\n");
    OwnerOnly.write(beside(file, ".old"), Files.readString(file));
    OwnerOnly.replace(beside(file, ".new"), file);
    Path kept = finish();
    return new RenewedKey(new OpenedKey(key, file, true, List.of()), kept, trustFile(kept));
  }

  /**
   * Finishes or undoes what was cut short; what it did, a line each. What another program is about
   * to do is left to it: the key file holds one whole key all the while.
   */
  List<String> settle() throws IOException, KeyException {
    if (!isUnfinished()) {
      return List.of();
    }
    Optional<KeyLock> taken = KeyLock.tryTake(file);
    if (taken.isEmpty()) {
      return List.of();
    }
    try (KeyLock lock = taken.get()) {
      return settle(lock);
    }
  }

  private boolean isUnfinished() {
    return Files.exists(beside(file, ".new")) || Files.exists(beside(file, ".old"));
  }

  /** As {@link #settle()}, by one who has the lock. */
  List<String> settle(KeyLock held) throws IOException, KeyException {
    if (Files.exists(beside(file, ".new"))) {
      Files.deleteIfExists(beside(publicFile, ".new"));
      Files.deleteIfExists(beside(file, ".old"));
      Files.delete(beside(file, ".new"));
      return List.of(
          "a change of the key was cut short before it was made; " + file + " is the one in use");
    }
    if (Files.exists(beside(file, ".old"))) {
      return List.of(
          "finished a change of the key that was cut short; the key before is kept in " + finish());
    }
    return List.of();
  }

  /** Everything after the rename; may be done again from wherever it was cut short. */
  private Path finish() throws IOException, KeyException {
    Instant now = clock.instant().truncatedTo(ChronoUnit.MILLIS);
    Path kept = kept(now);
    if (Files.exists(beside(publicFile, ".new"))) {
      trustUntil(now, trustFile(kept));
      OwnerOnly.replace(beside(publicFile, ".new"), publicFile);
    }
    OwnerOnly.replace(beside(file, ".old"), kept);
    return kept;
  }

  private void trustUntil(Instant now, Path trustFile) throws IOException, KeyException {
    ObjectNode entry = read(publicFile);
    Jwk.text(read(beside(publicFile, ".new")), "name").ifPresent(n -> entry.put("name", n));
    new TrustFolder(file).write(trustFile, entry.put(Validity.UNTIL, now.toString()));
  }

  /** The public half of the old key as it lies beside it; put there when it is missing. */
  private ObjectNode former(SigningKey old) throws KeyException, IOException {
    if (!Files.exists(publicFile)) {
      OwnerOnly.write(publicFile, Canonical.text(old.verifyingKey().jwk()) + "\n");
    }
    ObjectNode former = read(publicFile);
    if (!TrustedKey.read(former).key().equals(old.verifyingKey())) {
      throw new KeyException(
          publicFile + ": is not the public half of " + file + "; move it elsewhere");
    }
    return former;
  }

  private static ObjectNode read(Path jwk) throws KeyException {
    try {
      return JsonGate.read(jwk);
    } catch (JsonRefusedException e) {
      throw new KeyException(jwk + ": " + Jwk.withoutContent(e));
    }
  }

  /** A name that is free, a second later where two changes fall into the same. */
  private Path kept(Instant until) {
    return Stream.iterate(until, time -> time.plusSeconds(1))
        .map(time -> file.resolveSibling(stem() + "-until-" + STAMP.format(time) + ".pem"))
        .filter(kept -> !Files.exists(kept) && !Files.exists(trustFile(kept)))
        .findFirst()
        .orElseThrow();
  }

  private Path trustFile(Path kept) {
    return new TrustFolder(file).path().resolve(KeyStore.publicFile(kept).getFileName());
  }

  private String stem() {
    return file.getFileName().toString().replaceFirst("\\.pem$", "");
  }

  private static Path beside(Path path, String ending) {
    return path.resolveSibling(path.getFileName() + ending);
  }
}

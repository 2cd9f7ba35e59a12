package org.thumbseal.seal;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.thumbseal.json.Canonical;

/**
 * Key files. A private key is PKCS#8 PEM that its owner alone can read, in a folder of which the
 * same is true; its public half lies beside it as {@code <name>.jwk}. Nothing is ever overwritten.
 */
public final class KeyStore {
  private static final String DEFAULT_NAME = "signing-key.pem";
  private static final int LARGEST_KEY_FILE = 16_384;

  private KeyStore() {}

  /**
   * Where the key is unless it is said on the command line: {@code THUMBSEAL_KEY}, else {@code
   * signing-key.pem} in the folder {@code thumbseal} of the user's configuration.
   *
   * @param environment as {@link System#getenv()} gives it
   */
  public static Path defaultFile(Map<String, String> environment) {
    String named = environment.getOrDefault("THUMBSEAL_KEY", "");
    return named.isEmpty() ? configuration(environment).resolve(DEFAULT_NAME) : Path.of(named);
  }

  /**
   * What is trusted unless it is said on the command line: the public keys beside the private one,
   * and those in the folder {@code trusted} there; only what exists is given.
   */
  public static List<Path> defaultTrust(Path keyFile) {
    List<Path> trust = new ArrayList<>();
    for (Path candidate : List.of(publicFile(keyFile), new TrustFolder(keyFile).path())) {
      if (Files.exists(candidate)) {
        trust.add(candidate);
      }
    }
    return trust;
  }

  /**
   * As {@link #loadOrCreate(Path, Passphrases)}, where nothing is encrypted.
   *
   * @throws KeyException if the file is no usable key, others can read it, or it cannot be written
   */
  public static OpenedKey loadOrCreate(Path file) throws KeyException {
    return loadOrCreate(file, Passphrases.NONE);
  }

  /**
   * The key in this file; a new one when there is no such file.
   *
   * @throws KeyException if the file is no usable key, its passphrase cannot be had, others can
   *     read it, or it cannot be written
   */
  public static OpenedKey loadOrCreate(Path file, Passphrases passphrases) throws KeyException {
    if (!Files.exists(file)) {
      return create(file, passphrases);
    }
    OpenedKey key = load(file, passphrases);
    completePublic(key);
    return key;
  }

  /** The public half may have been left behind when the key was moved here. */
  private static void completePublic(OpenedKey key) {
    try {
      writePublic(key.file(), key.key());
    } catch (IOException e) {
      // It is there, or the folder cannot be written: then verify has to be told whom to trust.
    }
  }

  /**
   * As {@link #load(Path, Passphrases)}, where it is not encrypted.
   *
   * @throws KeyException if the file is missing, no usable key, or others can read it
   */
  public static OpenedKey load(Path file) throws KeyException {
    return load(file, Passphrases.NONE);
  }

  /**
   * The key in this file. Where a change of the key was cut short, that is put in order first.
   *
   * @throws KeyException if the file is missing, no usable key, its passphrase cannot be had, or
   *     others can read it
   */
  public static OpenedKey load(Path file, Passphrases passphrases) throws KeyException {
    requireUsable(file);
    List<String> notes = settled(file);
    // Only now, for it may just have been replaced; it is one whole key at any moment.
    String text = text(file);
    Passphrase passphrase = SigningKey.isEncrypted(text) ? passphrases.of(file) : null;
    try {
      SigningKey key =
          passphrase == null ? SigningKey.fromPem(text) : SigningKey.fromPem(text, passphrase);
      return new OpenedKey(key, file, false, notes);
    } catch (KeyException e) {
      throw new KeyException(file + ": " + e.getMessage());
    }
  }

  /**
   * Whether it takes a passphrase to open the key in this file.
   *
   * @throws KeyException if the file is missing, or others can read it
   */
  public static boolean isEncrypted(Path file) throws KeyException {
    return SigningKey.isEncrypted(text(file));
  }

  /**
   * As {@link #create(Path, Passphrases)}, not encrypted.
   *
   * @throws KeyException if something is there already, or it cannot be written
   */
  public static OpenedKey create(Path file) throws KeyException {
    return create(file, Passphrases.NONE);
  }

  /**
   * Makes a key and writes it to this file, which must not exist.
   *
   * @throws KeyException if something is there already, its passphrase cannot be had, or it cannot
   *     be written
   */
  public static OpenedKey create(Path file, Passphrases passphrases) throws KeyException {
    prepareFolder(folder(file));
    try {
      requireAbsent(file);
      requireNoHalf(file);
      Optional<Passphrase> passphrase = passphrases.forNewKey();
      SigningKey key = SigningKey.generate();
      writePublic(file, key);
      OwnerOnly.write(file, key.pem(passphrase));
      return new OpenedKey(key, file, true, List.of());
    } catch (IOException e) {
      throw notWritten(file, e);
    }
  }

  /**
   * Makes a new key in the place of the one in this file. The old private key is kept beside it
   * under a name that says until when it was used, and the old public key is trusted until then.
   *
   * @param name whose keys they are, for the public files
   * @throws KeyException if there is no key, its passphrase cannot be had, it cannot be written, or
   *     another program is changing it
   */
  public static RenewedKey renew(Path file, Optional<String> name, Passphrases passphrases)
      throws KeyException {
    String before = text(file);
    OpenedKey old = load(file, passphrases);
    Optional<Passphrase> passphrase = passphrases.forNewKey();
    KeyRenewal renewal = new KeyRenewal(file, InstantSource.system());
    try (KeyLock lock = KeyLock.take(file)) {
      renewal.settle(lock);
      requireSame(file, before);
      return renewal.renew(old.key(), name, passphrase);
    } catch (IOException e) {
      throw notWritten(file, e);
    }
  }

  /** Passphrases take a person's time, in which another program may have changed the key. */
  private static void requireSame(Path file, String before) throws KeyException {
    if (!text(file).equals(before)) {
      throw new KeyException(file + ": was changed by another program meanwhile; look at it first");
    }
  }

  /** Where the public half of the key in this file lies. */
  public static Path publicFile(Path keyFile) {
    String name = keyFile.getFileName().toString().replaceFirst("\\.pem$", "");
    return folder(keyFile).resolve(name + ".jwk");
  }

  /**
   * The key in the public file beside this private one; empty when there is no such file.
   *
   * @throws KeyException if the file is no public key
   */
  public static Optional<VerifyingKey> publicHalf(Path keyFile) throws KeyException {
    Path file = publicFile(keyFile);
    if (!Files.exists(file)) {
      return Optional.empty();
    }
    return TrustStore.load(List.of(file)).all().stream().map(TrustedKey::key).findFirst();
  }

  private static void prepareFolder(Path folder) throws KeyException {
    try {
      OwnerOnly.createFolder(folder);
      OwnerOnly.requireFolder(folder);
    } catch (FileAlreadyExistsException e) {
      throw KeyException.machine(e.getFile() + ": is in the way: a folder is needed here");
    } catch (IOException e) {
      throw unusable(folder, "cannot be made", e);
    }
  }

  private static void requireAbsent(Path file) throws IOException {
    if (Files.exists(file)) {
      throw new FileAlreadyExistsException(file.toString());
    }
  }

  /** The public half is written first, so power loss may leave it alone; or the other was lost. */
  private static void requireNoHalf(Path file) throws KeyException {
    Path half = publicFile(file);
    if (Files.exists(half)) {
      throw new KeyException(
          half
              + ": is there already, and its private key is missing; put that back as "
              + file
              + ", or remove "
              + half.getFileName()
              + " if nothing was ever sealed with it, or name another file with --key");
    }
  }

  private static void writePublic(Path file, SigningKey key) throws IOException {
    OwnerOnly.write(publicFile(file), Canonical.text(key.verifyingKey().jwk()) + "\n");
  }

  private static List<String> settled(Path file) throws KeyException {
    try {
      return new KeyRenewal(file, InstantSource.system()).settle();
    } catch (IOException e) {
      throw notWritten(file, e);
    }
  }

  /** Before anything beside it is touched. */
  private static void requireUsable(Path file) throws KeyException {
    text(file);
  }

  private static String text(Path file) throws KeyException {
    if (Files.isDirectory(file)) {
      throw new KeyException(file + ": is a directory; name the key file in it");
    }
    if (Files.exists(file) && !Files.isRegularFile(file)) {
      throw new KeyException(file + ": is a pipe or a device, not a key file");
    }
    try {
      OwnerOnly.require(file, "private key");
      return bounded(file);
    } catch (NoSuchFileException e) {
      throw new KeyException(file + ": no such key; make one with: thumbseal key new");
    } catch (IOException e) {
      throw unusable(file, "cannot be read", e);
    } catch (KeyException e) {
      throw new KeyException(file + ": " + e.getMessage());
    }
  }

  private static String bounded(Path file) throws IOException, KeyException {
    if (Files.size(file) > LARGEST_KEY_FILE) {
      throw new KeyException("is too large for a key");
    }
    return Files.readString(file, StandardCharsets.ISO_8859_1);
  }

  static KeyException notWritten(Path file, IOException e) {
    return e instanceof FileAlreadyExistsException there
        ? new KeyException(there.getFile() + ": is there already; keys are never overwritten")
        : unusable(file, "cannot be written", e);
  }

  private static KeyException unusable(Path file, String what, IOException e) {
    String why = e instanceof AccessDeniedException ? "permission denied" : reason(e);
    return KeyException.machine(file + ": " + what + ": " + why);
  }

  private static @Nullable String reason(IOException e) {
    boolean told = e instanceof FileSystemException f && f.getReason() != null;
    return told ? ((FileSystemException) e).getReason() : e.getMessage();
  }

  static Path folder(Path file) {
    Path parent = file.toAbsolutePath().getParent();
    return parent == null ? file.toAbsolutePath() : parent;
  }

  private static Path configuration(Map<String, String> environment) {
    String home =
        environment.getOrDefault("XDG_CONFIG_HOME", environment.getOrDefault("APPDATA", ""));
    Path base =
        home.isEmpty() ? Path.of(System.getProperty("user.home"), ".config") : Path.of(home);
    return base.resolve("thumbseal");
  }
}

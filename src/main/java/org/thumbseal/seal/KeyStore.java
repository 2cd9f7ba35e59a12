package org.thumbseal.seal;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.thumbseal.json.Canonical;

/**
 * Key files. A private key is PKCS#8 PEM that its owner alone can read, in a folder of which the
 * same is true; its public half lies beside it as {@code <name>.jwk}. Nothing is ever overwritten.
 */
public final class KeyStore {
  private static final String DEFAULT_NAME = "signing-key.pem";
  private static final String TRUSTED = "trusted";
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
    Path folder = folder(keyFile);
    for (Path candidate : List.of(publicFile(keyFile), folder.resolve(TRUSTED))) {
      if (Files.exists(candidate)) {
        trust.add(candidate);
      }
    }
    return trust;
  }

  /**
   * The key in this file; a new one when there is no such file.
   *
   * @throws KeyException if the file is no usable key, others can read it, or it cannot be written
   */
  public static OpenedKey loadOrCreate(Path file) throws KeyException {
    if (!Files.exists(file)) {
      return create(file);
    }
    OpenedKey key = load(file);
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
   * The key in this file.
   *
   * @throws KeyException if the file is missing, no usable key, or others can read it
   */
  public static OpenedKey load(Path file) throws KeyException {
    if (Files.isDirectory(file)) {
      throw new KeyException(file + ": is a directory; name the key file in it");
    }
    if (Files.exists(file) && !Files.isRegularFile(file)) {
      throw new KeyException(file + ": is a pipe or a device, not a key file");
    }
    try {
      OwnerOnly.require(file);
      return new OpenedKey(SigningKey.fromPem(text(file)), file, false);
    } catch (NoSuchFileException e) {
      throw new KeyException(file + ": no such key; make one with: thumbseal key new");
    } catch (IOException e) {
      throw unusable(file, "cannot be read", e);
    } catch (KeyException e) {
      throw new KeyException(file + ": " + e.getMessage());
    }
  }

  /**
   * Makes a key and writes it to this file, which must not exist.
   *
   * @throws KeyException if something is there already, or it cannot be written
   */
  public static OpenedKey create(Path file) throws KeyException {
    SigningKey key = SigningKey.generate();
    prepareFolder(folder(file));
    try {
      requireAbsent(file);
      writePublic(file, key);
      OwnerOnly.write(file, key.pem());
      return new OpenedKey(key, file, true);
    } catch (FileAlreadyExistsException e) {
      throw new KeyException(e.getFile() + ": is there already; keys are never overwritten");
    } catch (IOException e) {
      throw unusable(file, "cannot be written", e);
    }
  }

  /** Where the public half of the key in this file lies. */
  public static Path publicFile(Path keyFile) {
    String name = keyFile.getFileName().toString().replaceFirst("\\.pem$", "");
    return folder(keyFile).resolve(name + ".jwk");
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

  private static void writePublic(Path file, SigningKey key) throws IOException {
    OwnerOnly.write(publicFile(file), Canonical.text(key.verifyingKey().jwk()) + "\n");
  }

  private static String text(Path file) throws IOException, KeyException {
    if (Files.size(file) > LARGEST_KEY_FILE) {
      throw new KeyException("is too large for a key");
    }
    return Files.readString(file, StandardCharsets.ISO_8859_1);
  }

  private static KeyException unusable(Path file, String what, IOException e) {
    String why = e instanceof AccessDeniedException ? "permission denied" : reason(e);
    return KeyException.machine(file + ": " + what + ": " + why);
  }

  private static @Nullable String reason(IOException e) {
    boolean told = e instanceof FileSystemException f && f.getReason() != null;
    return told ? ((FileSystemException) e).getReason() : e.getMessage();
  }

  private static Path folder(Path file) {
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

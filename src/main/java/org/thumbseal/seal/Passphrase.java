package org.thumbseal.seal;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.Arrays;

/** What opens an encrypted private key. It is shown by nothing. */
public final class Passphrase {
  /** For new keys. NIST SP 800-63B section 5.1.1.1 asks for as much of what a person chooses. */
  static final int SHORTEST = 8;

  private static final int LARGEST_FILE = 1024;

  private final char[] secret;

  private Passphrase(char[] secret) {
    this.secret = secret.clone();
  }

  /**
   * What somebody typed.
   *
   * @throws KeyException if it is empty
   */
  public static Passphrase of(char[] typed) throws KeyException {
    if (typed.length == 0) {
      throw new KeyException("the passphrase is empty");
    }
    return new Passphrase(typed);
  }

  /**
   * The one line of a file in UTF-8 that its owner alone can read.
   *
   * @throws KeyException if there is no such file, others can read it, or it holds anything else
   */
  public static Passphrase read(Path file) throws KeyException {
    if (Files.exists(file) && !Files.isRegularFile(file)) {
      throw new KeyException(file + ": is no plain file; it is to hold the passphrase of the key");
    }
    try {
      OwnerOnly.require(file, "passphrase");
      return line(file);
    } catch (NoSuchFileException e) {
      throw new KeyException(file + ": no such file; it is to hold the passphrase of the key");
    } catch (CharacterCodingException e) {
      throw new KeyException(file + ": is not UTF-8 text");
    } catch (IOException e) {
      throw KeyException.machine(file + ": the passphrase cannot be read");
    } catch (KeyException e) {
      throw new KeyException(file + ": " + e.getMessage());
    }
  }

  private static Passphrase line(Path file) throws IOException, KeyException {
    byte[] bytes = bytes(file);
    CharBuffer text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes));
    int end = text.length();
    end -= end > 0 && text.charAt(end - 1) == '\n' ? 1 : 0;
    end -= end > 0 && text.charAt(end - 1) == '\r' ? 1 : 0;
    char[] line = Arrays.copyOf(text.array(), end);
    if (text.subSequence(0, end).chars().anyMatch(Character::isISOControl)) {
      throw new KeyException("holds more than the one line of a passphrase");
    }
    return of(line);
  }

  private static byte[] bytes(Path file) throws IOException, KeyException {
    try (var in = Files.newInputStream(file)) {
      byte[] bytes = in.readNBytes(LARGEST_FILE + 1);
      if (bytes.length > LARGEST_FILE) {
        throw new KeyException("is too large for a passphrase");
      }
      return bytes;
    }
  }

  /**
   * The same, found long enough for a key that is to be made.
   *
   * @throws KeyException if it is shorter than 8 characters
   */
  public Passphrase forNewKey() throws KeyException {
    if (secret.length < SHORTEST) {
      throw new KeyException(
          "the passphrase is too short; take " + SHORTEST + " characters or more");
    }
    return this;
  }

  /** Whether somebody typed the same twice. */
  public boolean isSame(Passphrase other) {
    return Arrays.equals(secret, other.secret);
  }

  char[] characters() {
    return secret.clone();
  }

  @Override
  public String toString() {
    return "a passphrase";
  }
}

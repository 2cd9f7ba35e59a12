package org.thumbseal.seal;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.SecureRandom;

/**
 * A secret that lets somebody in over the network: 128 random bits, kept in a file that its owner
 * alone can read.
 */
public final class AccessToken {
  private static final int BYTES = 16;

  private final String text;

  private AccessToken(String text) {
    this.text = text;
  }

  /**
   * The token in this file; a new one when there is none.
   *
   * @throws KeyException if the file holds no token, others can read it, or it cannot be written
   */
  public static AccessToken loadOrCreate(Path file) throws KeyException {
    try {
      OwnerOnly.require(file, "token");
      String text = Files.readString(file, StandardCharsets.ISO_8859_1).strip();
      if (Base64Url.decode(text, BYTES).isEmpty()) {
        throw new KeyException("is no token; make another with --new-token");
      }
      return new AccessToken(text);
    } catch (NoSuchFileException e) {
      return create(file);
    } catch (IOException e) {
      throw KeyException.machine(file + ": cannot be read: " + e.getMessage());
    } catch (KeyException e) {
      throw new KeyException(file + ": " + e.getMessage());
    }
  }

  /**
   * A new token in this file; one that was there lets nobody in any more.
   *
   * @throws KeyException if it cannot be written
   */
  public static AccessToken create(Path file) throws KeyException {
    byte[] random = new byte[BYTES];
    new SecureRandom().nextBytes(random);
    AccessToken token = new AccessToken(Base64Url.encode(random));
    writePrivate(file, token.text + "\n");
    return token;
  }

  /**
   * Writes a file that its owner alone can read, in the place of what was there.
   *
   * @throws KeyException if it cannot be written
   */
  public static void writePrivate(Path file, String text) throws KeyException {
    try {
      OwnerOnly.createFolder(KeyStore.folder(file));
      Files.deleteIfExists(file);
      OwnerOnly.write(file, text);
    } catch (IOException e) {
      throw KeyStore.notWritten(file, e);
    }
  }

  /** The token, 22 characters of base64url. */
  public String text() {
    return text;
  }

  /** Whether it is the same, in a time that does not tell how much of it is. */
  public boolean matches(String other) {
    return MessageDigest.isEqual(
        text.getBytes(StandardCharsets.UTF_8), other.getBytes(StandardCharsets.UTF_8));
  }
}

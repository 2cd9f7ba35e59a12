package org.thumbseal.seal;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What another computer asks for before it takes anything: a user name with a password, or a token.
 * Comes from a file, never from a command line, which others on the computer can read; shown by
 * nothing.
 */
public final class Login {
  private static final String USER = "user";
  private static final String PASSWORD = "password";
  private static final String TOKEN = "token";
  private static final List<String> NAMES = List.of(USER, PASSWORD, TOKEN);
  private static final int LARGEST_FILE = 8192;

  private final Map<String, String> said;

  private Login(Map<String, String> said) {
    this.said = Map.copyOf(said);
  }

  /**
   * Reads a file in UTF-8 that its owner alone can read: lines {@code user=...} and {@code
   * password=...}, or one line {@code token=...}. Empty lines and those that begin with {@code #}
   * are passed over.
   *
   * @throws KeyException if there is no such file, others can read it, or it holds anything else
   */
  public static Login read(Path file) throws KeyException {
    if (Files.exists(file) && !Files.isRegularFile(file)) {
      throw new KeyException(file + ": is no plain file; it is to hold user= and password=");
    }
    try {
      OwnerOnly.requireFile(file, "password");
      return of(text(file));
    } catch (NoSuchFileException e) {
      throw new KeyException(file + ": no such file; it is to hold user= and password=");
    } catch (CharacterCodingException e) {
      throw new KeyException(file + ": is not UTF-8 text");
    } catch (IOException e) {
      throw KeyException.machine(file + ": cannot be read");
    } catch (KeyException e) {
      throw new KeyException(file + ": " + e.getMessage());
    }
  }

  private static String text(Path file) throws IOException, KeyException {
    try (var in = Files.newInputStream(file)) {
      byte[] bytes = in.readNBytes(LARGEST_FILE + 1);
      if (bytes.length > LARGEST_FILE) {
        throw new KeyException("is too large for a password");
      }
      return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
    }
  }

  private static Login of(String text) throws KeyException {
    Map<String, String> said = new HashMap<>();
    int number = 0;
    for (String line : text.lines().toList()) {
      number++;
      if (!line.isBlank() && !line.startsWith("#")) {
        take(said, line, number);
      }
    }
    boolean pair = said.containsKey(USER) && said.containsKey(PASSWORD);
    if (said.containsKey(TOKEN) ? said.size() > 1 : !pair) {
      throw new KeyException("write two lines, user=NAME and password=..., or one, token=...");
    }
    return new Login(said);
  }

  /** The line itself is not told: it may be the password. */
  private static void take(Map<String, String> said, String line, int number) throws KeyException {
    int end = line.indexOf('=');
    String name = end < 0 ? "" : line.substring(0, end).strip();
    String value = line.substring(end + 1);
    if (!NAMES.contains(name) || value.isEmpty()) {
      throw new KeyException("line " + number + ": write user=, password= or token= and the value");
    }
    if (value.chars().anyMatch(Character::isISOControl)) {
      throw new KeyException("line " + number + ": holds a control character");
    }
    if (said.put(name, value) != null) {
      throw new KeyException("line " + number + ": says " + name + " a second time");
    }
  }

  /** The user name; absent with a token. */
  public Optional<String> user() {
    return Optional.ofNullable(said.get(USER));
  }

  /** The password, or the token. */
  public String secret() {
    String token = said.get(TOKEN);
    return token == null ? said.getOrDefault(PASSWORD, "") : token;
  }

  @Override
  public String toString() {
    return "a login";
  }
}

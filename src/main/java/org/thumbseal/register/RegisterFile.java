package org.thumbseal.register;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Optional;
import org.thumbseal.register.RegisterMistake.Kind;

/**
 * A register on the disk: CSV by RFC 4180 in UTF-8, in the dialects that spreadsheets write. What
 * may stand in it is in src/docs/register.md.
 */
public final class RegisterFile {
  /** The largest file taken, in bytes; sixty pumps have about 6000. */
  static final int LARGEST_BYTES = 8 << 20;

  private RegisterFile() {}

  /**
   * Reads it, and the criteria files that it names, relative to its folder.
   *
   * @param today a pump in service from a later day is worth a word
   * @throws RegisterRefused with all that is wrong in it; nothing is repaired
   */
  public static Register read(Path file, LocalDate today) throws RegisterRefused {
    Mistakes mistakes = new Mistakes();
    Optional<Register> register =
        bytes(file, mistakes)
            .flatMap(b -> RegisterText.of(b, mistakes))
            .map(text -> read(text, file, today, mistakes));
    if (register.isEmpty() || !mistakes.isUsable()) {
      throw new RegisterRefused(
          mistakes.sorted().stream().filter(m -> !m.kind().isWarning()).toList());
    }
    return register.get();
  }

  private static Register read(String text, Path file, LocalDate today, Mistakes mistakes) {
    CriteriaFiles criteria = new CriteriaFiles(file.toAbsolutePath());
    return new RegisterReader(text, criteria, today, mistakes).read();
  }

  private static Optional<byte[]> bytes(Path file, Mistakes mistakes) {
    if (Files.exists(file) && !Files.isRegularFile(file)) {
      // Opening a pipe that nobody writes to would wait for ever.
      mistakes.add(Kind.UNREADABLE, "is not a file");
      return Optional.empty();
    }
    try (InputStream in = Files.newInputStream(file)) {
      byte[] bytes = in.readNBytes(LARGEST_BYTES + 1);
      if (bytes.length > LARGEST_BYTES) {
        mistakes.add(Kind.TOO_LARGE, "is larger than 8 MiB: not a register");
        return Optional.empty();
      }
      return Optional.of(bytes);
    } catch (NoSuchFileException e) {
      mistakes.add(Kind.UNREADABLE, "no such file");
    } catch (AccessDeniedException e) {
      mistakes.add(Kind.UNREADABLE, "may not be read: permission denied");
    } catch (IOException e) {
      mistakes.add(Kind.UNREADABLE, "cannot be read: " + e.getMessage());
    }
    return Optional.empty();
  }
}

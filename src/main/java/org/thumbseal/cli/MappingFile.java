package org.thumbseal.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;
import org.thumbseal.exchange.Layout;
import org.thumbseal.exchange.Mapping;
import org.thumbseal.exchange.MappingRefused;

/** A mapping file by its name. */
final class MappingFile {
  private static final int LARGEST = 1 << 16;

  private MappingFile() {}

  /** Reads it, or says all that is wrong in it, a line each. */
  static Layout read(Path file, Consumer<String> say) {
    try {
      return Mapping.read(lines(file));
    } catch (MappingRefused e) {
      List<String> all =
          e.mistakes().stream().map(m -> file + ": line " + m.line() + ": " + m.text()).toList();
      all.subList(0, all.size() - 1).forEach(say);
      throw Failure.usage(all.get(all.size() - 1));
    }
  }

  private static List<String> lines(Path file) {
    if (Files.exists(file) && !Files.isRegularFile(file)) {
      throw Failure.usage(file + ": is no file");
    }
    try (InputStream in = Files.newInputStream(file)) {
      byte[] bytes = in.readNBytes(LARGEST + 1);
      if (bytes.length > LARGEST) {
        throw Failure.usage(file + ": is larger than " + LARGEST + " bytes: no mapping file");
      }
      return StandardCharsets.UTF_8
          .newDecoder()
          .decode(ByteBuffer.wrap(bytes))
          .toString()
          .lines()
          .toList();
    } catch (CharacterCodingException e) {
      throw Failure.usage(file + ": is not UTF-8 text; save it as such");
    } catch (NoSuchFileException e) {
      throw Failure.usage(file + ": no such file");
    } catch (IOException e) {
      throw Failure.usage(file + ": cannot be read: " + e.getMessage());
    }
  }
}

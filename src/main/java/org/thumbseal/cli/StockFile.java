package org.thumbseal.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.thumbseal.json.Printable;
import org.thumbseal.spares.StockLine;
import org.thumbseal.spares.StockMistake;
import org.thumbseal.spares.StockReader;
import org.thumbseal.spares.StockRefused;

/**
 * The stock file on the disk.
 *
 * @param file as the user named it
 * @param err for people
 */
record StockFile(Path file, PrintWriter err) {
  private static final int LARGEST_BYTES = 4 << 20;
  private static final int MOST_TOLD = 1_000;

  /** Its lines; all mistakes in it are said, and end the command. */
  List<StockLine> read(LocalDate today) {
    try {
      return StockReader.read(text(), today);
    } catch (StockRefused e) {
      List<StockMistake> mistakes = e.mistakes();
      mistakes.stream().limit(MOST_TOLD).forEach(m -> say(m.line()));
      String count = mistakes.size() == 1 ? "1 mistake" : mistakes.size() + " mistakes";
      throw Failure.usage(file + ": " + count + "; nothing of this stock file is used");
    }
  }

  private String text() {
    if (!Files.isRegularFile(file)) {
      throw Failure.usage(file + ": no such file; 'thumbseal stock --template' prints one");
    }
    try (InputStream in = Files.newInputStream(file)) {
      byte[] bytes = in.readNBytes(LARGEST_BYTES + 1);
      if (bytes.length > LARGEST_BYTES) {
        throw Failure.usage(file + ": is larger than 4 MiB: not a stock file");
      }
      String text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
      return text.startsWith("\uFEFF") ? text.substring(1) : text;
    } catch (CharacterCodingException e) {
      throw Failure.usage(file + ": is not UTF-8 text: save it as CSV UTF-8");
    } catch (IOException e) {
      throw Failure.usage(file + ": cannot be read: " + e.getMessage());
    }
  }

  private void say(String line) {
    err.println("thumbseal: " + Printable.line(file + ": " + line));
  }
}

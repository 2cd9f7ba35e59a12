package org.thumbseal.wire;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/**
 * A fenced code block of a Markdown file.
 *
 * @param file where it stands
 * @param language the word behind the opening fence, may be empty
 * @param lines what stands between the fences
 */
record FencedBlock(Path file, String language, List<String> lines) {
  static final Path NOTES = Path.of("firmware-notes");
  private static final String FENCE = "```";

  /** All blocks of that language in the firmware notes, file by file. */
  static List<FencedBlock> ofNotes(String language) {
    return notes().stream()
        .flatMap(file -> in(file).stream())
        .filter(block -> block.language.equals(language))
        .toList();
  }

  /** The Markdown files of the firmware notes, in order of name. */
  static List<Path> notes() {
    try (Stream<Path> files = Files.list(NOTES)) {
      return files.filter(file -> file.toString().endsWith(".md")).sorted().toList();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static List<FencedBlock> in(Path file) {
    List<FencedBlock> blocks = new ArrayList<>();
    List<String> inside = new ArrayList<>();
    boolean open = false;
    for (String line : read(file).lines().toList()) {
      if (line.startsWith(FENCE)) {
        open = !open;
        inside = open ? new ArrayList<>() : inside;
        blocks.addAll(open ? List.of(new FencedBlock(file, line.substring(3), inside)) : List.of());
      } else if (open) {
        inside.add(line);
      }
    }
    return blocks;
  }

  static String read(Path file) {
    try {
      return Files.readString(file, UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}

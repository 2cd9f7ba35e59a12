package org.thumbseal.cli;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.zip.Deflater;
import java.util.zip.GZIPOutputStream;
import picocli.AutoComplete;
import picocli.CommandLine;

/**
 * Writes what the packages hold besides the program and what lies in {@code src/packages}: manual
 * pages and completion, from the commands themselves, and the packed documents. Equal sources give
 * equal bytes.
 */
public final class PackageFiles {
  /** Where a gzip file says how hard it was packed, and "as hard as can be": RFC 1952, 2.3.1. */
  private static final int EXTRA_FLAGS = 8;

  private static final byte SLOWEST = 2;

  private final Path folder;
  private final String date;

  private PackageFiles(Path folder, String date) {
    this.folder = folder;
    this.date = date;
  }

  /**
   * Writes all of them.
   *
   * @param args the folder to write to, the date for the manual pages, then documents to pack
   */
  public static void main(String[] args) throws IOException {
    PackageFiles files = new PackageFiles(Path.of(args[0]), args[1].substring(0, 10));
    CommandLine program = program();
    files.manual(program);
    files.text("completion/thumbseal", completion(program));
    for (int i = 2; i < args.length; i++) {
      Path document = Path.of(args[i]);
      files.packed("doc/" + document.getFileName(), Files.readAllBytes(document));
    }
  }

  /** The commands that arguments can be about, on streams that nothing is said to. */
  static CommandLine program(String... args) {
    return Main.commandLine(
        new Streams(
            InputStream.nullInputStream(),
            OutputStream.nullOutputStream(),
            OutputStream.nullOutputStream()),
        args);
  }

  /** It is read by a shell, never run: without the line that would say by what. */
  static String completion(CommandLine program) {
    return AutoComplete.bash("thumbseal", program).replaceFirst("^#![^\n]*\n", "");
  }

  private void manual(CommandLine command) throws IOException {
    byte[] page = ManPage.of(command, date).getBytes(StandardCharsets.UTF_8);
    packed("man/" + ManPage.name(command) + ".1", page);
    ManPage.below(command)
        .forEach(
            each -> {
              try {
                manual(each);
              } catch (IOException e) {
                throw new UncheckedIOException(e);
              }
            });
  }

  private void text(String name, String text) throws IOException {
    write(name, text.getBytes(StandardCharsets.UTF_8));
  }

  private void packed(String name, byte[] content) throws IOException {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (OutputStream out = new Gzip(bytes)) {
      out.write(content);
    }
    byte[] packed = bytes.toByteArray();
    packed[EXTRA_FLAGS] = SLOWEST;
    write(name + ".gz", packed);
  }

  private void write(String name, byte[] content) throws IOException {
    Path file = folder.resolve(name);
    Files.createDirectories(file.getParent());
    Files.write(file, content);
  }

  /** As small as it gets, which the Debian policy (12.1, 12.7) asks for; it holds no time. */
  private static final class Gzip extends GZIPOutputStream {
    Gzip(OutputStream out) throws IOException {
      super(out);
      def.setLevel(Deflater.BEST_COMPRESSION);
    }
  }
}

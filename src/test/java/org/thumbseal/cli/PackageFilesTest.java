package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import picocli.CommandLine;
import picocli.CommandLine.Model.OptionSpec;

final class PackageFilesTest {
  private static final String DATE = "2026-01-01T00:00:00Z";

  static Stream<CommandLine> commands() {
    return withAllBelow(PackageFiles.program());
  }

  private static Stream<CommandLine> withAllBelow(CommandLine command) {
    return Stream.concat(
        Stream.of(command), ManPage.below(command).flatMap(PackageFilesTest::withAllBelow));
  }

  @ParameterizedTest
  @MethodSource("commands")
  void everyOptionOfACommandStandsOnItsPage(CommandLine command) {
    String page = ManPage.of(command, DATE);
    List<String> names =
        command.getCommandSpec().options().stream()
            .filter(option -> !option.hidden())
            .map(OptionSpec::longestName)
            .toList();
    assertThat(names).isNotEmpty();
    assertThat(names).allSatisfy(name -> assertThat(page).contains(Roff.escaped(name)));
  }

  @ParameterizedTest
  @MethodSource("commands")
  void nothingPicocliWouldStillReplaceIsLeftOnAPage(CommandLine command) {
    assertThat(ManPage.of(command, DATE)).doesNotContain("%n", "${", "@|");
  }

  @Test
  void aLineThatBeginsLikeAMacroIsText() {
    Roff roff = new Roff();
    roff.plain(".so /etc/passwd");
    roff.plain("'back\\slash");
    assertThat(roff).hasToString("\\&.so /etc/passwd\n\\(aqback\\eslash\n");
  }

  @Test
  void thereIsAPageForEachCommandAndEqualSourcesGiveEqualBytes(@TempDir Path folder)
      throws IOException {
    Path first = written(folder.resolve("first"));
    Path second = written(folder.resolve("second"));
    assertThat(commands().map(each -> "man/" + ManPage.name(each) + ".1.gz"))
        .contains("man/thumbseal.1.gz", "man/thumbseal-key-new.1.gz")
        .allSatisfy(
            name -> assertThat(first.resolve(name)).hasSameBinaryContentAs(second.resolve(name)));
    assertThat(first.resolve("completion/thumbseal"))
        .hasSameBinaryContentAs(second.resolve("completion/thumbseal"))
        .content()
        .startsWith("#\n")
        .contains("watch");
  }

  @Test
  void aPackedDocumentIsWhatItWas(@TempDir Path folder) throws IOException {
    byte[] packed = Files.readAllBytes(written(folder).resolve("doc/LICENSE.gz"));
    try (GZIPInputStream in = new GZIPInputStream(new ByteArrayInputStream(packed))) {
      assertThat(new String(in.readAllBytes(), StandardCharsets.UTF_8))
          .isEqualTo(Files.readString(Path.of("LICENSE")));
    }
  }

  private static Path written(Path folder) throws IOException {
    PackageFiles.main(new String[] {folder.toString(), DATE, "LICENSE"});
    return folder;
  }
}

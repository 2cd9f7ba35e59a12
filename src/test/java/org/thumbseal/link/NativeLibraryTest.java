package org.thumbseal.link;

import static org.assertj.core.api.Assertions.assertThat;

import com.fazecast.jSerialComm.SerialPort;
import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** Loading happens once a process, so each case is a process of its own with folders of its own. */
@EnabledOnOs(value = OS.LINUX, disabledReason = "skipped: looks at /proc and POSIX permissions")
class NativeLibraryTest {
  private static final String FILE = "libjSerialComm.so";

  @TempDir Path folder;
  private Path temporary;
  private Path home;
  private Path working;

  @BeforeEach
  void folders() throws IOException {
    temporary = made("tmp");
    home = made("home");
    working = made("working");
  }

  /** Loads the library in a process of its own; prints what came of it, and from which files. */
  static final class Program {
    private Program() {}

    public static void main(String[] args) throws IOException {
      try {
        NativeLibrary.load();
        String tmp = System.getProperty("java.io.tmpdir");
        System.out.println("loaded " + SerialPorts.system().list().size() + " " + tmp);
        loadedFiles().forEach(System.out::println);
      } catch (LinkUnavailable e) {
        System.out.println(e.reason() + " " + e.getMessage());
      }
    }

    private static List<String> loadedFiles() throws IOException {
      try (Stream<String> lines = Files.lines(Path.of("/proc/self/maps"))) {
        return lines
            .filter(line -> line.contains("libjSerialComm"))
            .map(line -> line.substring(line.indexOf('/')))
            .distinct()
            .toList();
      }
    }
  }

  /** The serial library as it behaves without us. */
  static final class LeftAlone {
    private LeftAlone() {}

    public static void main(String[] args) {
      SerialPort.getCommPort("/dev/null");
    }
  }

  private String run(String... options) throws IOException, InterruptedException {
    return run(Program.class, System.getProperty("java.class.path"), options);
  }

  private String run(Class<?> program, String classPath, String... options)
      throws IOException, InterruptedException {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of("-cp", absolute(classPath)));
    command.addAll(List.of("-Djava.io.tmpdir=" + temporary, "-Duser.home=" + home));
    command.addAll(List.of(options));
    command.add(program.getName());
    Process process =
        new ProcessBuilder(command).directory(working.toFile()).redirectErrorStream(true).start();
    String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    process.waitFor();
    return said.strip();
  }

  private static String absolute(String classPath) {
    return Stream.of(classPath.split(File.pathSeparator, -1))
        .map(entry -> Path.of(entry).toAbsolutePath().toString())
        .reduce((a, b) -> a + File.pathSeparator + b)
        .orElseThrow();
  }

  private Path made(String name) throws IOException {
    return Files.createDirectory(folder.resolve(name));
  }

  private static List<Path> within(Path path) throws IOException {
    try (Stream<Path> all = Files.walk(path)) {
      return all.filter(each -> !each.equals(path)).toList();
    }
  }

  /** The file for this machine, found by asking which one is loaded. */
  private byte[] ownFile() throws Exception {
    String loaded = run().lines().toList().get(1).replace(" (deleted)", "");
    String name =
        Path.of(loaded)
            .subpath(Path.of(loaded).getNameCount() - 3, Path.of(loaded).getNameCount())
            .toString();
    return LibraryTableTest.content("/" + name);
  }

  private Path mark() {
    return working.resolve(MarkingLibrary.MARK);
  }

  @Test
  void oneFileOfThePrivateFolderIsLoadedAndNothingIsLeft() throws Exception {
    List<String> said = run().lines().toList();

    assertThat(said.get(0)).startsWith("loaded ").endsWith(" " + temporary);
    assertThat(said.subList(1, said.size()))
        .singleElement()
        .asString()
        .matches(temporary + "/thumbseal-native-\\d+/Linux/\\w+/libjSerialComm.so \\(deleted\\)");
    assertThat(within(temporary)).isEmpty();
    assertThat(within(home)).isEmpty();
  }

  @Test
  void aFilePlantedInTheLibrarysSharedFoldersIsNeitherLoadedNorTouched() throws Exception {
    MarkingLibrary marking = MarkingLibrary.in(folder);
    Path planted = marking.plant(temporary.resolve("jSerialComm/2.11.4/" + FILE));
    Path older = marking.plant(temporary.resolve("jSerialComm/2.11.3/" + FILE));
    Path inHome = marking.plant(home.resolve(".jSerialComm/2.11.4/" + FILE));

    assertThat(run()).startsWith("loaded ");

    assertThat(mark()).doesNotExist();
    assertThat(planted).exists();
    assertThat(older).exists();
    assertThat(inHome).exists();
  }

  @Test
  void leftAloneTheLibraryLoadsAPlantedFile() throws Exception {
    MarkingLibrary.in(folder).plant(temporary.resolve("jSerialComm/2.11.4/" + FILE));

    run(LeftAlone.class, System.getProperty("java.class.path"));

    assertThat(mark()).exists();
  }

  @Test
  void aFileWhereJavaLooksForLibrariesIsRefusedUnlessItIsMeant() throws Exception {
    Path planted = MarkingLibrary.in(folder).plant(made("lib").resolve(FILE));
    String option = "-Djava.library.path=/nowhere:" + planted.getParent();

    assertThat(run(option))
        .startsWith("NO_LIBRARY " + planted + " is not the serial library this program was built")
        .doesNotContain("\n");
    assertThat(mark()).doesNotExist();

    assertThat(run(option, "-Dthumbseal.library.unchecked=true")).startsWith("loaded ");
    assertThat(mark()).exists();
  }

  @Test
  void anEmptyPlaceInTheLibraryPathIsTheWorkingFolder() throws Exception {
    MarkingLibrary.in(folder).plant(working.resolve(FILE));

    assertThat(run("-Djava.library.path=/nowhere:")).startsWith("NO_LIBRARY ./" + FILE + " is not");
    assertThat(mark()).doesNotExist();
  }

  @Test
  void aTamperedFileInsideTheProgramIsRefused() throws Exception {
    Path classes = made("classes");
    MarkingLibrary marking = MarkingLibrary.in(folder);
    for (String name : LibraryTable.ofProgram().names("Linux")) {
      marking.plant(classes.resolve(name));
    }

    assertThat(
            run(
                Program.class,
                classes + File.pathSeparator + System.getProperty("java.class.path")))
        .startsWith("NO_LIBRARY the serial library inside this program (Linux/")
        .endsWith("get the program anew from where you trust it")
        .doesNotContain("\n");
    assertThat(mark()).doesNotExist();
    assertThat(within(temporary)).isEmpty();
    assertThat(within(home)).isEmpty();
  }

  @Test
  void aFolderTheUserNamesServesWithTheFileOfTheJar() throws Exception {
    Path file = Files.write(made("given").resolve(FILE), ownFile());

    List<String> said = run("-DjSerialComm.library.path=" + file.getParent()).lines().toList();

    assertThat(said.get(0)).startsWith("loaded ");
    assertThat(said.subList(1, said.size())).containsExactly(file.toString());
    assertThat(within(temporary)).isEmpty();
  }

  @Test
  void anotherFileThereIsRefusedUnlessItIsMeant() throws Exception {
    Path file = Files.write(made("given").resolve(FILE), ownFile());
    Files.write(file, new byte[] {0}, StandardOpenOption.APPEND);
    String option = "-DjSerialComm.library.path=" + file.getParent();

    assertThat(run(option))
        .startsWith("NO_LIBRARY " + file + " is not the serial library this program was built with")
        .contains("-Dthumbseal.library.unchecked=true")
        .doesNotContain("\n");
    assertThat(run(option, "-Dthumbseal.library.unchecked=true")).startsWith("loaded ");
  }

  @Test
  void aFileThatAnybodyCanExchangeIsRefused() throws Exception {
    Path file = Files.write(made("given").resolve(FILE), ownFile());
    Files.setPosixFilePermissions(file.getParent(), PosixFilePermissions.fromString("rwxrwxrwx"));

    assertThat(run("-DjSerialComm.library.path=" + file.getParent()))
        .startsWith(
            "NO_LIBRARY " + file + " is not loaded: anybody on this machine can exchange it")
        .doesNotContain("\n");
  }

  @Test
  void anEmptyFolderThereIsSaid() throws Exception {
    assertThat(run("-DjSerialComm.library.path=" + working))
        .startsWith("NO_LIBRARY " + working + ": there is no serial library for this machine")
        .doesNotContain("\n");
  }

  @Test
  void theHomeFolderServesWhereTheTemporaryOneIsGone() throws Exception {
    Files.delete(temporary);
    assertThat(run()).startsWith("loaded ").contains("\n" + home + "/thumbseal-native-");
    assertThat(within(home)).isEmpty();
  }

  @Test
  void withoutAnyFolderTheCureIsSaid() throws Exception {
    Files.delete(temporary);
    Files.delete(home);
    assertThat(run())
        .startsWith("NO_LIBRARY the serial library cannot be loaded;")
        .endsWith("start Java with -DjSerialComm.library.path=ITS_FOLDER")
        .doesNotContain("\n");
  }

  @Test
  void aMachineTheLibraryHasNoFileForIsToldTheCure() throws Exception {
    assertThat(run("-Dos.arch_full=abacus")).startsWith("NO_LIBRARY ").doesNotContain("\n");
    assertThat(run("-Dos.name=Abacus OS")).startsWith("NO_LIBRARY ").doesNotContain("\n");
    assertThat(within(temporary)).isEmpty();
  }
}

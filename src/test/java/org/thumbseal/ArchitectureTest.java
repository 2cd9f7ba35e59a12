package org.thumbseal;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaAccess.Predicates.targetOwner;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noFields;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaField;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchRule;
import java.util.Arrays;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.jspecify.annotations.NullMarked;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** One direction of flow, a pure core, libraries only where they are named. */
class ArchitectureTest {
  private static final String ROOT = "org.thumbseal.";
  private static final JavaClasses MAIN =
      new ClassFileImporter()
          .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
          .importPackages("org.thumbseal");

  /** Bytes in, verdict out: a value for everything that could differ between two machines. */
  private static final String CORE =
      "quantity wire sample phase fit measurement calibration grade finding visit care record pipeline trend history spares guide refer seek";

  /** Not the core, but its answers must not depend on the machine either. */
  private static final String PURE = CORE + " capture json report simulate exchange";

  /** What each package may use of the others, nearest to the sensor first. */
  private static final Map<String, String> USES = uses();

  private static Map<String, String> uses() {
    Map<String, String> uses = new TreeMap<>();
    uses.put("quantity", "");
    uses.put("trend", "quantity");
    // What is overdue says the same as the round does.
    uses.put("history", "care trend quantity");
    uses.put("wire", "quantity");
    uses.put("sample", "wire quantity");
    uses.put("phase", "sample");
    uses.put("fit", "sample quantity");
    uses.put("measurement", "phase fit sample wire quantity");
    uses.put("calibration", "measurement fit sample wire quantity");
    uses.put("grade", "measurement phase quantity");
    uses.put("finding", "grade measurement quantity");
    uses.put("visit", "");
    uses.put("care", "");
    uses.put("refer", "visit");
    uses.put("spares", "");
    uses.put("seek", "quantity");
    uses.put("guide", "");
    uses.put("record", "visit finding grade measurement wire quantity");
    uses.put("capture", "wire sample quantity");
    uses.put(
        "pipeline",
        "capture record visit finding grade calibration measurement phase sample wire quantity");
    // The list of pumps names criteria files, and its ids are those that a scanner gives.
    uses.put("register", "pipeline json visit grade");
    uses.put(
        "json", "seek record care visit finding grade calibration measurement phase wire quantity");
    uses.put("seal", "json");
    uses.put("archive", "seal json record calibration");
    // Reads what archive has verified, and writes it in the words of others.
    uses.put("exchange", "archive seal json record grade");
    uses.put("link", "seal wire");
    // link for the private folder from which a native library is loaded
    uses.put("index", "archive link seal json record calibration");
    // Sends what archive has sealed; link for the clock.
    uses.put("feed", "archive link seal json");
    // Seals what a leak search came to, for the terminal and for the page.
    uses.put("guided", "seek archive link seal json record");
    uses.put("simulate", "wire quantity");
    uses.put(
        "accuracy",
        "simulate pipeline json capture calibration record finding grade measurement sample wire quantity");
    uses.put(
        "report",
        "refer spares history trend pipeline seal json record care visit finding grade measurement fit wire quantity");
    uses.put(
        "daemon", "pipeline link archive seal json record visit capture grade phase sample wire");
    uses.put(
        "page",
        "guided seek report daemon archive pipeline link seal json record visit grade calibration measurement phase sample"
            + " wire");
    uses.put(
        "cli",
        "guided page accuracy daemon feed index report guide refer seek spares history trend simulate link archive seal register json pipeline capture record care visit finding grade calibration exchange"
            + " measurement phase sample wire quantity");
    return uses;
  }

  static Set<String> packages() {
    return USES.keySet();
  }

  private static String[] packages(String names) {
    return Arrays.stream(names.split(" ", -1))
        .filter(n -> !n.isEmpty())
        .map(n -> ROOT + n + "..")
        .toArray(String[]::new);
  }

  /** Checks a rule that has seen at least so many classes. */
  private static void hold(ArchRule rule, DescribedPredicate<JavaClass> of, int atLeast) {
    assertThat(MAIN.stream().filter(of)).as(of.getDescription()).hasSizeGreaterThan(atLeast - 1);
    rule.check(MAIN);
  }

  @Test
  void everyPackageHasItsPlaceInTheOrder() {
    Set<String> found = new TreeSet<>();
    MAIN.forEach(c -> found.add(c.getPackageName().substring(ROOT.length())));

    assertThat(found).isEqualTo(packages()).hasSize(35);
    assertThat(MAIN.size()).isGreaterThan(250);
  }

  @ParameterizedTest
  @MethodSource("packages")
  void aPackageUsesOnlyWhatIsBeforeIt(String name) {
    DescribedPredicate<JavaClass> here = resideInAPackage(ROOT + name + "..");
    String[] others = packages(USES.getOrDefault(name, "") + " " + name);

    hold(
        classes()
            .that(here)
            .should()
            .onlyDependOnClassesThat(
                resideInAnyPackage(others).or(not(resideInAPackage("org.thumbseal..")))),
        here,
        3);
  }

  @Test
  void packagesDoNotGoRoundInCircles() {
    hold(
        slices().matching("org.thumbseal.(*)..").should().beFreeOfCycles(),
        resideInAPackage("org.thumbseal.."),
        250);
  }

  /**
   * Libraries have few doors; CodeSource only tells the command line where the program lies.
   *
   * @param library packages of the library
   * @param doors the packages that may use it
   * @param users classes that do, at least
   */
  @ParameterizedTest
  @CsvSource({
    "com.fazecast..,           link,                  4",
    "org.hipparchus..,         fit spares,            4",
    "de.siegmar.fastcsv..,     register spares exchange, 3",
    "tools.jackson..,          json seal archive cli accuracy page index exchange feed guided daemon, 20",
    "com.fasterxml..,          json,                  0",
    "org.erdtman..,            json,                  1",
    "picocli..,                cli,                   12",
    "biweekly..,               report,                1",
    "org.tinylog..,            daemon,                1",
    "com.hivemq..,             feed,                  2",
    "io.reactivex..,           feed,                  1",
    "javax.crypto..,           seal,                  0",
    "java.sql..,               index,                 10",
    "org.sqlite..,             index,                 2",
    "org.postgresql..,         index,                 1",
  })
  void aLibraryIsUsedOnlyBehindItsDoor(String library, String doors, int users) {
    DescribedPredicate<JavaClass> foreign = resideInAPackage(library);
    hold(
        noClasses()
            .that(not(resideInAnyPackage(packages(doors))))
            .should()
            .dependOnClassesThat(foreign)
            .allowEmptyShould(false),
        describe(
            "uses " + library,
            c ->
                c.getDirectDependenciesFromSelf().stream()
                    .anyMatch(d -> foreign.test(d.getTargetClass()))),
        users);
  }

  @Test
  void onlySealUsesCryptography() {
    DescribedPredicate<JavaClass> cryptography =
        resideInAPackage("java.security..")
            .and(
                describe(
                    "not where code was loaded from",
                    c -> !Set.of("CodeSource", "ProtectionDomain").contains(c.getSimpleName())));
    hold(
        noClasses()
            .that(not(resideInAPackage(ROOT + "seal..")))
            .should()
            .dependOnClassesThat(cryptography),
        resideInAPackage(ROOT + "seal.."),
        15);
  }

  private static final DescribedPredicate<JavaClass> IN_CORE = resideInAnyPackage(packages(CORE));

  @Test
  void theCoreDoesNoInputAndOutputAndHasNoThreads() {
    hold(
        noClasses()
            .that(IN_CORE)
            .should()
            .dependOnClassesThat(
                resideInAnyPackage(
                        "java.nio.file..",
                        "java.nio.channels..",
                        "java.net..",
                        "java.util.concurrent..",
                        "java.util.logging..",
                        "java.security..")
                    .or(
                        describe(
                            "a file, a thread or a timer",
                            c ->
                                Set.of(
                                        "java.io.File",
                                        "java.io.FileInputStream",
                                        "java.io.FileOutputStream",
                                        "java.io.PrintStream",
                                        "java.lang.Thread",
                                        "java.lang.ThreadLocal",
                                        "java.lang.Process",
                                        "java.lang.Runtime",
                                        "java.util.Timer")
                                    .contains(c.getName())))),
        IN_CORE,
        90);
  }

  private static final DescribedPredicate<JavaAccess<?>> WALL_CLOCK =
      describe(
          "reads a clock",
          a ->
              (a.getTargetOwner().getPackageName().startsWith("java.time")
                      && a.getName().startsWith("now"))
                  || (a.getTargetOwner().isEquivalentTo(System.class)
                      && Set.of("currentTimeMillis", "nanoTime").contains(a.getName()))
                  || Set.of("java.time.Clock", "java.util.Date", "java.util.Calendar")
                      .contains(a.getTargetOwner().getName()));

  private static final DescribedPredicate<JavaAccess<?>> CHANCE =
      describe(
          "asks for chance",
          a ->
              a.getName().equals("randomUUID")
                  || (a.getTargetOwner().isEquivalentTo(Math.class) && a.getName().equals("random"))
                  || a.getTargetOwner().getPackageName().startsWith("java.util.random")
                  || Set.of("Random", "SecureRandom", "SplittableRandom", "ThreadLocalRandom")
                      .contains(a.getTargetOwner().getSimpleName()));

  /** A locale or time zone of the machine, asked for or taken in silence. */
  private static final DescribedPredicate<JavaAccess<?>> SURROUNDINGS =
      describe(
          "depends on where it runs",
          a ->
              (a.getTargetOwner().isEquivalentTo(String.class)
                      && Set.of("format", "formatted", "toUpperCase", "toLowerCase")
                          .contains(a.getName())
                      && !ArchitectureTest.takesLocale(a))
                  || (Set.of("getDefault", "systemDefault", "getenv", "getProperty")
                          .contains(a.getName())
                      && a.getTargetOwner().getPackageName().startsWith("java")
                      && !a.getTargetOwner().isEquivalentTo(java.util.Properties.class)));

  private static boolean takesLocale(JavaAccess<?> access) {
    return access.getTarget().getFullName().contains("java.util.Locale");
  }

  @Test
  void whatAnswersAreMadeOfIsTheSameOnEveryMachine() {
    DescribedPredicate<JavaClass> pure = resideInAnyPackage(packages(PURE));
    hold(noClasses().that(pure).should().accessTargetWhere(WALL_CLOCK), pure, 170);
    hold(noClasses().that(pure).should().accessTargetWhere(SURROUNDINGS), pure, 170);
    hold(noClasses().that(IN_CORE).should().accessTargetWhere(CHANCE), IN_CORE, 90);
  }

  /** The predicates themselves must see what they forbid. */
  @Test
  void theForbiddenIsSeenWhereItIsAllowed() {
    JavaClasses offender = new ClassFileImporter().importClasses(Offender.class);
    for (DescribedPredicate<JavaAccess<?>> forbidden :
        java.util.List.of(WALL_CLOCK, CHANCE, SURROUNDINGS)) {
      ArchRule rule = noClasses().should().accessTargetWhere(forbidden);
      assertThatThrownBy(() -> rule.check(offender))
          .isInstanceOf(AssertionError.class)
          .hasMessageContaining(forbidden.getDescription());
    }
  }

  /** Does everything that the core must not do. */
  private static final class Offender {
    @Override
    public String toString() {
      return java.time.Instant.now()
          + java.util.UUID.randomUUID().toString()
          + java.time.ZoneId.systemDefault();
    }
  }

  @Test
  void onlyTheCommandLineSpeaksToTheTerminalAndEndsTheProcess() {
    DescribedPredicate<JavaClass> elsewhere = not(resideInAPackage(ROOT + "cli.."));
    hold(
        noClasses()
            .that(elsewhere)
            .should()
            .accessField(System.class, "out")
            .orShould()
            .accessField(System.class, "err")
            .orShould()
            .callMethodWhere(
                targetOwner(describe("System or Runtime", ArchitectureTest::isProcess))
                    .and(describe("ends", a -> Set.of("exit", "halt").contains(a.getName()))))
            .orShould()
            .callMethod(Throwable.class, "printStackTrace"),
        elsewhere,
        200);
  }

  private static boolean isProcess(JavaClass owner) {
    return owner.isEquivalentTo(System.class) || owner.isEquivalentTo(Runtime.class);
  }

  @ParameterizedTest
  @MethodSource("packages")
  void everyPackageIsNullMarked(String name) throws Exception {
    Class<?> info = Class.forName(ROOT + name + ".package-info");

    assertThat(info.getPackage().isAnnotationPresent(NullMarked.class)).isTrue();
  }

  /** An array in a record breaks equals, hashCode and the promise that it never changes. */
  @Test
  void recordsHoldNoArrays() {
    DescribedPredicate<JavaClass> records = describe("records", JavaClass::isRecord);
    hold(
        noFields()
            .that(
                describe(
                    "are components of records",
                    (JavaField f) ->
                        f.getOwner().isRecord()
                            && !f.getModifiers()
                                .contains(com.tngtech.archunit.core.domain.JavaModifier.STATIC)))
            .should()
            .haveRawType(describe("an array", JavaClass::isArray)),
        records,
        80);
  }

  @Test
  void namesSayWhatAThingDoes() {
    DescribedPredicate<JavaClass> all = resideInAPackage("org.thumbseal..");
    hold(
        noClasses()
            .should()
            .haveSimpleNameEndingWith("Manager")
            .orShould()
            .haveSimpleNameEndingWith("Helper")
            .orShould()
            .haveSimpleNameEndingWith("Util")
            .orShould()
            .haveSimpleNameEndingWith("Utils")
            .orShould()
            .haveSimpleNameEndingWith("Impl"),
        all,
        250);
  }

  @Test
  void theOrderItselfHasNoCircle() {
    for (String name : packages()) {
      assertThat(reach(name)).as(name).doesNotContain(name);
    }
  }

  private static Set<String> reach(String from) {
    Set<String> reached = new TreeSet<>();
    direct(from).forEach(n -> collect(n, reached));
    return reached;
  }

  private static void collect(String name, Set<String> reached) {
    if (reached.add(name)) {
      direct(name).forEach(n -> collect(n, reached));
    }
  }

  private static Stream<String> direct(String name) {
    return Arrays.stream(USES.getOrDefault(name, "").split(" ", -1)).filter(n -> !n.isEmpty());
  }
}

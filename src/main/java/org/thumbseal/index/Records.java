package org.thumbseal.index;

import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.thumbseal.seal.TrustStore;

/**
 * The records index, open. It is made of sealed documents and never the truth: when in doubt, it is
 * made anew. For one thread at a time; other threads and programs open their own.
 */
public final class Records implements AutoCloseable {
  private final RecordsAddress address;
  private final Session session;
  private final String computer;
  private IngestProgress progress = IngestProgress.NONE;

  Records(RecordsAddress address, Session session, String computer) {
    this.address = address;
    this.session = session;
    this.computer = computer;
  }

  /**
   * Opens a base, and makes its tables where there are none.
   *
   * @param remarks is told a line when an index of an older version was thrown away
   * @throws RecordsException if it cannot be used
   */
  public static Records open(RecordsAddress address, Consumer<String> remarks)
      throws RecordsException {
    return new Opening(address, remarks).open();
  }

  /**
   * Opens the base of a results directory; where that cannot be written, one in memory, which is
   * made anew each time.
   *
   * @throws RecordsException if neither can be used
   */
  public static Records openIn(Path results, Consumer<String> remarks) throws RecordsException {
    return new Opening(RecordsAddress.in(results), remarks).openOrInMemory();
  }

  /** Tells from now on how far it has come, after each few hundred files. */
  public void tellProgress(IngestProgress to) {
    progress = to;
  }

  /**
   * Takes in what is new in a results directory, and takes out what is gone from there. A document
   * counts if its seal is good and by a key that is trusted.
   *
   * @throws RecordsException if base or directory cannot be used; what was done so far is kept
   */
  public Refreshed refresh(Path results, TrustStore trust) throws RecordsException {
    return telling(() -> new Scan(source(results), results, trust, progress).run());
  }

  /**
   * Makes anew what came from these directories, in one step: readers see the old or the new.
   *
   * @throws RecordsException if base or directory cannot be used; then all is as it was
   */
  public Refreshed rebuild(List<Path> directories, TrustStore trust) throws RecordsException {
    return telling(
        () -> {
          var rebuild = new Rebuild(session, trust, progress);
          for (Path results : directories) {
            source(results);
          }
          return session.write(
              () -> {
                for (Path results : directories) {
                  rebuild.run(source(results), results);
                }
                return rebuild.outcome();
              });
        });
  }

  /**
   * Ids of the pumps of which a dated test counts, sorted.
   *
   * @throws RecordsException if the base cannot be read
   */
  public List<String> assets() throws RecordsException {
    return reading(Queries::assets);
  }

  /**
   * All tests of a pump as they stand, void ones too, in the order of time; undated ones first.
   *
   * @throws RecordsException if the base cannot be read
   */
  public List<IndexedTest> tests(String asset) throws RecordsException {
    return reading(queries -> queries.tests(asset));
  }

  /**
   * The same for what changes from test to test alone: some quantities, and of the checks the parts
   * that were replaced. Reasons and findings are left out; it takes a fraction of the time.
   *
   * @param quantities names of those that are wanted, at least one
   * @throws RecordsException if the base cannot be read
   */
  public List<IndexedTest> tests(String asset, List<String> quantities) throws RecordsException {
    return reading(queries -> queries.tests(asset, quantities));
  }

  /**
   * Shows all tests, void and unassigned ones too, in the order of time, without holding them all.
   *
   * @throws RecordsException if the base cannot be read
   */
  public void forEachTest(Consumer<IndexedTest> visitor) throws RecordsException {
    reading(queries -> queries.forEachTest(visitor));
  }

  /**
   * When the first test was that counts and has a date; empty where there is none.
   *
   * @throws RecordsException if the base cannot be read
   */
  public Optional<Instant> firstTest() throws RecordsException {
    return reading(Queries::firstTest);
  }

  /**
   * Parts that were replaced before tests that count, in the order of time.
   *
   * @param asset of this pump; absent: of all
   * @param from first instant
   * @param until the instant after the last
   * @throws RecordsException if the base cannot be read
   */
  public List<IndexedPart> parts(Optional<String> asset, Instant from, Instant until)
      throws RecordsException {
    return reading(queries -> queries.parts(asset, from, until));
  }

  /**
   * The last of each work on each pump that counts, by pump and work.
   *
   * @param day what was done later is left out
   * @throws RecordsException if the base cannot be read
   */
  public List<IndexedWork> lastWorks(LocalDate day) throws RecordsException {
    return reading(queries -> queries.lastWorks(day));
  }

  /**
   * All works on a pump that count, in the order of their days.
   *
   * @throws RecordsException if the base cannot be read
   */
  public List<IndexedWork> works(String asset) throws RecordsException {
    return reading(queries -> queries.works(asset));
  }

  /**
   * All documents about a pump that count but its tests, in the order of time.
   *
   * @throws RecordsException if the base cannot be read
   */
  public List<IndexedDocument> documents(String asset) throws RecordsException {
    return reading(queries -> queries.documents(asset));
  }

  /**
   * When each pump last had a test of each verdict that counts.
   *
   * @param end tests from this instant on are left out
   * @throws RecordsException if the base cannot be read
   */
  public List<LastVerdict> lastVerdicts(Instant end) throws RecordsException {
    return reading(queries -> queries.lastVerdicts(end));
  }

  /**
   * Calibrations that count, by sensor, in the order of time.
   *
   * @param sensor of this one; absent: of all
   * @throws RecordsException if the base cannot be read
   */
  public List<IndexedCalibration> calibrations(Optional<String> sensor) throws RecordsException {
    return reading(queries -> queries.calibrations(sensor));
  }

  /**
   * Corrections of results that are this pump's now, in the order of time.
   *
   * @throws RecordsException if the base cannot be read
   */
  public List<IndexedCorrection> corrections(String asset) throws RecordsException {
    return reading(queries -> queries.corrections(asset));
  }

  /**
   * What the index holds.
   *
   * @throws RecordsException if the base cannot be read
   */
  public RecordsSummary summary() throws RecordsException {
    return reading(queries -> queries.summary(address.shown()));
  }

  private Source source(Path results) throws SQLException, RecordsException {
    return Source.of(session, Source.name(address, results, computer));
  }

  /** Asks the base. */
  @FunctionalInterface
  private interface Question<T> {
    T ask(Queries queries) throws SQLException;
  }

  private <T> T reading(Question<T> question) throws RecordsException {
    return telling(() -> session.read(() -> question.ask(new Queries(session))));
  }

  private <T> T telling(Session.Work<T> work) throws RecordsException {
    try {
      return work.run();
    } catch (SQLException e) {
      throw Trouble.of(address, e);
    }
  }

  @Override
  public void close() throws RecordsException {
    telling(
        () -> {
          session.close();
          return address;
        });
  }
}

package org.thumbseal.feed;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.thumbseal.archive.ArchiveException;
import org.thumbseal.archive.LedgerReader;
import org.thumbseal.archive.Sequenced;
import org.thumbseal.json.JsonRefusedException;
import org.thumbseal.seal.Sha256;

/**
 * Sends what a results directory holds and the other side has not acknowledged yet, in rounds. For
 * one thread; {@link #state} for any.
 */
public final class Feeder implements AutoCloseable {
  /** So many of a chain are known at a time: some twenty megabytes at most. */
  static final int MOST_KNOWN = 50_000;

  /** So many are looked for from the end on. */
  private static final int FEW = 1000;

  /** Beyond that it is not the documents. */
  static final int MOST_REFUSED = 100;

  /** When one has failed so often, it is held against the next. */
  static final int SUSPICIOUS = 5;

  private final LedgerReader reader;
  private final FeedPlace place;
  private final FeedSurroundings around;
  private final OutboxKeeper keeper;
  private final Outbox outbox;
  private final Function<String, Courier> couriers;
  private final int most;
  private Optional<Courier> courier = Optional.empty();
  private Map<String, Long> ends = Map.of();
  private Optional<Sequenced> failing = Optional.empty();
  private int failures;
  private boolean lookedForMissing;
  private volatile FeedState state = FeedState.UNKNOWN;

  /**
   * What a round came to.
   *
   * @param sent how many were acknowledged
   * @param trouble why it ended before all were, in half a sentence; empty when all are
   */
  public record Round(long sent, String trouble) {}

  /** What it sends with, and how many it knows at a time. */
  record Means(Function<String, Courier> couriers, int most) {}

  Feeder(FeedPlace place, FeedSurroundings around, OutboxKeeper keeper, Means means) {
    this.place = place;
    this.around = around;
    this.keeper = keeper;
    this.couriers = means.couriers();
    this.most = means.most();
    this.reader = new LedgerReader(place.results());
    this.outbox = new Outbox(keeper.state().progress());
  }

  /**
   * Opens the outbox of this target.
   *
   * @param begin where to begin
   * @throws FeedException if another program sends from it, or its folder cannot be made
   */
  public static Feeder open(
      FeedPlace place, FeedTarget target, FeedBegin begin, FeedSurroundings around)
      throws FeedException {
    if (!Files.isDirectory(place.results())) {
      throw FeedException.machine(place.results() + ": there is no such directory");
    }
    OutboxKeeper keeper = OutboxKeeper.open(place, target, begin, around);
    Function<String, Courier> couriers = kid -> courier(target, client(place, kid));
    return new Feeder(place, around, keeper, new Means(couriers, MOST_KNOWN));
  }

  private static Courier courier(FeedTarget target, String client) {
    return target.address().isBroker() ? new MqttCourier(target, client) : new HttpsCourier(target);
  }

  /**
   * A name that no other bench has, of the 23 letters and digits that every broker takes (section
   * 3.1.3.1 of MQTT 5.0).
   */
  private static String client(FeedPlace place, String kid) {
    String all = kid + " " + place.results().toAbsolutePath().normalize();
    return "thumbseal" + Sha256.hex(all.getBytes(StandardCharsets.UTF_8)).substring(0, 14);
  }

  /** How the outbox of a target stands, whoever sends from it. */
  public static FeedState state(FeedPlace place, FeedTarget target) throws FeedException {
    try {
      OutboxState kept = new OutboxRecord(place.outbox(), target).load();
      return state(kept, new LedgerReader(place.results()).ends().ends());
    } catch (JsonRefusedException | ArchiveException e) {
      throw FeedException.machine(String.valueOf(e.getMessage()));
    }
  }

  private static FeedState state(OutboxState kept, Map<String, Long> ends) {
    Progress progress = kept.progress();
    long waiting = progress.behind(ends);
    return new FeedState(
        waiting,
        kept.since().filter(since -> waiting > 0),
        kept.trouble(),
        progress.refused().size());
  }

  /** How it stands now. */
  public FeedState state() {
    return state;
  }

  /** Sends all there is, until there is no more or something is in the way. */
  public Round round() throws InterruptedException {
    long before = keeper.acknowledged();
    String trouble = "";
    try {
      trouble = sendAll();
    } catch (ArchiveException e) {
      trouble = String.valueOf(e.getMessage());
    } finally {
      courier.ifPresent(Courier::rest);
      settle(trouble);
    }
    return new Round(keeper.acknowledged() - before, trouble);
  }

  /**
   * Rounds, until what fails has been tried so often that it can be held against the next; for one
   * who has no time to come again.
   */
  public Round stubbornRound(RetryPlan retry) throws InterruptedException {
    Round round = round();
    long sent = round.sent();
    int last = 0;
    while (isWorthAnother(round, last)) {
      last = failures;
      around.clock().pause(retry.after(failures, 0));
      round = round();
      sent += round.sent();
    }
    return new Round(sent, round.trouble());
  }

  private boolean isWorthAnother(Round round, int last) {
    return !round.trouble().isEmpty()
        && failures != last
        && failures < SUSPICIOUS
        && outbox.afterNext().isPresent();
  }

  private void settle(String trouble) {
    boolean empty = trouble.isEmpty() && outbox.next().isEmpty();
    keeper.change(s -> empty ? s.empty() : s.waitingSince(around.clock().wall()));
    keeper.change(s -> s.with(outbox.progress()).troubledBy(trouble));
    keeper.save();
    tellState();
  }

  private void tellState() {
    state = state(keeper.state().with(outbox.progress()), ends);
  }

  private String sendAll() throws ArchiveException, InterruptedException {
    look();
    boolean more = true;
    while (more) {
      Optional<Sequenced> next = outbox.next();
      if (next.isPresent()) {
        String trouble = send(next.get());
        if (!trouble.isEmpty()) {
          return trouble;
        }
      } else {
        more = find(look());
      }
    }
    return "";
  }

  private LedgerReader.Ends look() throws ArchiveException {
    LedgerReader.Ends now = reader.ends();
    ends = now.ends();
    if (outbox.progress().behind(ends) > 0) {
      keeper.change(s -> s.waitingSince(around.clock().wall()));
    }
    tellState();
    return now;
  }

  /** Whether there is something to be sent. */
  private boolean find(LedgerReader.Ends now) throws ArchiveException {
    long behind = outbox.progress().behind(now.ends());
    boolean missing = !lookedForMissing && outbox.progress().hasMissing();
    if (behind == 0 && !missing) {
      return false;
    }
    List<Sequenced> found = behind == 1 && !missing ? last(now) : List.of();
    if (found.isEmpty()) {
      lookedForMissing = true;
      found = search(now, behind);
    }
    outbox.found(found);
    if (found.isEmpty()) {
      settleWithout(now);
    }
    return !found.isEmpty();
  }

  /** A few that wait are as a rule the last of many thousands, which need not be opened then. */
  private List<Sequenced> search(LedgerReader.Ends now, long behind) throws ArchiveException {
    LedgerReader.Wanted due = (kid, n) -> isDue(now, kid, n);
    return behind > 0 && behind <= Math.min(FEW, most) && !outbox.progress().hasMissing()
        ? reader.findLatest(due, (int) behind, around::breathe)
        : reader.find(due, most, around::breathe);
  }

  /** What the head does not name yet is not in the ledger yet. */
  private boolean isDue(LedgerReader.Ends now, String kid, long sequence) {
    return sequence <= now.ends().getOrDefault(kid, 0L) && outbox.progress().wants(kid, sequence);
  }

  /** As a rule there is one more, and the head names it: no need to open thousands. */
  private List<Sequenced> last(LedgerReader.Ends now) {
    return now.last()
        .flatMap(LedgerReader::place)
        .filter(p -> p.sequence() == outbox.progress().upTo(p.kid()) + 1)
        .filter(p -> now.ends().getOrDefault(p.kid(), 0L) == p.sequence())
        .map(List::of)
        .orElse(List.of());
  }

  private void settleWithout(LedgerReader.Ends now) {
    Progress before = outbox.progress();
    outbox.lookedThrough(now.ends());
    tellGaps(before);
  }

  private void tellGaps(Progress before) {
    for (Gap gap : outbox.progress().gaps()) {
      if (gap.isMissing() && gap.from() > before.upTo(gap.kid())) {
        String which =
            gap.documents() == 1
                ? "document " + gap.from() + " is"
                : "documents " + gap.from() + " to " + gap.to() + " are";
        around.tell(which + " not there, and cannot be sent; run verify on " + place.results());
      }
    }
  }

  /** Sends one; why it is to be sent again, or nothing. */
  private String send(Sequenced next) throws InterruptedException {
    try {
      Optional<Parcel> parcel = Parcel.read(next);
      if (parcel.isEmpty()) {
        outbox.missing(next);
        return "";
      }
      return settle(next, courier(next.kid()).deliver(parcel.get()));
    } catch (JsonRefusedException e) {
      return refuse(next, String.valueOf(e.getMessage()));
    } catch (IOException e) {
      return next.file() + ": cannot be read: " + e.getMessage();
    } finally {
      around.breathe();
    }
  }

  private Courier courier(String kid) {
    Courier there = courier.orElseGet(() -> couriers.apply(kid));
    courier = Optional.of(there);
    return there;
  }

  private String settle(Sequenced next, Answer answer)
      throws InterruptedException, IOException, JsonRefusedException {
    if (answer instanceof Answer.Trouble trouble) {
      return failed(next, trouble.why());
    }
    if (answer instanceof Answer.Refused refused) {
      return refuse(next, refused.why());
    }
    Progress before = outbox.progress();
    outbox.acknowledged(next);
    tellGaps(before);
    keeper.acknowledged(outbox.progress());
    tellState();
    return "";
  }

  /**
   * Some receivers fail over one document without saying so: cut the connection because it is
   * large, or answer with an error of their own. If the one after it arrives, it is the document.
   */
  private String failed(Sequenced next, String why)
      throws InterruptedException, IOException, JsonRefusedException {
    failures = failing.equals(Optional.of(next)) ? failures + 1 : 1;
    failing = Optional.of(next);
    Optional<Sequenced> other = outbox.afterNext().filter(o -> failures >= SUSPICIOUS);
    if (other.isEmpty()) {
      return why;
    }
    Optional<Parcel> parcel = Parcel.read(other.get());
    if (parcel.isEmpty()
        || !(courier(next.kid()).deliver(parcel.get()) instanceof Answer.Accepted accepted)) {
      return why;
    }
    String trouble = refuse(next, why + " (" + failures + " times, and another document arrived)");
    return trouble.isEmpty() ? settle(other.get(), accepted) : trouble;
  }

  private String refuse(Sequenced next, String why) {
    if (outbox.progress().refused().size() >= MOST_REFUSED) {
      return MOST_REFUSED + " documents were refused, and this one too: " + why;
    }
    Progress before = outbox.progress();
    outbox.refused(next, why);
    tellGaps(before);
    around.tell(next.file() + ": is not taken: " + why + "; put aside, the others go on");
    tellState();
    return "";
  }

  @Override
  public void close() throws FeedException {
    courier.ifPresent(Courier::close);
    keeper.change(s -> s.with(outbox.progress()));
    keeper.close();
  }
}

package org.thumbseal.register;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.thumbseal.grade.Criteria;
import org.thumbseal.pipeline.KnownPump;
import org.thumbseal.pipeline.KnownPumps;

/**
 * A register that is looked at again before every test. One that was changed well is taken from
 * then on; one that was broken is told of once, and the one before is kept.
 */
public final class KeptRegister {
  private final Path file;
  private final Supplier<LocalDate> today;
  private final Optional<Criteria> said;
  private State state;
  private List<RegisterMistake> told = List.of();

  /**
   * Reads it for the first time.
   *
   * @param said criteria that go before those of the register, and their jar and rated flow
   * @throws RegisterRefused if there is a mistake in it
   */
  public KeptRegister(Path file, Supplier<LocalDate> today, Optional<Criteria> said)
      throws RegisterRefused {
    this.file = file;
    this.today = today;
    this.said = said;
    this.state = new State(RegisterFile.read(file, today.get()));
  }

  /** As it was read last. */
  public synchronized Register register() {
    return state.register;
  }

  /** For grading. */
  public synchronized KnownPumps pumps() {
    return state;
  }

  private synchronized KnownPumps again(Consumer<String> remark) {
    try {
      Register read = RegisterFile.read(file, today.get());
      told = List.of();
      if (!read.byId().equals(state.register.byId())) {
        state = new State(read);
        remark.accept(file + ": the register has changed and is taken up");
      }
    } catch (RegisterRefused e) {
      if (!e.mistakes().equals(told)) {
        told = e.mistakes();
        remark.accept(file + ": " + e.getMessage() + told());
      }
    }
    return state;
  }

  private String told() {
    String more = told.size() > 1 ? "; and " + (told.size() - 1) + " more" : "";
    return more + "; the register of before is used on";
  }

  /** One reading of it. */
  private final class State implements KnownPumps {
    private final Register register;

    State(Register register) {
      this.register = register;
    }

    @Override
    public Optional<KnownPump> of(String asset) {
      return register.of(asset).map(this::known);
    }

    @Override
    public List<KnownPump> all() {
      return register.assets().stream().map(this::known).toList();
    }

    @Override
    public KnownPumps now(Consumer<String> remark) {
      return again(remark);
    }

    /** What was said by option goes before. */
    private KnownPump known(RegisteredAsset asset) {
      KnownPump pump = asset.known();
      return said.map(c -> behind(pump, c.equipment())).orElse(pump);
    }

    private static KnownPump behind(KnownPump pump, Criteria.Equipment first) {
      Criteria.Equipment own = pump.equipment();
      return new KnownPump(
          pump.id(),
          pump.description(),
          pump.location(),
          new Criteria.Equipment(
              first.jarLitres().isPresent() ? Optional.empty() : own.jarLitres(),
              first.ratedLitresPerMinute().isPresent()
                  ? Optional.empty()
                  : own.ratedLitresPerMinute()),
          Optional.empty());
    }
  }
}

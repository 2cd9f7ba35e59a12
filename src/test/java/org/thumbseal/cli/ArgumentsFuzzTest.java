package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.thumbseal.fuzz.Dice;
import org.thumbseal.fuzz.Said;

/** Argument lists that nobody would type: an exit code of the contract, and never a stack trace. */
@Timeout(value = 300, threadMode = Timeout.ThreadMode.SEPARATE_THREAD)
class ArgumentsFuzzTest {
  private static final long SEED = 20_260_302;
  private static final int COUNT = 1_000;

  /** Without watch and demo, which run for long, and calibrate, which asks. */
  private static final List<String> COMMANDS =
      List.of(
          "replay", "verify", "criteria", "schema", "simulate", "ports", "key", "help", "x", "");

  private static final List<String> WORDS =
      List.of(
          "--json",
          "--explain",
          "--columns",
          "--asset",
          "--criteria",
          "--ambient-kpa",
          "--altitude-m",
          "--jar-l",
          "--against",
          "--pinched",
          "--trust",
          "--seed",
          "--rate",
          "--repeat",
          "--list",
          "--probe",
          "show",
          "--jwk",
          "--pem",
          "--help",
          "--version",
          "-h",
          "-V",
          "--",
          "-",
          "",
          " ",
          "=",
          "--=",
          "---",
          "--json=x",
          "--json=",
          "--seed=1",
          "@",
          "@x",
          "@@x",
          "@/dev/zero",
          "no/such/file",
          "fixtures/captures",
          "fixtures/captures/no-test.log",
          "/dev/null",
          "sound",
          "slow",
          "result",
          "1",
          "-1",
          "0",
          "NaN",
          "1e400",
          "-0",
          "9007199254740993",
          "0x10",
          "101,3",
          "1_000",
          "\u0661\u0662",
          "time=1:s,pressure=2:kPa",
          "time=,pressure=",
          "a\0b",
          "\u202e",
          "\u001b[2J",
          "\ud800",
          "%s%n",
          "${sys:user.home}",
          "'",
          "\"",
          "\\",
          "\n");

  @Test
  void endInAnExitCodeAndPlainText() {
    for (int number = 0; number < COUNT; number++) {
      Dice dice = new Dice(SEED + number);
      List<String> line = line(dice);
      String where = "seed " + SEED + ", number " + number + ": " + line;
      CommandRun run = run(line, where);
      assertThat(run.code()).as(where).isBetween(0, 3);
      requirePlain(run, where);
    }
  }

  private static List<String> line(Dice dice) {
    List<String> line = new ArrayList<>(List.of(dice.of(COMMANDS)));
    for (int i = dice.below(5); i > 0; i--) {
      line.add(dice.oneIn(4) ? dice.of(WORDS) + "=" + dice.of(WORDS) : dice.of(WORDS));
    }
    return line;
  }

  private static CommandRun run(List<String> line, String where) {
    try {
      return CommandRun.of(line.toArray());
    } catch (RuntimeException | Error e) {
      throw new AssertionError(where + ": " + Arrays.toString(e.getStackTrace()), e);
    }
  }

  private static void requirePlain(CommandRun run, String where) {
    try {
      Said.requirePlain(run.out() + run.err());
      Said.requireNoTrace(run.err());
    } catch (AssertionError e) {
      throw new AssertionError(where, e);
    }
  }
}

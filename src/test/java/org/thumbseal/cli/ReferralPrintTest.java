package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** The sheet of a referral as a browser prints it: one, from its first word to its last. */
@Timeout(180)
class ReferralPrintTest {
  @TempDir private Path folder;
  private Path results;
  private Path key;

  @BeforeEach
  void places() {
    results = folder.resolve("results");
    key = folder.resolve("keys/k.pem");
  }

  private String printed(String asset, Object... more) throws Exception {
    Path page = folder.resolve("sheet.html");
    Object[] all = new Object[8 + more.length];
    Object[] first = {"refer", asset, "--results", results, "--key", key, "-o", page};
    System.arraycopy(first, 0, all, 0, first.length);
    System.arraycopy(more, 0, all, first.length, more.length);
    CommandRun run = CommandRun.of(all);
    assertThat(run.code()).as(run.err()).isZero();
    PrintedPage printed = PrintedPage.of(page);
    assertThat(printed.sheets()).isEqualTo(1);
    assertThat(printed.text())
        .contains("For the qualified technician", "Decontaminate", "Released for use")
        .contains("Evidence of suction on that day");
    return printed.text();
  }

  @Test
  void aLifeIsOneSheet() throws Exception {
    new ReferredPump(results, key).wholeLife();
    assertThat(printed(ReferredPump.ASSET))
        .contains("INFECTIOUS", "And 11 more", "No leak search.", "last good", "15.90 ± 2.60 s");
  }

  @Test
  void soIsOneWithTheQuestionsOfTheGuide() throws Exception {
    new ReferredPump(results, key).wholeLife();
    ReferralPictures.guide(results, key);
    assertThat(printed(ReferredPump.ASSET)).contains("hisses at the lid", "seek-leak");
  }

  /** Remarks that take two lines each, and the end of a leak search. */
  @Test
  void soIsOneWithARemarkOnEachTestAndALeakSearch() throws Exception {
    ReferredPump pump = new ReferredPump(results, key);
    String[] looks = {"gasket=ok", "jar=ok", "tubing=ok", "filter=ok", "cord=ok", "outside=ok"};
    for (int month = 1; month < 9; month++) {
      pump.test("control-not-at-maximum", "2026-0" + month + "-02", looks);
    }
    pump.deed("repair", "2026-02-12", "");
    pump.deed("yearly-inspection", "2026-03-12", "");
    pump.deed("sterilisation", "2026-08-02", "");
    pump.search(
        "2026-08-03", "The jar takes 13.5 kPa: it leaks.", "Clean the lid gasket. ".repeat(14));
    assertThat(printed(ReferredPump.ASSET)).contains("it leaks.");
  }

  @Test
  void soIsOneWithMoreThanAnybodyCouldSay() throws Exception {
    new ReferredPump(results, key).tooMuch();
    ReferralPictures.guide(results, key);
    Path register = folder.resolve("pumps.csv");
    String wide = "W".repeat(180);
    Files.writeString(
        register,
        "id,description,location,serial,in_service\nSP-014,%s,%s,%s,2022-05-01\n"
            .formatted(wide, wide, wide));
    String complaint = "W".repeat(300);
    printed(ReferredPump.ASSET, "--complaint", complaint, "--register", register);
  }

  @Test
  void soIsOneOfAPumpWithALongName() throws Exception {
    String name = "W".repeat(100);
    ReferredPump pump = new ReferredPump(results, key).named(name);
    pump.wholeLife();
    printed(name);
  }

  @Test
  void andOfOneThatWasNeverTested() throws Exception {
    new ReferredPump(results, key).deed("repair", "2026-03-02", "");
    assertThat(printed(ReferredPump.ASSET)).contains("No test of this pump judged it.");
  }
}

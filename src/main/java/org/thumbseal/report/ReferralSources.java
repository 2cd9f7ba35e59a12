package org.thumbseal.report;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.thumbseal.refer.Deed;
import org.thumbseal.refer.Referral;
import org.thumbseal.refer.ReferredTest;
import org.thumbseal.refer.Source;

/** By what the receiver checks that the sheet says what was sealed. */
final class ReferralSources {
  private static final int LONGEST_FILE = 62;
  private static final int MOST = 8;

  private ReferralSources() {}

  /** Writes digests in full of what is quoted in full, and the keys. */
  static void write(Markup body, Referral referral) {
    List<Source> sources = sources(referral);
    if (sources.isEmpty()) {
      return;
    }
    List<String> keys = sources.stream().map(Source::kid).distinct().toList();
    body.open("section", "class", "seal").open("p").element("b", Words.text("refer.seal"));
    body.text(" " + Words.text("refer.seal.how")).close();
    body.open("table").line();
    for (Source source : sources) {
      body.open("tr").element("td", Clipped.text(source.file(), LONGEST_FILE));
      body.element("td", source.digest(), "class", "exact");
      body.element("td", keys.size() > 1 ? "(" + (keys.indexOf(source.kid()) + 1) + ")" : "");
      body.close().line();
    }
    body.close();
    for (String key : keys) {
      String number = keys.size() > 1 ? " (" + (keys.indexOf(key) + 1) + ")" : "";
      body.open("p").text(Words.text("refer.key") + number + " ");
      body.element("span", fingerprint(key), "class", "exact");
      body.text(" " + Words.text("seal.kid") + " ").element("span", key, "class", "exact").close();
    }
    body.close().line();
  }

  private static List<Source> sources(Referral referral) {
    List<Source> all =
        new ArrayList<>(referral.drawn().stream().map(ReferredTest::source).toList());
    Stream.of(Deed.TROUBLE, Deed.LEAK_SEARCH)
        .flatMap(work -> referral.last(work).stream())
        .forEach(deed -> all.add(deed.source()));
    List<Deed> latest = new ArrayList<>(referral.lastDeeds());
    Collections.reverse(latest);
    latest.stream().map(Deed::source).filter(s -> !all.contains(s)).forEach(all::add);
    return all.subList(0, Math.min(MOST, all.size()));
  }

  private static String fingerprint(String kid) {
    return new SealFacts(SealFacts.State.TRUSTED, "", "", Optional.of(kid), Optional.empty())
        .fingerprint()
        .orElse("");
  }
}

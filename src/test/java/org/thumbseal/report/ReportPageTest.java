package org.thumbseal.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.HexFormat;
import java.util.Locale;
import java.util.TimeZone;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.thumbseal.seal.Sha256;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;
import tools.jackson.databind.node.StringNode;

/** What stands on the page of a result, and what must never get onto it. */
class ReportPageTest {
  private static final String EVIL = "<script>alert(1)</script>\"'&<img src=x onerror=y>\u202E";

  @Test
  void theNumbersStandBesideTheLimits() throws Exception {
    String page = ReportPage.html(ReportFixture.of("sound").report());

    assertThat(page)
        .contains("<h1>PASS</h1>")
        .contains("7.50 \u00B1 0.45 s</td><td>at most 10.0 s</td><td class=\"judged\">kept")
        .contains("88.92 \u00B1 2.57 kPa</td><td>at least 80.0 kPa</td><td class=\"judged\">kept")
        .contains("UTC (+00:00)", "Not sealed.", "local rules and licensed practice decide");
  }

  @Test
  void aTestThatCannotBeJudgedHasKeptAndMissedNothing() throws Exception {
    String page = ReportPage.html(ReportFixture.of("slipped").report());

    assertThat(page).contains("<h1>INVALID</h1>", "not measured");
    assertThat(page).doesNotContain(">kept<", ">missed<", ">too near<");
  }

  @Test
  void anUnblockedTestHasAPage() throws Exception {
    ReportFixture fixture = ReportFixture.of("no-vacuum");
    ((ObjectNode) fixture.document().get("test")).remove("occludedAt");
    ((ObjectNode) fixture.document().get("measurements")).remove("maximumVacuum");
    fixture.document().put("verdict", "invalid");

    String page = ReportPage.html(fixture.report());

    assertThat(page).contains("the inlet was not blocked", "<h1>INVALID</h1>");
    assertThat(page).doesNotContain("rise-limit", "maximum-limit");
  }

  @Test
  void checksOfTheVisitStandApart() throws Exception {
    ReportFixture fixture = ReportFixture.of("sound");
    assertThat(ReportPage.html(fixture.report())).doesNotContain("Looked at on this visit");
    fixture
        .document()
        .putArray("checks")
        .addObject()
        .put("item", "gasket")
        .put("state", "replaced")
        .put("part", "G-12")
        .put("reason", "cracked");

    assertThat(ReportPage.html(fixture.report()))
        .contains("Looked at on this visit", "Gasket and cap", "replaced", "G-12, cracked");
  }

  @Test
  void whatWasNotLookedAtIsSaidInOneLine() throws Exception {
    ReportFixture fixture = ReportFixture.of("sound");
    ArrayNode checks = fixture.document().putArray("checks");
    checks.addObject().put("item", "jar").put("state", "not-checked");
    checks.addObject().put("item", "cord").put("state", "ok");
    checks.addObject().put("item", "outside").put("state", "not-checked");

    assertThat(ReportPage.html(fixture.report()))
        .contains("<p>Not looked at: Jar, Outside</p>", "Mains cord and plug")
        .doesNotContain(">Jar<");
  }

  /** Every text of a document is somebody else's. */
  @Test
  void nothingInADocumentBecomesMarkup() throws Exception {
    ReportFixture fixture = ReportFixture.of("leak");
    spoil(fixture.document());
    fixture.document().put("verdict", "pass");

    for (String page :
        new String[] {ReportPage.html(fixture.report()), CurvePicture.file(fixture.report())}) {
      assertThat(page).doesNotContain("<script", "<img", "alert(1)\"", "\u202E");
    }
    assertThat(ReportPage.html(fixture.report())).contains("&lt;script&gt;alert(1)&lt;/script&gt;");
  }

  private static void spoil(JsonNode node) {
    if (node instanceof ObjectNode object) {
      for (String name : object.propertyNames().toArray(String[]::new)) {
        if (object.get(name).isString()) {
          object.set(name, StringNode.valueOf(EVIL));
        } else {
          spoil(object.get(name));
        }
      }
    } else {
      node.forEach(ReportPageTest::spoil);
    }
  }

  /** Content Security Policy Level 3: the digest is that of the text within the element. */
  @Test
  void thePolicyAllowsTheStyleSheetAndNothingElse() throws Exception {
    String page = ReportPage.html(ReportFixture.of("sound").report());
    Matcher style = Pattern.compile("<style>(.*?)</style>", Pattern.DOTALL).matcher(page);
    assertThat(style.find()).isTrue();
    byte[] digest =
        HexFormat.of().parseHex(Sha256.hex(style.group(1).getBytes(StandardCharsets.UTF_8)));
    String source = "sha256-" + Base64.getEncoder().encodeToString(digest);

    assertThat(page)
        .contains("content=\"default-src &#39;none&#39;; style-src &#39;" + source + "&#39;; base");
    assertThat(page).doesNotContain(" style=\"", "<script", "src=", "@import", "url(");
    assertThat(page.replace("http://www.w3.org/2000/svg", "")).doesNotContain("://");
  }

  @ParameterizedTest
  @ValueSource(strings = {"sound", "altitude"})
  void theSameResultGivesTheSameBytesEverywhere(String name) throws Exception {
    String here = ReportPage.html(ReportFixture.of(name).report());
    Locale locale = Locale.getDefault();
    TimeZone zone = TimeZone.getDefault();
    try {
      Locale.setDefault(Locale.forLanguageTag("ar-EG-u-nu-arab"));
      TimeZone.setDefault(TimeZone.getTimeZone("Pacific/Chatham"));
      assertThat(ReportPage.html(ReportFixture.of(name).report())).isEqualTo(here);
    } finally {
      Locale.setDefault(locale);
      TimeZone.setDefault(zone);
    }
  }

  @Test
  void anElementThatWasNotClosedIsAFault() {
    assertThatThrownBy(() -> new Markup().open("p").toString())
        .isInstanceOf(IllegalStateException.class);
  }
}

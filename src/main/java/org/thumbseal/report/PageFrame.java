package org.thumbseal.report;

import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.HexFormat;
import org.thumbseal.seal.Sha256;

/**
 * The frame of a page that holds all it needs and may load nothing: its policy allows the style
 * sheet and the script that are in it, by their digests (Content Security Policy Level 3), and
 * nothing else.
 */
final class PageFrame {
  private PageFrame() {}

  /**
   * What a page is called and made of.
   *
   * @param title of the window
   * @param mark what the page is of, for whoever finds the file
   * @param style its style sheet
   * @param script its script; empty where it has none
   */
  record Head(String title, String mark, String style, String script) {}

  static String page(Head head, Markup body) {
    Markup page = new Markup().own("<!DOCTYPE html>\n");
    page.open("html", "lang", Words.text("language")).line().open("head").line();
    page.empty("meta", "charset", "utf-8").line();
    page.empty("meta", "http-equiv", "Content-Security-Policy", "content", policy(head)).line();
    page.empty("meta", "name", "generator", "content", "Thumbseal").line();
    page.empty("meta", "name", ReportFile.SUBJECT, "content", head.mark()).line();
    page.empty("meta", "name", "viewport", "content", "width=device-width").line();
    page.empty("meta", "name", "referrer", "content", "no-referrer").line();
    page.element("title", head.title()).line();
    page.open("style").own(head.style()).close().line().close().line();
    page.open("body").line().add(body);
    if (!head.script().isEmpty()) {
      page.open("script").own(head.script()).close().line();
    }
    return page.close().line().close().line().toString();
  }

  private static String policy(Head head) {
    String script = head.script().isEmpty() ? "" : "; script-src " + source(head.script());
    return "default-src 'none'; style-src "
        + source(head.style())
        + script
        + "; base-uri 'none'; form-action 'none'";
  }

  private static String source(String content) {
    String hex = Sha256.hex(content.getBytes(StandardCharsets.UTF_8));
    String base64 = Base64.getEncoder().encodeToString(HexFormat.of().parseHex(hex));
    return "'sha256-" + base64 + "'";
  }
}

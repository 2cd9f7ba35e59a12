package org.thumbseal.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.logging.Level;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.openqa.selenium.By;
import org.openqa.selenium.Dimension;
import org.openqa.selenium.OutputType;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.interactions.Actions;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LoggingPreferences;

/** A real browser without a screen, and what a person sees in it. */
final class Browser implements AutoCloseable {
  static final Dimension PHONE = new Dimension(390, 844);
  static final Dimension LAPTOP = new Dimension(1280, 800);

  private static final Path CHROMIUM = Path.of("/usr/bin/chromium");
  private static final Path DRIVER = Path.of("/usr/bin/chromedriver");
  private static final Path AXE = Path.of("src/test/browser/node_modules/axe-core/axe.min.js");
  private static final Path PICTURES = Path.of("target/page");
  private static final Pattern ASKED =
      Pattern.compile("\"method\":\"Network\\.requestWillBeSent\".*?\"url\":\"([^\"]+)\"");

  private final ChromeDriver driver;
  private final List<String> asked = new ArrayList<>();

  private Browser(ChromeDriver driver) {
    this.driver = driver;
  }

  /** Opens a page; skips the test where there is no browser. */
  static Browser at(String url, Path profile) {
    assumeTrue(Files.isExecutable(CHROMIUM), "skipped: Chromium is not installed");
    assumeTrue(Files.isExecutable(DRIVER), "skipped: the driver of Chromium is not installed");
    ChromeDriverService service =
        new ChromeDriverService.Builder().usingDriverExecutable(DRIVER.toFile()).build();
    Browser browser = new Browser(new ChromeDriver(service, options(profile)));
    browser.resize(PHONE);
    browser.driver.get(url);
    return browser;
  }

  private static ChromeOptions options(Path profile) {
    ChromeOptions options = new ChromeOptions();
    options.setBinary(CHROMIUM.toFile());
    options.addArguments(
        "--headless",
        "--no-sandbox",
        "--disable-gpu",
        "--disable-quic",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
        "--lang=en",
        "--user-data-dir=" + profile);
    LoggingPreferences logs = new LoggingPreferences();
    logs.enable("performance", Level.ALL);
    options.setCapability("goog:loggingPrefs", logs);
    return options;
  }

  void resize(Dimension size) {
    driver.executeCdpCommand(
        "Emulation.setDeviceMetricsOverride",
        Map.of(
            "width",
            size.getWidth(),
            "height",
            size.getHeight(),
            "deviceScaleFactor",
            1,
            "mobile",
            false));
  }

  /** What stands there for a person to read; nothing where it is hidden. */
  String text(String id) {
    return driver.findElement(By.id(id)).getText();
  }

  void awaitText(String id, String part) {
    await()
        .atMost(Duration.ofSeconds(30))
        .pollInterval(Duration.ofMillis(20))
        .untilAsserted(() -> assertThat(text(id)).as(id).contains(part));
  }

  /** Types wherever the focus is. */
  void type(CharSequence keys) {
    new Actions(driver).sendKeys(keys).perform();
  }

  /** The id of what has the focus. */
  String focus() {
    return String.valueOf(driver.switchTo().activeElement().getDomProperty("id"));
  }

  WebElement element(String css) {
    return driver.findElement(By.cssSelector(css));
  }

  Object script(String script, Object... values) {
    Object answer = driver.executeScript(script, values);
    return answer == null ? "" : answer;
  }

  /** Pictures of the page as it is, on a phone and on a laptop. */
  void picture(String name) throws IOException {
    Files.createDirectories(PICTURES);
    for (Dimension size : List.of(LAPTOP, PHONE)) {
      resize(size);
      Files.write(
          PICTURES.resolve(name + "-" + size.getWidth() + ".png"),
          driver.getScreenshotAs(OutputType.BYTES));
    }
  }

  /** What axe-core finds that keeps people out, one line each: serious or worse. */
  List<String> barriers() throws IOException {
    assumeTrue(Files.exists(AXE), "skipped: axe-core is not installed (npm ci)");
    driver.executeScript(Files.readString(AXE));
    Object found =
        driver.executeAsyncScript(
            "const done = arguments[0]; axe.run().then(r => done(r.violations"
                + ".filter(v => v.impact === 'serious' || v.impact === 'critical')"
                + ".map(v => v.id + ': ' + v.nodes.map(n => n.target.join(' ')).join(', '))))");
    return ((List<?>) Objects.requireNonNull(found)).stream().map(String::valueOf).toList();
  }

  /** The addresses of everything that was asked for since the browser was opened. */
  List<String> asked() {
    for (LogEntry entry : driver.manage().logs().get("performance")) {
      Matcher request = ASKED.matcher(entry.getMessage());
      if (request.find()) {
        asked.add(request.group(1));
      }
    }
    return asked;
  }

  @Override
  public void close() {
    driver.quit();
  }
}

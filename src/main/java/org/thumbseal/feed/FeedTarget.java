package org.thumbseal.feed;

import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.regex.Pattern;
import org.thumbseal.seal.Login;
import org.thumbseal.seal.Sha256;
import org.thumbseal.seal.TlsTrust;

/**
 * Where documents are sent, and how one gets in there.
 *
 * @param address of the broker or the receiver
 * @param topic what every topic begins with; for a broker alone
 * @param login what to say to be let in
 * @param tls whose certificates are accepted
 * @param needsSubscriber whether a broker that says that nobody has subscribed counts as one that
 *     has not taken the document
 */
public record FeedTarget(
    FeedAddress address,
    String topic,
    Optional<Login> login,
    TlsTrust tls,
    boolean needsSubscriber) {
  /** What topics begin with where nothing else is said. */
  public static final String STANDARD_TOPIC = "thumbseal";

  private static final Pattern TOPIC = Pattern.compile("(?![$/])[^+#\\p{Cntrl}]*[^+#/\\p{Cntrl}]");
  private static final int LONGEST_TOPIC = 200;

  /**
   * A beginning of topics.
   *
   * @throws FeedException if it is none: it holds wildcards, or begins with {@code $} or a slash
   */
  public static String topic(String text) throws FeedException {
    if (text.length() > LONGEST_TOPIC || !TOPIC.matcher(text).matches()) {
      throw FeedException.mistake(
          "a topic begins with a name such as hospital/suction; without + or #, no $ or / first");
    }
    return text;
  }

  /** The address as people see it. */
  public String text() {
    return address.text();
  }

  /** By this the record of what was acknowledged is found again. */
  String key() {
    String whole = address.isBroker() ? address.text() + " " + topic : address.text();
    return Sha256.hex(whole.getBytes(StandardCharsets.UTF_8)).substring(0, 16);
  }
}

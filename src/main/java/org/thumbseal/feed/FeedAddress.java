package org.thumbseal.feed;

import java.net.URI;
import java.net.URISyntaxException;
import java.util.Locale;
import java.util.Optional;
import org.thumbseal.json.Printable;

/**
 * Where documents are sent.
 *
 * @param scheme {@code mqtts}, {@code mqtt} or {@code https}
 * @param host name or address; an IPv6 address without brackets
 * @param port TCP port
 * @param path of an HTTPS address, as it is written there, without a slash at its end; else empty
 */
public record FeedAddress(String scheme, String host, int port, String path) {
  private static final String MQTTS = "mqtts";
  private static final String MQTT = "mqtt";
  private static final String HTTPS = "https";

  /**
   * Reads an address.
   *
   * @throws FeedException if it is none that documents can be sent to: what is wrong, what to write
   */
  public static FeedAddress parse(String text) throws FeedException {
    URI uri = uri(text);
    String scheme = Optional.ofNullable(uri.getScheme()).orElse("").toLowerCase(Locale.ROOT);
    int standard = standardPort(scheme, text);
    String host = Optional.ofNullable(uri.getHost()).orElse("").replaceAll("^\\[|\\]$", "");
    if (uri.getRawUserInfo() != null) {
      throw FeedException.mistake("the address holds a name or a password; put them into a file");
    }
    if (host.isEmpty()) {
      throw FeedException.mistake("'" + shown(text) + "' names no host");
    }
    String path = Optional.ofNullable(uri.getRawPath()).orElse("").replaceAll("/+$", "");
    requireNoMore(uri, scheme, path);
    int port = uri.getPort() < 0 ? standard : uri.getPort();
    if (port < 1 || port > 65_535) {
      throw FeedException.mistake(port + " is no port; there are 1 to 65535");
    }
    return new FeedAddress(scheme, host, port, path);
  }

  private static URI uri(String text) throws FeedException {
    try {
      return new URI(text);
    } catch (URISyntaxException e) {
      throw FeedException.mistake("'" + shown(text) + "' is no address");
    }
  }

  private static int standardPort(String scheme, String text) throws FeedException {
    return switch (scheme) {
      case MQTTS -> 8883;
      case MQTT -> 1883;
      case HTTPS -> 443;
      default ->
          throw FeedException.mistake(
              "'" + shown(text) + "': write mqtts://HOST, mqtt://HOST or https://HOST/PATH");
    };
  }

  private static void requireNoMore(URI uri, String scheme, String path) throws FeedException {
    if (uri.getRawQuery() != null || uri.getRawFragment() != null) {
      throw FeedException.mistake("the address must not hold a ? or a #");
    }
    if (!scheme.equals(HTTPS) && !path.isEmpty()) {
      throw FeedException.mistake("a broker's address has no path; name the topic with --topic");
    }
  }

  /** Whoever typed a password by mistake does not want it in a log. */
  private static String shown(String text) {
    return Printable.line(text.replaceAll("//[^/@]*@", "//"));
  }

  /** Whether it is a broker. */
  public boolean isBroker() {
    return !scheme.equals(HTTPS);
  }

  /** Whether nobody on the way can read or change what is sent. */
  public boolean isEncrypted() {
    return !scheme.equals(MQTT);
  }

  /** Whether what is sent stays on this computer. */
  public boolean isLoopback() {
    return host.equals("localhost") || host.equals("::1") || host.matches("127(\\.[0-9]{1,3}){3}");
  }

  /** The address, with its port. */
  public String text() {
    String name = host.contains(":") ? "[" + host + "]" : host;
    return scheme + "://" + name + ":" + port + path;
  }
}

package org.thumbseal.page;

import com.sun.net.httpserver.Headers;
import com.sun.net.httpserver.HttpExchange;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.thumbseal.seal.AccessToken;

/**
 * Who may come in. A page of another site that makes this computer's browser ask here is told by
 * the Host header (a name that was turned to our address) or by the Origin header.
 */
final class Door {
  static final String COOKIE = "thumbseal";
  private static final String QUERY = "token=";

  /** Four hundred days is as long as browsers keep one (common practice). */
  private static final String ATTRIBUTES = "; Path=/; Max-Age=34560000; HttpOnly; SameSite=Strict";

  private static final Set<String> LOOPBACK = Set.of("127.0.0.1", "localhost", "[::1]");

  private final String name;
  private final Optional<AccessToken> token;

  /**
   * A door.
   *
   * @param name host as the user gave it
   * @param token what is asked for; absent where this computer alone can come
   */
  Door(String name, Optional<AccessToken> token) {
    this.name = name.toLowerCase(Locale.ROOT);
    this.token = token;
  }

  /** Refuses a request under a name that is not ours, or from a page that is not ours. */
  void check(HttpExchange exchange) throws Refusal {
    String host = host(exchange);
    Optional<String> origin = only(exchange.getRequestHeaders(), "Origin");
    boolean foreign = origin.filter(o -> !o.equals("http://" + host)).isPresent();
    boolean unsaid = origin.isEmpty() && exchange.getRequestMethod().equals("POST");
    if (foreign || unsaid) {
      throw Refusal.forbidden("only the page itself may ask this");
    }
  }

  private String host(HttpExchange exchange) throws Refusal {
    String host =
        only(exchange.getRequestHeaders(), "Host").map(h -> h.toLowerCase(Locale.ROOT)).orElse("");
    InetSocketAddress here = exchange.getLocalAddress();
    if (names(here.getAddress()).noneMatch(n -> host.equals(n + ":" + here.getPort()))) {
      throw Refusal.forbidden("this is not the name of the page; use the address watch has shown");
    }
    return host;
  }

  /** The address the request came to is one of this machine's own, whatever it is bound to. */
  private Stream<String> names(InetAddress here) {
    Stream<String> own = Stream.of(literal(here), name);
    return here.isLoopbackAddress() ? Stream.concat(own, LOOPBACK.stream()) : own;
  }

  /** As it stands in a URL: an IPv6 address in brackets and without its zone. */
  static String literal(InetAddress address) {
    String text = address.getHostAddress().replaceFirst("%.*", "");
    return text.contains(":") ? "[" + text + "]" : text;
  }

  private static Optional<String> only(Headers headers, String name) throws Refusal {
    List<String> values = headers.getOrDefault(name, List.of());
    if (values.size() > 1) {
      throw Refusal.badRequest("a header is there twice: " + name);
    }
    return values.stream().findFirst();
  }

  /** Whether the token is in a cookie, or none is asked for. */
  boolean isOpen(HttpExchange exchange) {
    return token.isEmpty() || cookies(exchange).anyMatch(token.get()::matches);
  }

  private static Stream<String> cookies(HttpExchange exchange) {
    return exchange.getRequestHeaders().getOrDefault("Cookie", List.of()).stream()
        .flatMap(line -> Stream.of(line.split(";", -1)))
        .map(String::strip)
        .filter(pair -> pair.startsWith(COOKIE + "="))
        .map(pair -> pair.substring(COOKIE.length() + 1));
  }

  /** Whether a link with a token in it was followed; where it is the token, a cookie is given. */
  boolean isLink(HttpExchange exchange) throws Refusal {
    String query = exchange.getRequestURI().getRawQuery();
    if (query == null || !query.startsWith(QUERY)) {
      return false;
    }
    String given = query.substring(QUERY.length());
    if (token.isPresent()) {
      if (!token.get().matches(given)) {
        throw Refusal.forbidden("this token is not, or no longer, the one; ask for the new link");
      }
      exchange.getResponseHeaders().set("Set-Cookie", COOKIE + "=" + given + ATTRIBUTES);
    }
    return true;
  }
}

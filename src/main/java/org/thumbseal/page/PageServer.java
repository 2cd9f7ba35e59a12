package org.thumbseal.page;

import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.BindException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.SynchronousQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import org.thumbseal.daemon.PortDesk;
import org.thumbseal.guided.Sealing;
import org.thumbseal.guided.Stations;
import org.thumbseal.link.HostClock;
import org.thumbseal.seal.AccessToken;

/**
 * Serves the page of a bench over HTTP. Bounded in everything: threads, time for a request, open
 * streams, size of what is sent; nothing here is waited for by the daemon.
 */
public final class PageServer implements AutoCloseable {
  /** Most requests that are read or answered at a time. */
  private static final int THREADS = 128;

  private static final long STACK = 128 * 1_024;

  static {
    // The server reads them once, when its classes are loaded.
    limit("sun.net.httpserver.maxReqTime", "5");
    limit("sun.net.httpserver.idleInterval", "30");
    limit("sun.net.httpserver.maxIdleConnections", "64");
    limit("sun.net.httpserver.maxReqHeaders", "64");
    limit("sun.net.httpserver.drainAmount", "65536");
    limit("jdk.httpserver.maxConnections", "1500");
    // Small events must not wait for the acknowledgement of the one before.
    limit("sun.net.httpserver.nodelay", "true");
  }

  private static void limit(String property, String value) {
    if (System.getProperty(property) == null) {
      System.setProperty(property, value);
    }
  }

  private final HttpServer server;
  private final ThreadPoolExecutor threads;
  private final Publisher publisher;
  private final AnswerTime time = new AnswerTime(AnswerTime.LONGEST);
  private final String url;

  /**
   * What is served.
   *
   * @param bench what the pages show
   * @param desks where people speak to the ports, by address
   * @param clock the clocks of the daemon
   * @param setting what else there is
   */
  public record Served(
      LiveBench bench, Map<String, PortDesk> desks, HostClock clock, Setting setting) {}

  /**
   * Where the work is done.
   *
   * @param results name of the folder of results, without the folders around it
   * @param sealing takes what is concluded on the page; from any thread
   * @param stations of a leak search
   */
  public record Setting(String results, Sealing sealing, Stations stations) {}

  private PageServer(HttpServer server, Publisher publisher, String url) {
    this.server = server;
    this.publisher = publisher;
    this.url = url;
    this.threads =
        new ThreadPoolExecutor(
            2, THREADS, 10, TimeUnit.SECONDS, new SynchronousQueue<>(), PageServer::thread);
  }

  private static Thread thread(Runnable work) {
    Thread thread = new Thread(null, work, "page request", STACK);
    thread.setDaemon(true);
    return thread;
  }

  /**
   * Begins to serve.
   *
   * @param address where
   * @param token asked for; must be there where others than this computer can come
   * @throws IOException if nothing can be served there; the message says why
   */
  public static PageServer start(PageAddress address, Served served, Optional<AccessToken> token)
      throws IOException {
    if (token.isEmpty() && !isLoopback(address)) {
      throw new IllegalArgumentException("a page for others needs a token");
    }
    HttpServer server = bind(address);
    Publisher publisher = new Publisher(served.bench(), served.clock(), served.setting().results());
    PageSearches searches = new PageSearches(served);
    served.bench().tellSearches(searches);
    Door door = new Door(bracketed(address.host()), token);
    Deeds deeds = new Deeds(served.desks(), searches);
    PageServer page = new PageServer(server, publisher, url(address, server));
    server.createContext(
        "/", new Routes(door, deeds, new EventStreams(publisher, page.time), page.time));
    server.setExecutor(page.threads);
    server.start();
    return page;
  }

  /** Whether only this computer can come to an address. */
  public static boolean isLoopback(PageAddress address) throws IOException {
    return address.socket().getAddress().isLoopbackAddress();
  }

  private static HttpServer bind(PageAddress address) throws IOException {
    try {
      return HttpServer.create(address.socket(), 0);
    } catch (BindException e) {
      if (!address.elsewhere()) {
        throw e;
      }
      InetAddress host = address.socket().getAddress();
      return HttpServer.create(new InetSocketAddress(host, 0), 0);
    }
  }

  private static String url(PageAddress address, HttpServer server) throws IOException {
    InetAddress host = address.socket().getAddress();
    String name = host.isAnyLocalAddress() ? Neighbours.own(host) : bracketed(address.host());
    return "http://" + name + ":" + server.getAddress().getPort() + "/";
  }

  private static String bracketed(String host) {
    return host.contains(":") ? "[" + host + "]" : host;
  }

  /** Where the page is, for a browser. */
  public String url() {
    return url;
  }

  /** The port it is served on. */
  public int port() {
    return server.getAddress().getPort();
  }

  /** Ends all streams and lets go of the port. */
  @Override
  public void close() {
    publisher.close();
    server.stop(0);
    threads.shutdownNow();
    time.close();
  }
}

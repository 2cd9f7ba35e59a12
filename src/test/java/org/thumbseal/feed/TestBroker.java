package org.thumbseal.feed;

import java.io.IOException;
import java.nio.file.Path;

/** A broker with a subscriber, for tests of commands. */
public final class TestBroker implements AutoCloseable {
  private final Broker broker;
  private final Collector collector;

  private TestBroker(Broker broker, Collector collector) {
    this.broker = broker;
    this.collector = collector;
  }

  /** Starts both; skips the test where they are not installed. */
  public static TestBroker in(Path folder) throws IOException {
    Broker broker = Broker.in(folder, "allow_anonymous true");
    return new TestBroker(broker, Collector.at(broker, folder.resolve("collector")));
  }

  /** A port of loopback that nobody has now. */
  public static int freePort() throws IOException {
    return Broker.freePort();
  }

  /** Where to send. */
  public String address() {
    return "mqtt://127.0.0.1:" + broker.port();
  }

  /** The broker ends, and keeps what it has taken. */
  public void stop() throws InterruptedException {
    broker.stop();
  }

  /** It begins again. */
  public void start() throws IOException {
    broker.start();
  }

  /** Waits until so many different documents have arrived. */
  public void await(int documents) {
    collector.await(documents);
  }

  /** How many have arrived, the same twice counted twice. */
  public int arrivals() throws IOException {
    return collector.ids().size();
  }

  @Override
  public void close() {
    collector.close();
    broker.close();
  }
}

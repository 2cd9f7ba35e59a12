package org.thumbseal.feed;

import java.io.BufferedInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.time.Duration;
import java.util.Optional;
import java.util.OptionalLong;
import javax.net.ssl.SSLContext;
import javax.net.ssl.SSLParameters;
import javax.net.ssl.SSLSocket;
import org.thumbseal.link.HostClock;

/**
 * A connection to a broker on which documents are published with QoS 1, one at a time. Every step
 * has a time limit.
 */
final class MqttConnection implements AutoCloseable {
  static final Duration PATIENCE = Duration.ofSeconds(20);

  /** Longer than any pause between two documents of one round. */
  private static final int KEEP_ALIVE_SECONDS = 120;

  private static final int LAST_PACKET_ID = 0xffff;

  private final Socket socket;
  private final Watchdog watchdog;
  private final OutputStream out;
  private final InputStream in;
  private OptionalLong largest = OptionalLong.empty();
  private int packetId;

  private MqttConnection(Socket socket, Watchdog watchdog) throws IOException {
    this.socket = socket;
    this.watchdog = watchdog;
    this.out = socket.getOutputStream();
    this.in = new BufferedInputStream(socket.getInputStream());
  }

  /** A broker that answers, and does not let us in. */
  static final class NotLetIn extends IOException {
    private static final long serialVersionUID = 1L;

    NotLetIn(String message) {
      super(message);
    }
  }

  /**
   * Connects and is let in.
   *
   * @param client name that no other client of this broker has
   * @throws NotLetIn if the broker refuses
   * @throws IOException if it cannot be reached, or is not who it has to be
   */
  static MqttConnection open(FeedTarget target, String client, HostClock clock) throws IOException {
    Socket plain = new Socket();
    Watchdog watchdog = Watchdog.over(plain, PATIENCE, clock);
    try {
      watchdog.begin();
      FeedAddress address = target.address();
      int millis = (int) PATIENCE.toMillis();
      plain.connect(new InetSocketAddress(address.host(), address.port()), millis);
      plain.setSoTimeout(millis);
      plain.setTcpNoDelay(true);
      Socket socket = address.isEncrypted() ? encrypted(plain, address, target.tls()) : plain;
      MqttConnection connection = new MqttConnection(socket, watchdog);
      connection.enter(target, client);
      watchdog.end();
      return connection;
    } catch (IOException | RuntimeException e) {
      watchdog.close();
      plain.close();
      throw e;
    }
  }

  private static Socket encrypted(Socket plain, FeedAddress address, SSLContext tls)
      throws IOException {
    SSLSocket socket =
        (SSLSocket)
            tls.getSocketFactory().createSocket(plain, address.host(), address.port(), true);
    SSLParameters parameters = socket.getSSLParameters();
    // The certificate must be for this very name (RFC 2818), not only by a known authority.
    parameters.setEndpointIdentificationAlgorithm("HTTPS");
    socket.setSSLParameters(parameters);
    socket.startHandshake();
    return socket;
  }

  private void enter(FeedTarget target, String client) throws IOException {
    send(MqttPackets.connect(client, target.login(), KEEP_ALIVE_SECONDS));
    MqttReply reply = MqttReply.read(in);
    if (reply.type() != MqttPackets.CONNACK) {
      throw new IOException("the answer is not MQTT 5");
    }
    // A broker of an older version answers with a number of its own, below 128.
    if (reply.reason() != 0) {
      throw new NotLetIn("the broker " + reply.text());
    }
    if (reply.acknowledgesNothing()) {
      throw new NotLetIn("the broker " + MqttReason.text(0x9b));
    }
    largest = reply.largestPacket();
  }

  /**
   * Publishes a document and waits until it is acknowledged.
   *
   * @return the acknowledgement, or the end that the broker puts to the connection; empty where the
   *     document is larger than the broker takes, and was not sent
   * @throws IOException if the connection is lost: whether it arrived is not known
   */
  Optional<MqttReply> publish(String topic, Parcel parcel) throws IOException {
    packetId = packetId % LAST_PACKET_ID + 1;
    byte[] packet = MqttPackets.publish(packetId, topic, parcel);
    if (largest.isPresent() && packet.length > largest.getAsLong()) {
      return Optional.empty();
    }
    watchdog.begin();
    send(packet);
    MqttReply reply = MqttReply.read(in);
    while (!isAnswer(reply)) {
      reply = MqttReply.read(in);
    }
    watchdog.end();
    return Optional.of(reply);
  }

  private boolean isAnswer(MqttReply reply) {
    return reply.type() == MqttPackets.DISCONNECT
        || (reply.type() == MqttPackets.PUBACK && reply.packetId() == packetId);
  }

  private void send(byte[] packet) throws IOException {
    out.write(packet);
    out.flush();
  }

  /** Takes leave, and does not wait for an answer. */
  @Override
  public void close() {
    watchdog.begin();
    try (socket) {
      send(MqttPackets.disconnect());
    } catch (IOException e) {
      // The broker notices anyway.
    } finally {
      watchdog.close();
    }
  }
}

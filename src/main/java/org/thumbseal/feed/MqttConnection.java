package org.thumbseal.feed;

import com.hivemq.client.mqtt.MqttClientExecutorConfig;
import com.hivemq.client.mqtt.MqttClientSslConfig;
import com.hivemq.client.mqtt.MqttClientTransportConfig;
import com.hivemq.client.mqtt.datatypes.MqttQos;
import com.hivemq.client.mqtt.mqtt5.Mqtt5AsyncClient;
import com.hivemq.client.mqtt.mqtt5.Mqtt5Client;
import com.hivemq.client.mqtt.mqtt5.message.auth.Mqtt5SimpleAuth;
import com.hivemq.client.mqtt.mqtt5.message.connect.Mqtt5Connect;
import com.hivemq.client.mqtt.mqtt5.message.connect.connack.Mqtt5ConnAck;
import com.hivemq.client.mqtt.mqtt5.message.publish.Mqtt5PayloadFormatIndicator;
import com.hivemq.client.mqtt.mqtt5.message.publish.Mqtt5Publish;
import com.hivemq.client.mqtt.mqtt5.message.publish.Mqtt5PublishResult.Mqtt5Qos1Result;
import com.hivemq.client.mqtt.mqtt5.message.publish.puback.Mqtt5PubAck;
import io.reactivex.schedulers.Schedulers;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.thumbseal.seal.Login;

/**
 * A connection to a broker on which documents are published with QoS 1, one at a time; for each a
 * session that begins anew and ends with it. Every step has a time limit. It never connects again
 * by itself.
 */
final class MqttConnection implements AutoCloseable {
  static final Duration PATIENCE = Duration.ofSeconds(20);

  /** Longer than any pause between two documents of one round. */
  private static final int KEEP_ALIVE_SECONDS = 120;

  /** For taking leave: nothing hangs on it. */
  private static final Duration PATIENCE_AT_THE_END = Duration.ofSeconds(2);

  /** So long after us the client notices as well, and lets go of its connection. */
  private static final Duration LATER = Duration.ofSeconds(2);

  private final Mqtt5AsyncClient client;
  private final Duration patience;

  private MqttConnection(Mqtt5AsyncClient client, Duration patience) {
    this.client = client;
    this.patience = patience;
  }

  /**
   * Connects and is let in.
   *
   * @param client name that no other client of this broker has
   * @param patience for each step
   * @throws MqttTrouble if it cannot be reached, is not who it has to be, or refuses
   */
  static MqttConnection open(FeedTarget target, String client, Duration patience)
      throws MqttTrouble, InterruptedException {
    Mqtt5AsyncClient made =
        Mqtt5Client.builder()
            .identifier(client)
            .transportConfig(transport(target, patience))
            .executorConfig(threads())
            .buildAsync();
    MqttConnection connection = new MqttConnection(made, patience);
    try {
      connection.enter(target);
      return connection;
    } catch (MqttTrouble | InterruptedException e) {
      connection.close();
      throw e;
    }
  }

  private static MqttClientTransportConfig transport(FeedTarget target, Duration patience) {
    FeedAddress address = target.address();
    var transport =
        MqttClientTransportConfig.builder()
            .serverAddress(InetSocketAddress.createUnresolved(address.host(), address.port()))
            .socketConnectTimeout(patience.toMillis(), TimeUnit.MILLISECONDS)
            .mqttConnectTimeout(patience.plus(LATER).toMillis(), TimeUnit.MILLISECONDS);
    return address.isEncrypted()
        ? transport.sslConfig(encryption(target, patience)).build()
        : transport.build();
  }

  /**
   * Without a verifier of names of our own the client has the JDK's check that the certificate is
   * for this very name (RFC 2818).
   */
  private static MqttClientSslConfig encryption(FeedTarget target, Duration patience) {
    return MqttClientSslConfig.builder()
        .trustManagerFactory(target.tls().managers().orElse(null))
        .handshakeTimeout(patience.toMillis(), TimeUnit.MILLISECONDS)
        .build();
  }

  /** One that ends with the connection and holds up the end of no program; no others. */
  private static MqttClientExecutorConfig threads() {
    return MqttClientExecutorConfig.builder()
        .nettyThreads(1)
        .nettyExecutor(
            task -> {
              Thread thread = new Thread(task, "feed-mqtt");
              thread.setDaemon(true);
              thread.start();
            })
        .applicationScheduler(Schedulers.trampoline())
        .build();
  }

  private void enter(FeedTarget target) throws MqttTrouble, InterruptedException {
    var connect = Mqtt5Connect.builder().cleanStart(true).keepAlive(KEEP_ALIVE_SECONDS);
    // The builder changes in place and gives itself back.
    var ready = target.login().map(login -> connect.simpleAuth(auth(login))).orElse(connect);
    Mqtt5ConnAck welcome = await(client.connect(ready.build()));
    if (welcome.getRestrictions().getMaximumQos() == MqttQos.AT_MOST_ONCE) {
      throw MqttTrouble.ofBroker(MqttReason.QOS_NOT_SUPPORTED, "");
    }
  }

  private static Mqtt5SimpleAuth auth(Login login) {
    byte[] secret = login.secret().getBytes(StandardCharsets.UTF_8);
    return login
        .user()
        .map(user -> Mqtt5SimpleAuth.builder().username(user).password(secret).build())
        .orElseGet(() -> Mqtt5SimpleAuth.builder().password(secret).build());
  }

  /**
   * Publishes a document and waits until it is acknowledged; not retained, and what it is stands in
   * user properties.
   *
   * @return the reason of the acknowledgement, below 128
   * @throws MqttTrouble if it is not taken, or the connection is lost: whether it arrived is not
   *     known
   */
  int publish(String topic, Parcel parcel) throws MqttTrouble, InterruptedException {
    Parcel.Label label = parcel.label();
    Mqtt5Publish message =
        Mqtt5Publish.builder()
            .topic(topic)
            .qos(MqttQos.AT_LEAST_ONCE)
            .payload(parcel.bytes())
            .payloadFormatIndicator(Mqtt5PayloadFormatIndicator.UTF_8)
            .contentType("application/json")
            .userProperties()
            .add("id", label.id())
            .add("kind", label.kind())
            .add("schema", label.schema())
            .applyUserProperties()
            .build();
    return await(client.publish(message)) instanceof Mqtt5Qos1Result result
        ? reason(result.getPubAck())
        : 0;
  }

  private static int reason(Mqtt5PubAck answer) {
    return answer.getReasonCode().getCode();
  }

  private <T> T await(CompletableFuture<T> step) throws MqttTrouble, InterruptedException {
    try {
      return step.get(patience.toMillis(), TimeUnit.MILLISECONDS);
    } catch (ExecutionException e) {
      throw MqttTrouble.of(e.getCause());
    } catch (TimeoutException e) {
      throw MqttTrouble.noAnswer();
    } finally {
      step.cancel(true);
    }
  }

  /** Whether nobody has ended it yet. */
  boolean isOpen() {
    return client.getState().isConnected();
  }

  /** Takes leave; what the broker makes of it does not matter. */
  @Override
  public void close() {
    if (!isOpen()) {
      return;
    }
    try {
      client.disconnect().get(PATIENCE_AT_THE_END.toMillis(), TimeUnit.MILLISECONDS);
    } catch (ExecutionException | TimeoutException e) {
      // The broker notices anyway; the client lets go of the connection by itself.
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}

package org.thumbseal.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.time.Duration;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.Test;

/** What a link promises that can be silent. */
abstract class LiveLinkContract extends LinkContract {

  @Test
  void silenceIsZeroAndNotAnEnd() throws Exception {
    try (FarEnd far = farEnd();
        LinkConnection connection = far.link().open()) {
      assertThat(connection.read(new byte[16])).isZero();
      far.send(new byte[] {'x'});
      assertThat(read(connection, 1, 16)).containsExactly('x');
    }
  }

  @Test
  void aWaitingReaderIsFreeSoonAfterAnotherThreadCloses() throws Exception {
    try (FarEnd far = farEnd()) {
      LinkConnection connection = far.link().open();
      CompletableFuture<byte[]> reader =
          CompletableFuture.supplyAsync(() -> read(connection, 1, 16));
      connection.close();
      await().atMost(Duration.ofSeconds(10)).until(reader::isDone);
      assertThat(reader.get()).isEmpty();
    }
  }
}

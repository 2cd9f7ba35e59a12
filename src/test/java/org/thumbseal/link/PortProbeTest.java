package org.thumbseal.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.thumbseal.wire.Crc16;
import org.thumbseal.wire.WireRecord.Identity;
import org.thumbseal.wire.WireRecord.Reference;

@Timeout(60)
@EnabledOnOs(value = OS.LINUX, disabledReason = "skipped: pseudo-terminals of socat are for Linux")
class PortProbeTest {
  @TempDir Path folder;

  @Test
  void aSensorOnARealPortIsHeardAndThePortLetGo() throws Exception {
    try (PtyPair pair = PtyPair.in(folder)) {
      Link link =
          new SerialLink(
              new LinkAddress.Serial(pair.port(), pair.port(), SerialSettings.STANDARD), List::of);
      PortProbe probe = new PortProbe(HostClock.system(), Duration.ofSeconds(20));
      CompletableFuture<PortAnswer> answer =
          CompletableFuture.supplyAsync(() -> probe.listen(link));
      String half = "0,100*1234\n" + Crc16.seal("I,1,S-7,1.4,A,0,110000,12.5") + "\n";
      await()
          .atMost(Duration.ofSeconds(30))
          .until(
              () -> {
                pair.send(half.getBytes(StandardCharsets.US_ASCII));
                return answer.isDone();
              });
      assertThat(answer.get())
          .isEqualTo(
              new PortAnswer.Sensor(
                  new Identity("S-7", "1.4", Reference.ABSOLUTE, 0, 110_000, 12.5)));
      link.open().close();
    }
  }
}

package org.thumbseal.page;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.ByteBuffer;
import java.nio.channels.ServerSocketChannel;
import java.nio.channels.SocketChannel;
import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Who asks and does not read would hold the thread that answers. */
@Timeout(30)
class AnswerTimeTest {
  private static void writeForEver(SocketChannel to) throws IOException {
    while (to.isOpen()) {
      to.write(ByteBuffer.allocate(1 << 16));
    }
  }

  @Test
  void anAnswerThatNobodyReadsIsGivenUp() throws Exception {
    var here = new InetSocketAddress(InetAddress.getLoopbackAddress(), 0);
    try (AnswerTime time = new AnswerTime(Duration.ofMillis(100));
        ServerSocketChannel door = ServerSocketChannel.open().bind(here);
        SocketChannel asks = SocketChannel.open(door.getLocalAddress());
        SocketChannel answers = door.accept()) {
      assertThatThrownBy(() -> time.bound(() -> writeForEver(answers)))
          .isInstanceOf(IOException.class);
      assertThat(answers.isOpen()).isFalse();
      assertThat(asks.isOpen()).isTrue();
      assertThat(Thread.currentThread().isInterrupted()).as("what comes next").isFalse();
    }
  }

  @Test
  void anAnswerThatIsReadIsNot() throws Exception {
    try (AnswerTime time = new AnswerTime(Duration.ofSeconds(20))) {
      int[] written = {0};
      time.bound(() -> written[0]++);

      assertThat(written).containsExactly(1);
    }
  }
}

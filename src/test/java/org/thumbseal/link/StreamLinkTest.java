package org.thumbseal.link;

import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.PipedInputStream;
import java.io.PipedOutputStream;
import org.junit.jupiter.api.Test;

class StreamLinkTest extends LiveLinkContract {

  private static final class Pipe implements FarEnd {
    private final PipedOutputStream out = new PipedOutputStream();
    private final Link link;

    Pipe() throws IOException {
      link = new StreamLink("-", new PipedInputStream(out, 16_384));
    }

    @Override
    public Link link() {
      return link;
    }

    @Override
    public void send(byte[] bytes) throws IOException {
      out.write(bytes);
    }

    @Override
    public void end() throws IOException {
      out.close();
    }
  }

  @Override
  FarEnd farEnd() throws IOException {
    return new Pipe();
  }

  @Test
  void itCanBeReadOnlyOnce() throws Exception {
    try (FarEnd far = farEnd()) {
      far.link().open().close();
      assertThatThrownBy(() -> far.link().open())
          .isInstanceOf(LinkUnavailable.class)
          .hasMessage("standard input can be read only once");
    }
  }
}

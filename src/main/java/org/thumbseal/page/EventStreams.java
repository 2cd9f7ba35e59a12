package org.thumbseal.page;

import com.sun.net.httpserver.HttpExchange;
import java.io.IOException;
import java.io.OutputStream;
import java.util.concurrent.atomic.AtomicInteger;

/**
 * The open event streams: each on a thread of its own, for each may be as slow as its network. A
 * bounded number of them, so that nobody takes all the memory.
 */
final class EventStreams {
  /** A bench has a few screens; the rest is room for pages whose end nobody has noticed yet. */
  static final int MOST = 24;

  private static final int STACK = 128 * 1_024;

  private final Publisher publisher;
  private final AnswerTime time;
  private final AtomicInteger open = new AtomicInteger();

  EventStreams(Publisher publisher, AnswerTime time) {
    this.publisher = publisher;
    this.time = time;
  }

  /** Answers with a stream of events, and returns at once. */
  void open(HttpExchange exchange) throws Refusal {
    if (open.incrementAndGet() > MOST) {
      open.decrementAndGet();
      throw new Refusal(503, "too-many-pages", "too many pages are open; close one");
    }
    Thread thread = new Thread(null, () -> run(exchange), "page stream", STACK);
    thread.setDaemon(true);
    thread.start();
  }

  private void run(HttpExchange exchange) {
    Mailbox mailbox = new Mailbox();
    Thread here = Thread.currentThread();
    try (exchange) {
      exchange.getResponseHeaders().set("Content-Type", "text/event-stream; charset=utf-8");
      // Behind answers that nobody reads even the headers may have to wait.
      time.bound(() -> exchange.sendResponseHeaders(200, 0));
      // Interrupting a thread in a write to a socket closes the socket.
      publisher.join(mailbox, here::interrupt);
      pass(mailbox, exchange.getResponseBody());
    } catch (IOException e) {
      // The page is gone, or too slow and given up.
    } catch (InterruptedException e) {
      here.interrupt();
    } finally {
      publisher.leave(mailbox);
      open.decrementAndGet();
    }
  }

  private static void pass(Mailbox mailbox, OutputStream out)
      throws IOException, InterruptedException {
    byte[] event = mailbox.take();
    while (event.length > 0) {
      out.write(event);
      if (!mailbox.hasMore()) {
        out.flush();
      }
      event = mailbox.take();
    }
  }
}

package org.thumbseal.cli;

import java.io.ByteArrayOutputStream;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/** One run of the program as a function: what it answered, and what else it said. */
record CommandRun(int code, String out, String err) {

  /** Runs it with arguments of any kind, and nothing on standard input. */
  static CommandRun of(Object... args) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    ByteArrayOutputStream err = new ByteArrayOutputStream();
    String[] texts = Arrays.stream(args).map(Object::toString).toArray(String[]::new);
    int code = Main.run(texts, new Streams(InputStream.nullInputStream(), out, err));
    return new CommandRun(
        code, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
  }
}

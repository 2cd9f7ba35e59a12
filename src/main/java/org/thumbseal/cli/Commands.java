package org.thumbseal.cli;

import java.lang.reflect.Constructor;
import java.util.Arrays;
import picocli.CommandLine;
import picocli.CommandLine.IFactory;

/** Makes the commands; those that read or write bytes get the streams of this run. */
final class Commands implements IFactory {
  private final Streams streams;

  Commands(Streams streams) {
    this.streams = streams;
  }

  @Override
  public <K> K create(Class<K> type) throws Exception {
    boolean takesStreams =
        Arrays.stream(type.getDeclaredConstructors())
            .anyMatch(c -> Arrays.equals(c.getParameterTypes(), new Class<?>[] {Streams.class}));
    if (!takesStreams) {
      return CommandLine.defaultFactory().create(type);
    }
    Constructor<K> constructor = type.getDeclaredConstructor(Streams.class);
    return constructor.newInstance(streams);
  }
}

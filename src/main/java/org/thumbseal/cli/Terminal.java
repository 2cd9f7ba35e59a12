package org.thumbseal.cli;

import java.io.Console;
import java.lang.reflect.InvocationTargetException;
import java.util.Optional;

/** A person at a terminal, to be asked a question. */
interface Terminal {
  /** What is typed, in view; empty when nothing more will be. */
  Optional<String> line(String question);

  /** What is typed without being shown; empty when nothing more will be. */
  Optional<char[]> secret(String question);

  /** The one this process was started on; empty when input or output go elsewhere. */
  static Optional<Terminal> system() {
    return Optional.ofNullable(System.console()).filter(Terminal::isOne).map(Terminal::of);
  }

  private static Terminal of(Console console) {
    return new Terminal() {
      @Override
      public Optional<String> line(String question) {
        return Optional.ofNullable(console.readLine("%s", question));
      }

      @Override
      public Optional<char[]> secret(String question) {
        return Optional.ofNullable(console.readPassword("%s", question));
      }
    };
  }

  /** From Java 22 on there is a console even where there is no terminal; it can be asked. */
  private static boolean isOne(Console console) {
    try {
      return (Boolean) Console.class.getMethod("isTerminal").invoke(console);
    } catch (NoSuchMethodException e) {
      return true;
    } catch (IllegalAccessException | InvocationTargetException e) {
      return false;
    }
  }
}

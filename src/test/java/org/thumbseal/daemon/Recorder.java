package org.thumbseal.daemon;

import java.time.Instant;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;

/** Writes down what a handler is told, one text a call. */
class Recorder implements SessionHandler {
  final List<String> told = new CopyOnWriteArrayList<>();
  final List<String> quiet = new CopyOnWriteArrayList<>();

  @Override
  public void opened(Instant wallClock, String source) {
    told.add("opened " + wallClock + " " + source);
  }

  @Override
  public void line(long hostMicros, String line) {
    told.add(hostMicros + " " + line);
  }

  @Override
  public void quiet(long hostMicros) {
    quiet.add("quiet " + hostMicros);
  }

  @Override
  public void lost(long hostMicros, long lines) {
    told.add("lost " + lines);
  }

  @Override
  public void closed(long hostMicros, String why) {
    told.add("closed " + hostMicros + " " + why);
  }

  /** Those calls that begin like this. */
  List<String> told(String beginning) {
    return told.stream().filter(text -> text.startsWith(beginning)).toList();
  }
}

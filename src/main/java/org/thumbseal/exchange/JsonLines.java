package org.thumbseal.exchange;

import java.io.IOException;
import java.io.Writer;
import java.math.BigDecimal;
import org.thumbseal.json.Json;
import org.thumbseal.json.Printable;
import tools.jackson.databind.node.ObjectNode;

/** An object of one level for each result, one a line; what a result does not have is absent. */
public final class JsonLines implements ResultTable {
  private final Layout layout;
  private final Writer out;

  /** Nothing is written yet. */
  public JsonLines(Layout layout, Writer out) {
    this.layout = layout;
    this.out = out;
  }

  /** A result as an object of one level. */
  static ObjectNode object(Layout layout, FlatResult flat) {
    ObjectNode object = Json.object();
    for (Field field : layout.fields()) {
      field.text(flat).ifPresent(text -> put(object, field, text));
    }
    return object;
  }

  private static void put(ObjectNode object, Field field, String text) {
    switch (field.kind()) {
      case QUANTITY, COUNT -> object.put(field.heading(), new BigDecimal(text));
      case FLAG -> object.put(field.heading(), Boolean.parseBoolean(text));
      default -> object.put(field.heading(), text);
    }
  }

  @Override
  public void result(SealedResult sealed, FlatResult flat) throws IOException {
    String line = Json.mapper().writeValueAsString(object(layout, flat));
    out.write(Printable.json(line));
    out.write('\n');
  }

  @Override
  public void end() throws IOException {
    out.flush();
  }
}

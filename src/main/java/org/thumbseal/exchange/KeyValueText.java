package org.thumbseal.exchange;

import java.io.IOException;
import java.io.Writer;
import org.thumbseal.json.Printable;

/** {@code key=value}, a line for each column that a result has; an empty line between results. */
public final class KeyValueText implements ResultTable {
  private final Writer out;
  private boolean begun;

  /** Nothing is written yet. */
  public KeyValueText(Writer out) {
    this.out = out;
  }

  @Override
  public void result(SealedResult sealed, FlatResult flat) throws IOException {
    if (begun) {
      out.write('\n');
    }
    begun = true;
    for (Column column : flat.cells().keySet()) {
      out.write(column.key() + "=" + Printable.whole(flat.cell(column).orElse("")) + "\n");
    }
  }

  @Override
  public void end() throws IOException {
    out.flush();
  }
}

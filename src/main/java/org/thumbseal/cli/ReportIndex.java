package org.thumbseal.cli;

import java.nio.file.Path;
import java.util.Optional;
import org.thumbseal.report.IndexPage;
import org.thumbseal.report.Report;

/** The index of a folder of results; of its pages, one is in memory at a time. */
final class ReportIndex {
  private final ReportFolder folder;
  private final boolean written;
  private IndexPage page;

  /**
   * An index.
   *
   * @param of the folder that it shows
   * @param written false: it only counts
   */
  ReportIndex(Path of, ReportFolder folder, boolean written) {
    this.folder = folder;
    this.written = written;
    page = new IndexPage(new IndexPage.Part(of.toAbsolutePath().normalize().getFileName() + "", 1));
  }

  void add(Report report, Optional<String> file) {
    if (page.isFull()) {
      write(true);
      page = new IndexPage(page.part().next());
    }
    page.add(report, file);
  }

  boolean isEmpty() {
    return page.isEmpty();
  }

  /** Writes the last page, and removes those beyond of an older, longer index; gives the first. */
  Optional<Path> finish() {
    Optional<Path> written = write(false);
    if (written.isPresent()) {
      folder.removeOlder(page.part()::isBeyond, page.html(false));
    }
    return written.map(last -> last.resolveSibling("index.html"));
  }

  private Optional<Path> write(boolean more) {
    return written
        ? Optional.of(folder.write(page.part().file(), page.html(more)))
        : Optional.empty();
  }
}

package org.thumbseal.guided;

import org.thumbseal.archive.ArchiveException;
import org.thumbseal.archive.StoredResult;
import tools.jackson.databind.node.ObjectNode;

/** Where a document that was made from no capture is sealed and stored. */
@FunctionalInterface
public interface Sealing {
  /**
   * Seals and stores it; one that is there already is given back.
   *
   * @throws ArchiveException if it cannot be written; it may be tried again
   */
  StoredResult store(ObjectNode document) throws ArchiveException;
}

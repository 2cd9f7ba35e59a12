package org.thumbseal.archive;

import java.nio.file.Path;
import tools.jackson.databind.node.ObjectNode;

/**
 * A result that is safely on the disk.
 *
 * @param document file of the sealed document
 * @param sealed the document
 * @param added false when a result with the same id was there before and has been left as it was
 */
public record StoredResult(Path document, ObjectNode sealed, boolean added) {}

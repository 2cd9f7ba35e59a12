package org.thumbseal.archive;

import java.nio.file.Path;

/**
 * How much the check of a result directory has seen.
 *
 * @param directory the one that holds {@code head.json}
 * @param documents files taken for documents
 * @param captures captures that are the ones that were sealed
 * @param chains keys that sealed here
 */
public record DirectorySummary(Path directory, long documents, long captures, int chains) {}

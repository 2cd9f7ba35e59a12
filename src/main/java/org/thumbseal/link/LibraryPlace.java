package org.thumbseal.link;

import java.nio.file.Path;

/**
 * Where the serial library is to look for its native part, and one of the files there that it may
 * load.
 */
record LibraryPlace(Path folder, Path file) {}

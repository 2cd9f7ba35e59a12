package org.thumbseal.cli;

import java.io.InputStream;
import java.io.OutputStream;

/**
 * Where a command reads and writes.
 *
 * @param in standard input
 * @param out the answer alone
 * @param err what else there is to say
 */
record Streams(InputStream in, OutputStream out, OutputStream err) {}

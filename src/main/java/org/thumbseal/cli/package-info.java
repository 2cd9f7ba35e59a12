/** The command line: a function from arguments and streams to an exit code. */
@NullMarked
package org.thumbseal.cli;

import org.jspecify.annotations.NullMarked;

/** Where bytes come from: serial port, network, simulator, file, standard input. */
@NullMarked
package org.thumbseal.link;

import org.jspecify.annotations.NullMarked;

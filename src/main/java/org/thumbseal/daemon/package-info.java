/** One supervisor per port: link, pipeline, results, reconnection, shutdown. */
@NullMarked
package org.thumbseal.daemon;

import org.jspecify.annotations.NullMarked;

/** Finding the phases of an occlusion test in a stream of samples. */
@NullMarked
package org.thumbseal.phase;

import org.jspecify.annotations.NullMarked;

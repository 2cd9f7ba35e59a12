/** Least-squares models with covariance and diagnostics; the only user of Hipparchus. */
@NullMarked
package org.thumbseal.fit;

import org.jspecify.annotations.NullMarked;

@NullMarked
package org.thumbseal.finding;

import org.jspecify.annotations.NullMarked;

/** What a person says at the bench about a pump and a test: which pump, what was looked at, go. */
@NullMarked
package org.thumbseal.visit;

import org.jspecify.annotations.NullMarked;

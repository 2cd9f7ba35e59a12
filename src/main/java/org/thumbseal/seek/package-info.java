/**
 * Finds the leak along the suction path by occlusion tests at successive stations: where to block
 * next, what each test tells, how much each section lets in, and what was concluded. Pure.
 */
@NullMarked
package org.thumbseal.seek;

import org.jspecify.annotations.NullMarked;

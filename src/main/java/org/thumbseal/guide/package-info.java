/**
 * The trouble guide: what to look at when a pump does not start, or does not suck, for what no
 * curve can show. Questions, answers and outcomes are a table; nothing here asks or prints. Common
 * practice, no published source. Pure.
 */
@NullMarked
package org.thumbseal.guide;

import org.jspecify.annotations.NullMarked;

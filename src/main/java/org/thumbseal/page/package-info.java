/** The live page of a bench: what happens at the ports, served to a browser, and back. */
@NullMarked
package org.thumbseal.page;

import org.jspecify.annotations.NullMarked;

/** The one JSON mapper, the gate for untrusted documents, the schemas. */
@NullMarked
package org.thumbseal.json;

import org.jspecify.annotations.NullMarked;

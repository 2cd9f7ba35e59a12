/**
 * The one JSON mapper, the gate for untrusted documents, results as trees, schemas, RFC 8785 form.
 */
@NullMarked
package org.thumbseal.json;

import org.jspecify.annotations.NullMarked;

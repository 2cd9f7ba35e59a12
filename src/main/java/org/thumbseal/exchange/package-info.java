/** Results for other programs: flat, in their headings, or as FHIR resources. */
@NullMarked
package org.thumbseal.exchange;

import org.jspecify.annotations.NullMarked;

/** Keys, signature, ledger, verification. */
@NullMarked
package org.thumbseal.seal;

import org.jspecify.annotations.NullMarked;

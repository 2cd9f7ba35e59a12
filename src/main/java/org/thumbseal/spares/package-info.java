/**
 * Spare parts: how many were used, how many will be with what uncertainty, and by when to order.
 * Pure: the stock file comes as text, today is a value.
 */
@NullMarked
package org.thumbseal.spares;

import org.jspecify.annotations.NullMarked;

/**
 * Sends sealed documents on to an MQTT 5 broker or an HTTPS address, each until it is acknowledged,
 * in the order of the chain. The results directory is the outbox; what is kept beside it says only
 * how far the other side has acknowledged.
 */
@NullMarked
package org.thumbseal.feed;

import org.jspecify.annotations.NullMarked;

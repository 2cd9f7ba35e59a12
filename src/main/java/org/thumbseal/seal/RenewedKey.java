package org.thumbseal.seal;

import java.nio.file.Path;

/**
 * A new key in the place of another.
 *
 * @param key the new one
 * @param kept file of the old private key
 * @param trusted file by which the old public key is trusted until the change
 */
public record RenewedKey(OpenedKey key, Path kept, Path trusted) {}

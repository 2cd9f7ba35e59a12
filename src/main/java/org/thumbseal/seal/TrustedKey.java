package org.thumbseal.seal;

/**
 * A public key that somebody vouches for.
 *
 * @param name whose key it is, as the file that holds it says; else its fingerprint
 * @param key the key
 */
public record TrustedKey(String name, VerifyingKey key) {}

package org.thumbseal.refer;

/**
 * The sealed document that something is quoted from, so that the receiver can check it.
 *
 * @param file its name in its results directory
 * @param digest SHA-256 of its canonical form with the signature, 64 hexadecimal digits
 * @param kid RFC 7638 thumbprint of the key that sealed it
 */
public record Source(String file, String digest, String kid) {}

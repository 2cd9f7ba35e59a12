package org.thumbseal.link;

/**
 * A serial port that the system knows.
 *
 * @param path what to give as a port
 * @param text what the system says of it
 */
public record PortDescription(String path, String text) {}

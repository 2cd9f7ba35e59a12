package org.thumbseal.index;

/**
 * A pump of which there are tests.
 *
 * @param asset its id
 * @param tests how many count
 * @param latest the latest that counts and has a date
 */
public record IndexedAsset(String asset, long tests, IndexedTest latest) {}

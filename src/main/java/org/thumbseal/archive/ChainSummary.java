package org.thumbseal.archive;

import java.util.Optional;
import org.thumbseal.seal.SealAnswer;

/**
 * What a chain holds.
 *
 * @param kid thumbprint of its key
 * @param signer whose key that is, by name or fingerprint; the thumbprint where no seal tells
 * @param answer what the best of its seals came to, the places apart
 * @param documents how many there are
 * @param period from the first test or calibration to the last; empty when none has a date
 */
public record ChainSummary(
    String kid, String signer, SealAnswer answer, long documents, Optional<Period> period) {}

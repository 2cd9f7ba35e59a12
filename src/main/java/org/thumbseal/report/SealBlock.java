package org.thumbseal.report;

import java.util.Optional;

/** Whether the result is what was sealed, by whom, and what to compare to be sure. */
final class SealBlock {
  private SealBlock() {}

  static void write(Markup body, SealFacts seal) {
    String state = seal.state().code();
    body.open("section", "class", "seal " + state).open("p");
    body.element("b", Words.text("seal." + state)).text(" " + Words.text("seal.says." + state));
    part(body, "seal.signer", signer(seal));
    part(body, "seal.remark", Optional.of(seal.remark()).filter(s -> !s.isEmpty()));
    body.close().line();
    if (seal.kid().isPresent() || seal.digest().isPresent()) {
      body.open("p");
      part(body, "seal.fingerprint", seal.fingerprint());
      part(body, "seal.kid", seal.kid());
      part(body, "seal.digest", seal.shortDigest());
      body.close().line();
    }
    body.close().line();
  }

  /** A key without a name is told by its fingerprint, which is there anyway. */
  private static Optional<String> signer(SealFacts seal) {
    boolean named =
        !seal.signer().isEmpty() && !Optional.of(seal.signer()).equals(seal.fingerprint());
    return named ? Optional.of(seal.signer()) : Optional.empty();
  }

  private static void part(Markup body, String name, Optional<String> value) {
    value.ifPresent(
        text -> {
          body.text(" " + Words.text(name) + " ");
          body.element("span", text, "class", "exact");
        });
  }
}

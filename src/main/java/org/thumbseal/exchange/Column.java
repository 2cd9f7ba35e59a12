package org.thumbseal.exchange;

import static org.thumbseal.exchange.ColumnKind.COUNT;
import static org.thumbseal.exchange.ColumnKind.FLAG;
import static org.thumbseal.exchange.ColumnKind.INSTANT;
import static org.thumbseal.exchange.ColumnKind.QUANTITY;
import static org.thumbseal.exchange.ColumnKind.TEXT;
import static org.thumbseal.exchange.ColumnKind.WORD;
import static org.thumbseal.exchange.ColumnKind.WORDS;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.thumbseal.grade.Verdict;

/**
 * The flat keys, the same in every form: what a logbook should store of a result. Columns are added
 * at the end of their group and never renamed; their names are lower case, so that no data base has
 * to be told how to quote them.
 */
public enum Column {
  ID(TEXT, "the test; primary key, a UUID", Member.text("/id")),
  SCHEMA(TEXT, "shape of the document", Member.text("/schema")),
  KIND(WORD, "kind of the document", Member.text("/kind")),
  ASSET_ID(TEXT, "the pump, corrections considered", r -> r.standing().asset()),
  STARTED_AT(INSTANT, "first sample", Member.startedAt()),
  VERDICT(WORD, "pass, fail, inconclusive, invalid", Member.text("/verdict")),
  COUNTS(
      FLAG,
      "false: void, or of a leak search; keep it, count it nowhere",
      r -> flag(r.isMonthly())),
  VOID_REASON(TEXT, "why it is void", r -> r.standing().voided()),
  NOTE(TEXT, "remark added later", r -> r.standing().note()),
  CORRECTIONS(COUNT, "corrections considered", r -> count(r.corrected())),
  SEALED_ASSET_ID(TEXT, "the pump as it was sealed", Member.text("/asset/id")),
  REASONS(WORDS, "codes of the reasons, what decided first", Member.codes("/reasons")),
  RISE_TIME_S(
      "s", "from the blocking to the rise asked for", Member.value("/measurements/riseTime", "s")),
  RISE_TIME_EXPANDED_S(
      "s", "U of the rise time, k = 2", Member.expanded("/measurements/riseTime", "s")),
  MAXIMUM_VACUUM_KPA(
      "kPa", "highest vacuum while blocked", Member.value("/measurements/maximumVacuum", "kPa")),
  MAXIMUM_VACUUM_EXPANDED_KPA(
      "kPa",
      "U of the maximum vacuum, k = 2",
      Member.expanded("/measurements/maximumVacuum", "kPa")),
  OPEN_VACUUM_KPA(
      "kPa", "vacuum with the inlet open", Member.value("/measurements/openVacuum", "kPa")),
  OPEN_VACUUM_EXPANDED_KPA(
      "kPa", "U of the open vacuum, k = 2", Member.expanded("/measurements/openVacuum", "kPa")),
  PUMPING_SPEED_L_MIN(
      "L/min", "pumping speed at the jar", Member.value("/measurements/pumpingSpeed", "L/min")),
  PUMPING_SPEED_EXPANDED_L_MIN(
      "L/min",
      "U of the pumping speed, k = 2",
      Member.expanded("/measurements/pumpingSpeed", "L/min")),
  LEAK_RATE_ML_MIN(
      "mL/min", "leak into the blocked jar", Member.value("/measurements/leakRate", "mL/min")),
  LEAK_RATE_EXPANDED_ML_MIN(
      "mL/min", "U of the leak rate, k = 2", Member.expanded("/measurements/leakRate", "mL/min")),
  LEAK_RATE_BOUND(
      WORD, "upper: the leak is this at most", Member.text("/measurements/leakRate/bound")),
  FINDINGS(WORDS, "what the curve suggests, code:confidence, surest first", Member.findings()),
  REPLACED(WORDS, "what was replaced before the test", Member.checked("replaced")),
  NOT_OK(WORDS, "what was found not to be in order", Member.checked("not-ok")),
  CRITERIA(TEXT, "name of the limits", Member.text("/criteria/name")),
  RISE_KPA("kPa", "limit: rise asked for", Member.value("/criteria/rise", "kPa")),
  RISE_TIME_LIMIT_S("s", "limit: within", Member.value("/criteria/riseTimeLimit", "s")),
  MAXIMUM_VACUUM_LIMIT_KPA(
      "kPa", "limit: at least", Member.value("/criteria/maximumVacuumLimit", "kPa")),
  OPEN_VACUUM_LIMIT_KPA(
      "kPa", "limit of the open vacuum", Member.value("/criteria/openVacuumLimit", "kPa")),
  AMBIENT_KPA("kPa", "air pressure", Member.value("/test/ambient/quantity", "kPa")),
  JAR_L("L", "volume of the jar", Member.value("/test/jar", "L")),
  SENSOR_ID(TEXT, "the sensor", Member.text("/test/sensor/id")),
  CALIBRATION_ID(TEXT, "its calibration, or uncalibrated", Member.calibration()),
  CAPTURE(TEXT, "file of the recording", Member.text("/evidence/capture")),
  CAPTURE_SHA256(TEXT, "its digest", Member.text("/evidence/sha256")),
  SEAL(
      WORD,
      "answer of the check, trusted-key as a rule",
      r -> Optional.of(r.seal().answer().code())),
  SIGNER(TEXT, "whose seal", r -> Optional.of(r.seal().signer()).filter(s -> !s.isEmpty())),
  SIGNER_KID(TEXT, "thumbprint of the key, RFC 7638", Member.entry(e -> e.kid())),
  LEDGER_SEQUENCE(COUNT, "its number with that key", Member.entry(e -> e.position().sequence())),
  DOCUMENT_SHA256(
      TEXT, "digest of the sealed document, RFC 8785 form", Member.entry(e -> e.digest())),
  LEAK_SEARCH_OF(
      TEXT, "the pump whose leak was sought; empty: no search", Member.text("/test/leakSearch"));

  private final ColumnKind kind;
  private final String unit;
  private final String meaning;

  /** A function without a state of its own. */
  @SuppressWarnings("ImmutableEnumChecker")
  private final Member member;

  Column(ColumnKind kind, String meaning, Member member) {
    this.kind = kind;
    this.unit = "";
    this.meaning = meaning;
    this.member = member;
  }

  Column(String unit, String meaning, Member member) {
    this.kind = QUANTITY;
    this.unit = unit;
    this.meaning = meaning;
    this.member = member;
  }

  /** Its name everywhere. */
  public String key() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** What the text in it stands for. */
  public ColumnKind kind() {
    return kind;
  }

  /** UCUM code of a quantity; else empty. */
  public String unit() {
    return unit;
  }

  /** What it holds, in a few words. */
  public String meaning() {
    return meaning;
  }

  /** The column of a name. */
  static Optional<Column> of(String key) {
    return Arrays.stream(values()).filter(c -> c.key().equals(key)).findFirst();
  }

  /** All the words there can be; none where they are not a few. */
  List<String> words() {
    return switch (this) {
      case VERDICT -> Arrays.stream(Verdict.values()).map(Verdict::code).toList();
      case COUNTS -> List.of("true", "false");
      default -> List.of();
    };
  }

  Optional<String> from(SealedResult result) throws ResultRefused {
    return member.of(result);
  }

  private static Optional<String> flag(boolean flag) {
    return Optional.of(Boolean.toString(flag));
  }

  private static Optional<String> count(long count) {
    return Optional.of(Long.toString(count));
  }
}

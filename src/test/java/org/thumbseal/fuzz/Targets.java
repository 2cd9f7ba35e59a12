package org.thumbseal.fuzz;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.thumbseal.capture.CaptureFormatException;
import org.thumbseal.capture.CaptureReader;
import org.thumbseal.capture.Columns;
import org.thumbseal.capture.TableReader;
import org.thumbseal.json.CalibrationReader;
import org.thumbseal.json.Canonical;
import org.thumbseal.json.CriteriaFile;
import org.thumbseal.json.CriteriaTree;
import org.thumbseal.json.JsonGate;
import org.thumbseal.json.JsonRefusedException;
import org.thumbseal.json.ResultTree;
import org.thumbseal.json.SoundRecordFile;
import org.thumbseal.link.LinkAddress;
import org.thumbseal.link.LinkAddressException;
import org.thumbseal.pipeline.Grader;
import org.thumbseal.pipeline.GradingSettings;
import org.thumbseal.seal.KeyException;
import org.thumbseal.seal.KeyStore;
import org.thumbseal.seal.TrustStore;

/** All targets by name. */
final class Targets {
  private static final Grader.Source SOURCE = Grader.Source.capture("x", "0".repeat(64));

  /** Makes a target anew, without figures. */
  interface Making {
    Target make() throws Exception;
  }

  private Targets() {}

  static Map<String, Making> all() {
    Map<String, Making> all = new TreeMap<>();
    all.put("wire", WireTarget::new);
    all.put("session", SessionTarget::new);
    all.put("document", DocumentTarget::new);
    all.put("directory", DirectoryTarget::new);
    all.put("capture", Targets::captures);
    all.put("table", Targets::tables);
    all.put("columns", Targets::columns);
    all.put("criteria", Targets::criteria);
    all.put("calibration", Targets::calibrations);
    all.put("sound-record", Targets::soundRecords);
    all.put("trust", Targets::trusted);
    all.put("key", Targets::keys);
    all.put("address", Targets::addresses);
    return all;
  }

  static Target of(String name) throws Exception {
    return java.util.Objects.requireNonNull(all().get(name), name).make();
  }

  private static Target captures() throws Exception {
    return new Reader(
        Genuine.captures(),
        CaptureFormatException.class,
        input ->
            Grader.grade(CaptureReader.read(input), SOURCE, GradingSettings.DEFAULT)
                .forEach(result -> Canonical.text(ResultTree.of(result))));
  }

  private static Target tables() throws Exception {
    List<Columns> columns =
        List.of(
            Columns.parse("time=1,pressure=2"),
            Columns.parse("time=1:s,pressure=2:kPa:gauge"),
            Columns.parse("time=1:ms,pressure=2:mbar:vacuum"));
    return new Reader(
        Genuine.tables(),
        CaptureFormatException.class,
        input ->
            Grader.grade(
                    TableReader.read(input, columns.get(input.length % columns.size())),
                    SOURCE,
                    GradingSettings.DEFAULT)
                .forEach(result -> Canonical.text(ResultTree.of(result))));
  }

  private static Target columns() {
    byte[] table = Genuine.tables().get(0);
    return new Reader(
        List.of(Bytes.of("time=1:s,pressure=2:kPa:gauge"), Bytes.of("time=Time [s],pressure=p")),
        CaptureFormatException.class,
        input -> TableReader.read(table, Columns.parse(new String(input, StandardCharsets.UTF_8))));
  }

  private static Target criteria() {
    return new Reader(
        Genuine.criteria(),
        JsonRefusedException.class,
        input -> CriteriaTree.text(CriteriaFile.of(JsonGate.read(input))));
  }

  private static Target calibrations() {
    return new Reader(
        List.of(Genuine.bytes(Genuine.calibration())),
        JsonRefusedException.class,
        input -> CalibrationReader.read(JsonGate.read(input)));
  }

  private static Target soundRecords() {
    return new Reader(
        List.of(Genuine.soundRecord()),
        JsonRefusedException.class,
        input -> SoundRecordFile.of(JsonGate.read(input)));
  }

  private static Target trusted() throws Exception {
    Path file = Keys.write(new byte[0]);
    file.toFile().deleteOnExit();
    byte[] jwk = Canonical.bytes(Keys.of(1).verifyingKey().jwk().put("name", "A. Fitter"));
    byte[] set = Bytes.join(Bytes.of("{\"keys\":["), jwk, Bytes.of("]}"));
    return new Reader(
        List.of(jwk, set),
        KeyException.class,
        input -> TrustStore.load(List.of(Files.write(file, input))));
  }

  private static Target keys() throws Exception {
    Path file = Keys.write(new byte[0]);
    return new Reader(
        List.of(Bytes.of(Keys.pem(1)), Bytes.of(Keys.pem(2))),
        KeyException.class,
        input -> KeyStore.load(Files.write(file, input)));
  }

  private static Target addresses() {
    return new Reader(
        List.of(
            Bytes.of("/dev/ttyUSB0?baud=9600&dtr=clear&settle=200"),
            Bytes.of("tcp:[::1]:4001"),
            Bytes.of("tcp:sensor.example:4001"),
            Bytes.of("sim:sound,seed=7,speed=2.5"),
            Bytes.of("file:a.raw")),
        LinkAddressException.class,
        input -> LinkAddress.parse(new String(input, StandardCharsets.UTF_8)));
  }
}

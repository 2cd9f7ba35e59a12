package org.thumbseal.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.withinPercentage;

import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.thumbseal.json.JsonGate;
import org.thumbseal.seal.ChainEnd;
import org.thumbseal.seal.Seal;
import org.thumbseal.seal.SigningKey;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.node.ObjectNode;

/** Findings of captures that another model made, whose faults are in their names. */
class FindingsReplayTest {
  @TempDir private Path folder;

  @ParameterizedTest
  @CsvSource({
    "leak,leak",
    "filter,restriction",
    "worn,worn-pump",
    "weak,worn-pump",
    "regulator,control-not-at-maximum"
  })
  void oneCurveTellsWhatIsWrong(String capture, String code) throws Exception {
    ObjectNode result = replay(capture);
    assertThat(result.at("/findings/0/code").stringValue()).isEqualTo(code);
    assertThat(result.at("/findings/0/confidence").doubleValue()).isBetween(0.5, 1.0);
    assertThat(result.at("/findings/0/text").stringValue()).containsPattern("[0-9]");
    assertThat(result.at("/findings/0/advice").stringValue()).isNotBlank();
  }

  @ParameterizedTest
  @CsvSource({"healthy-100hz", "altitude", "bad-line-1-percent"})
  void aSoundPumpHasNoFinding(String capture) throws Exception {
    assertThat(replay(capture).at("/findings")).isEmpty();
  }

  /**
   * The speed that the model had, in L/min, at the jar it had; the filter and the control apart.
   */
  @ParameterizedTest
  @CsvSource({
    "healthy-100hz,2,16.8388",
    "healthy-50hz-coarse-adc,1,12.4919",
    "slow,2,11.2804",
    "weak,1,10.9093",
    "leak,2.5,22.674",
    "worn,1,5.5418",
    "regulator,2,26.0125",
    "altitude,2,24.025",
    "bad-line-1-percent,2,20.7525"
  })
  void thePumpingSpeedIsThatOfTheModel(String capture, double litres, double truth) {
    JsonNode speed = replay(capture, "--jar-l", litres).at("/measurements/pumpingSpeed");
    assertThat(speed.get("value").doubleValue()).isCloseTo(truth, withinPercentage(1));
    assertThat(speed.get("expandedUncertainty").doubleValue()).isLessThan(0.1 * truth);
  }

  /** Where one curve cannot tell two causes apart, both are said and what would tell. */
  @Test
  void twoCausesAreBothSaid() throws Exception {
    ObjectNode result = replay("weak");
    assertThat(result.at("/findings/1/code").stringValue()).isEqualTo("leak");
    assertThat(result.at("/findings/0/advice").stringValue())
        .contains("What would tell worn pump and leak apart");
  }

  @Test
  void comparesWithTheSoundRecord() throws Exception {
    Path sound = write("sound.json", replay("healthy-100hz").toString());
    ObjectNode result = replay("slow", "--against", sound);
    assertThat(result.at("/findings/0/code").stringValue()).isEqualTo("worn-pump");
    assertThat(result.at("/findings/0/text").stringValue()).contains("when the pump was sound");
    assertThat(result.at("/comparedWith").stringValue())
        .isEqualTo(JsonGate.read(sound).at("/id").stringValue());
  }

  @Test
  void refusesARecordThatCannotServe() throws Exception {
    Path failed = write("failed.json", replay("weak").toString());
    assertThat(complaint("--against", failed)).contains("give one that passed");
    Path other = write("other.json", "{}");
    assertThat(complaint("--against", other)).contains("not the result of an occlusion");
    ObjectNode sound = replay("healthy-100hz", "--asset", "SP-001");
    Path assigned = write("assigned.json", sound.toString());
    assertThat(complaint("--against", assigned, "--asset", "SP-002"))
        .contains("is of another pump, SP-001");
  }

  @Test
  void refusesARecordWhoseSealIsBroken() throws Exception {
    ObjectNode sound = replay("healthy-100hz");
    ObjectNode sealed =
        Seal.seal(sound, ChainEnd.none("").next(), SigningKey.generate()).put("note", "x");
    assertThat(complaint("--against", write("altered.json", sealed.toString())))
        .contains("its seal is broken");
    sealed.remove("note");
    Path good = write("good.json", sealed.toString());
    assertThat(replay("slow", "--against", good).has("comparedWith")).isTrue();
  }

  private Path write(String name, String text) throws Exception {
    return Files.writeString(folder.resolve(name), text, UTF_8);
  }

  private static String complaint(Object... options) {
    Answer answer = Answer.to(arguments("slow", options));
    assertThat(answer.code()).isEqualTo(ExitCode.USAGE);
    assertThat(answer.err().lines()).hasSize(1);
    return answer.err();
  }

  private static ObjectNode replay(String capture, Object... options) {
    return Answer.to(arguments(capture, options)).onlyDocument();
  }

  private static Object[] arguments(String capture, Object... options) {
    Object[] all = new Object[options.length + 3];
    all[0] = "replay";
    all[1] = "--json";
    all[2] = IndependentCapture.FOLDER.resolve(capture + ".log");
    System.arraycopy(options, 0, all, 3, options.length);
    return all;
  }
}

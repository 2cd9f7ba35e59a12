package org.thumbseal.link;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class LinkAddressTest {

  @ParameterizedTest
  @ValueSource(
      strings = {
        "/dev/ttyUSB0",
        "COM3",
        "ttyACM1",
        "/dev/serial/by-id/usb-sensor_0001-if00",
        "/dev/serial/by-path/pci-0000:00:14.0-usb-0:1:1.0-port0"
      })
  void aNameOrPathIsASerialPort(String text) throws Exception {
    assertThat(LinkAddress.parse(text))
        .isEqualTo(new LinkAddress.Serial(text, text, SerialSettings.STANDARD));
  }

  @Test
  void serialOptionsStandBehindAQuestionMark() throws Exception {
    String text = "/dev/ttyUSB0?baud=9600&dtr=assert&settle=2500";
    SerialSettings settings =
        new SerialSettings(9_600, ModemLines.ASSERT, Duration.ofMillis(2_500));
    assertThat(LinkAddress.parse(text))
        .isEqualTo(new LinkAddress.Serial(text, "/dev/ttyUSB0", settings));
  }

  @ParameterizedTest
  @CsvSource({
    "board=plain, LEAVE, 0",
    "board=reset-on-open, CLEAR, 2500",
    "board=native-usb, ASSERT, 0",
    "board=boot-lines, CLEAR, 1000",
    "settle=3000&board=reset-on-open, CLEAR, 3000",
    "board=reset-on-open&dtr=leave, LEAVE, 2500"
  })
  void aBoardIsShortForDtrAndSettleWhichStandAboveIt(String options, ModemLines lines, long millis)
      throws Exception {
    String text = "/dev/ttyACM0?" + options;
    SerialSettings settings = new SerialSettings(115_200, lines, Duration.ofMillis(millis));
    assertThat(LinkAddress.parse(text))
        .isEqualTo(new LinkAddress.Serial(text, "/dev/ttyACM0", settings));
  }

  @ParameterizedTest
  @CsvSource({
    "tcp:sensor.ward3:4001, sensor.ward3, 4001",
    "tcp:10.0.0.7:23, 10.0.0.7, 23",
    "tcp:[::1]:4001, ::1, 4001",
    "tcp:[fe80::1%eth0]:65535, fe80::1%eth0, 65535"
  })
  void networkAddresses(String text, String host, int port) throws Exception {
    assertThat(LinkAddress.parse(text)).isEqualTo(new LinkAddress.Tcp(text, host, port));
  }

  @ParameterizedTest
  @CsvSource({"'sim:sound', 1, 1", "'sim:sound,seed=-7,speed=20.5', -7, 20.5"})
  void simulators(String text, long seed, double speed) throws Exception {
    assertThat(LinkAddress.parse(text))
        .isEqualTo(new LinkAddress.Simulated(text, "sound", seed, speed));
  }

  @Test
  void filesAndStandardInput() throws Exception {
    assertThat(LinkAddress.parse("file:a b.bin"))
        .isEqualTo(new LinkAddress.RawFile("file:a b.bin", Path.of("a b.bin")));
    assertThat(LinkAddress.parse("-")).isEqualTo(new LinkAddress.StandardInput("-"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "''|an address must be plain text: ",
        "' '|an address must be plain text: ",
        "udp:host:1|'udp:host:1' is no address known here: ",
        "TCP:host:1|'TCP:host:1' is no address known here: ",
        "tcp:host|'tcp:host' is not tcp:HOST:PORT ",
        "tcp:::1:4001|'tcp:::1:4001' is not tcp:HOST:PORT ",
        "tcp:host:0|'tcp:host:0': the port must be between 1 and 65535",
        "tcp:host:99999|'tcp:host:99999': the port must be between 1 and 65535",
        "sim:|'sim:' is not sim:KIND",
        "sim:sound,sped=2|'sim:sound,sped=2': 'sped=2' is no option here; there are seed=, speed=",
        "sim:sound,speed=0|'sim:sound,speed=0': speed must be between 0.1 and 100",
        "sim:sound,speed=NaN|'sim:sound,speed=NaN': speed must be a number, not 'NaN'",
        "sim:sound,seed=x|'sim:sound,seed=x': seed must be a whole number, not 'x'",
        "file:|'file:' names no file",
        "?baud=1|'?baud=1' names no port: ",
        "COM3?baud=12|'COM3?baud=12': baud must be between 50 and 4000000, not 12",
        "COM3?baud=99999999999|'COM3?baud=99999999999': a number is far too large",
        "COM3?baud=9600&baud=300|'COM3?baud=9600&baud=300': baud is given twice",
        "COM3?dtr=on|'COM3?dtr=on': dtr must be leave, assert or clear, not 'on'",
        "COM3?board=x|'COM3?board=x': board must be one of plain, reset-on-open, native-usb,"
            + " boot-lines, not 'x'",
        "COM3?settle=-1|'COM3?settle=-1': settle must be between 0 and 60000 ms, not -1",
        "COM3?speed|'COM3?speed': 'speed' is no option here; there are baud=, board=, dtr=,"
            + " settle="
      })
  void whatCannotBeUnderstoodIsSaidInOneLine(String text, String message) {
    assertThatThrownBy(() -> LinkAddress.parse(text))
        .isInstanceOf(LinkAddressException.class)
        .hasMessageStartingWith(message)
        .hasMessageNotContaining("\n");
  }
}

package org.thumbseal.daemon;

/** What an open port looks like from what comes over it. */
enum Impression {
  SPEAKING("a sensor is speaking"),
  NOTHING(
      "open, but nothing comes; check the sensor's power and cable (some boards need"
          + " ?board=native-usb)"),
  NO_SENSOR(
      "bytes come, but no good line; check the line speed (?baud=N) and that it is a sensor, and"
          + " --format where it prints plain numbers"),
  SHARED(
      "pieces are missing though this computer keeps up; another program may be reading this port:"
          + " close terminals and serial monitors"),
  MODEM(
      "modem commands come over this port; tell the modem service (ModemManager) to leave it alone,"
          + " by a udev rule with ID_MM_DEVICE_IGNORE");

  private final String text;

  Impression(String text) {
    this.text = text;
  }

  String text() {
    return text;
  }
}

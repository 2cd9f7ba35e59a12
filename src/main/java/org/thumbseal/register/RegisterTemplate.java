package org.thumbseal.register;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;

/** A register to begin with: a header line and two pumps of a place that does not exist. */
public final class RegisterTemplate {
  private static final List<String> ROWS =
      List.of(
          "SP-014,suction pump on a trolley,Ward 3,K-20417,2,30,,2023-05-02,in-use,1,12,1",
          "SP-021,\"suction pump, small\",Theatre 1,K-20533,0.5,18,,2024-11-18,away,1,12,1");

  private RegisterTemplate() {}

  /** Its lines, without their ends. */
  public static List<String> lines() {
    return java.util.stream.Stream.concat(java.util.stream.Stream.of(header()), ROWS.stream())
        .toList();
  }

  private static String header() {
    return Arrays.stream(Column.values()).map(Column::title).collect(Collectors.joining(","));
  }
}

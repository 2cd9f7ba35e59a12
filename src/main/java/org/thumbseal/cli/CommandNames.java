package org.thumbseal.cli;

import java.util.List;
import picocli.CommandLine.HelpCommand;

/**
 * What follows the program's name. To look through the options of every command takes longer than
 * many a command itself, so that one which is named is the only one made.
 */
final class CommandNames {
  /** In the order in which help shows them. */
  static final List<String> ALL =
      List.of(
          "demo",
          "watch",
          "start",
          "replay",
          "report",
          "history",
          "fleet",
          "due",
          "stock",
          "verify",
          "amend",
          "records",
          "done",
          "seek-leak",
          "trouble",
          "refer",
          "export",
          "import-check",
          "feed",
          "calibrate",
          "simulate",
          "accuracy",
          "ports",
          "criteria",
          "register",
          "key",
          "schema",
          "help");

  private CommandNames() {}

  /** Those that arguments can be about: the one they begin with, else all. */
  static List<String> wanted(String... args) {
    boolean one = args.length > 0 && ALL.contains(args[0]) && !args[0].equals("help");
    return one ? List.of(args[0]) : ALL;
  }

  /**
   * The class of a command; no other is loaded.
   *
   * @param name one of {@link #ALL}
   */
  static Class<?> type(String name) {
    return switch (name) {
      case "demo" -> DemoCommand.class;
      case "watch" -> WatchCommand.class;
      case "start" -> StartCommand.class;
      case "replay" -> ReplayCommand.class;
      case "report" -> ReportCommand.class;
      case "history" -> HistoryCommand.class;
      case "fleet" -> FleetCommand.class;
      case "due" -> DueCommand.class;
      case "stock" -> StockCommand.class;
      case "verify" -> VerifyCommand.class;
      case "amend" -> AmendCommand.class;
      case "records" -> RecordsCommand.class;
      case "done" -> DoneCommand.class;
      case "seek-leak" -> SeekLeakCommand.class;
      case "trouble" -> TroubleCommand.class;
      case "refer" -> ReferCommand.class;
      case "export" -> ExportCommand.class;
      case "import-check" -> ImportCheckCommand.class;
      case "feed" -> FeedCommand.class;
      case "calibrate" -> CalibrateCommand.class;
      case "simulate" -> SimulateCommand.class;
      case "accuracy" -> AccuracyCommand.class;
      case "ports" -> PortsCommand.class;
      case "criteria" -> CriteriaCommand.class;
      case "register" -> RegisterCommand.class;
      case "key" -> KeyCommand.class;
      case "schema" -> SchemaCommand.class;
      case "help" -> HelpCommand.class;
      default -> throw new IllegalArgumentException(name);
    };
  }
}

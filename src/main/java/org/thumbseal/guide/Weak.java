package org.thumbseal.guide;

import static org.thumbseal.guide.Choice.no;
import static org.thumbseal.guide.Choice.yes;
import static org.thumbseal.guide.Outcome.technician;
import static org.thumbseal.guide.Outcome.trained;
import static org.thumbseal.guide.Question.mains;

import java.util.List;

/**
 * It runs but is weak when blocked: a leak, most often at gasket and jar. What fails most and costs
 * least comes first. Common practice, no published source.
 */
final class Weak {
  static final List<Question> QUESTIONS =
      List.of(
          mains(
              "control-maximum",
              "Plug in, switch on, turn the vacuum control to its maximum and block the inlet of"
                  + " the jar. Is it strong now?",
              yes("control-was-low"),
              no("gasket-seated")),
          mains(
              "gasket-seated",
              "Unplug. Take out the gasket of the lid; clean it and the rim, or put in a new one if"
                  + " it is flat, cracked or hard. Lid on evenly. Plug in and block. Is it strong"
                  + " now?",
              yes("gasket-leaked"),
              no("jar-whole")),
          mains(
              "jar-whole",
              "Unplug. Are jar, lid and their spouts without a crack or a chip, also against the"
                  + " light?",
              yes("joints-pushed-on"),
              no("jar-broken")),
          mains(
              "joints-pushed-on",
              "Cut off or replace tube ends that are wide, push every tube home. Plug in and block."
                  + " Is it strong now?",
              yes("joint-leaked"),
              no("pump-alone")),
          mains(
              "pump-alone",
              "Unplug, take everything off the pump's own inlet. Plug in and block that with a"
                  + " gloved thumb or a clean stopper. Does its gauge go to where it always went?",
              yes("leak-to-seek"),
              no("pump-weak")));

  static final List<Outcome> OUTCOMES =
      List.of(
          trained(
              "control-was-low",
              "The vacuum control was not at its maximum.",
              "Make the monthly test with the control at maximum before it is used."),
          trained(
              "gasket-leaked",
              "The gasket of the lid leaked.",
              "Make the monthly test, and say at it that the gasket was cleaned or replaced."),
          trained(
              "jar-broken",
              "A crack or chip in jar or lid lets air in.",
              "Throw the broken part away, it is not glued. Put in a sound one and make the monthly"
                  + " test."),
          trained(
              "joint-leaked",
              "A tube sat loosely or was split at its end.",
              "Make the monthly test before it is used."),
          trained(
              "leak-to-seek",
              "The pump itself is strong: air gets in somewhere between it and the inlet of the"
                  + " jar.",
              "Find the place by tests from station to station: thumbseal seek-leak ASSET"),
          technician(
              "pump-weak",
              "The pump itself is weak: worn valves, diaphragm or piston, or too little voltage.",
              "Label it, take it out of use and refer it, decontaminated: thumbseal refer ASSET"));

  private Weak() {}
}

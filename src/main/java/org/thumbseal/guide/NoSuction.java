package org.thumbseal.guide;

import static org.thumbseal.guide.Choice.no;
import static org.thumbseal.guide.Choice.yes;
import static org.thumbseal.guide.Outcome.technician;
import static org.thumbseal.guide.Outcome.trained;
import static org.thumbseal.guide.Question.mains;

import java.util.List;

/**
 * It runs but does not suck, although its own gauge shows vacuum: something is blocked between the
 * open end and the pump. From the patient's end inwards. Common practice, no published source.
 */
final class NoSuction {
  static final List<Question> QUESTIONS =
      List.of(
          mains(
              "gauge-open",
              "Plug in and switch on, control at maximum, the patient's end open. Does the pump's"
                  + " own gauge show a good vacuum all the same?",
              yes("jar-inlet-sucks"),
              no("control-maximum")),
          mains(
              "jar-inlet-sucks",
              "Take the patient's tube off the jar. Is there suction at the open inlet of the jar?",
              yes("patient-tube-blocked"),
              no("jar-emptied")),
          mains(
              "jar-emptied",
              "Unplug. Empty and disinfect the jar if there is anything in it, free the float of"
                  + " the overflow valve, and see that it drops. Plug in, switch on. Is there suction"
                  + " now?",
              yes("float-was-shut"),
              no("jar-fitted")),
          mains(
              "jar-fitted",
              "Unplug. Fit jar, gasket and lid anew, no tube on the wrong spout. Plug in, switch"
                  + " on. Is there suction now?",
              yes("jar-was-wrong"),
              no("tubes-cleaned")),
          mains(
              "tubes-cleaned",
              "Unplug. Take off the tube between jar and pump; straighten it, clean it or take"
                  + " another one. Plug in, switch on. Is there suction now?",
              yes("inner-tube-blocked"),
              no("filter-renewed")),
          mains(
              "filter-renewed",
              "Unplug. Put in a new filter, the way round that it is marked; wet or discoloured"
                  + " ones let no air through. Plug in, switch on. Is there suction now?",
              yes("filter-blocked"),
              no("pump-inlet-sucks")),
          mains(
              "pump-inlet-sucks",
              "Take everything off the pump's own inlet. Is there suction right at it?",
              yes("blocked-outside"),
              no("blocked-inside")));

  static final List<Outcome> OUTCOMES =
      List.of(
          trained(
              "patient-tube-blocked",
              "The patient's tube or the catheter is blocked or kinked.",
              "Take a new catheter; clean, sterilise or replace the tube. Make the monthly test"
                  + " before the pump is used."),
          trained(
              "float-was-shut",
              "The jar was full, or the float of the overflow valve stuck shut.",
              "See whether fluid got beyond the jar: a wet filter is replaced, and if the pump drew"
                  + " fluid, refer it. Make the monthly test before it is used."),
          trained(
              "jar-was-wrong",
              "Jar, gasket or lid was not fitted as it has to be.",
              "Make the monthly test before it is used."),
          trained(
              "inner-tube-blocked",
              "The tube between jar and pump was blocked or kinked.",
              "Replace it if it kinks again. Make the monthly test before the pump is used."),
          trained(
              "filter-blocked",
              "The filter was clogged or wet.",
              "Order another one for the shelf: thumbseal stock. Make the monthly test, and say at"
                  + " it that the filter was replaced."),
          trained(
              "blocked-outside",
              "The pump sucks; something between it and the open end is still blocked.",
              "Put jar, filter and tubes back one by one, and feel for suction after each: the last"
                  + " one put on is blocked. Replace it and make the monthly test."),
          technician(
              "blocked-inside",
              "Something is blocked inside the pump, or its gauge is wrong.",
              "Label it, take it out of use and refer it, decontaminated: thumbseal refer ASSET"));

  private NoSuction() {}
}

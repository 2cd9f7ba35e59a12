package org.thumbseal.guide;

import static org.thumbseal.guide.Choice.no;
import static org.thumbseal.guide.Choice.yes;
import static org.thumbseal.guide.Question.caution;
import static org.thumbseal.guide.Question.mains;
import static org.thumbseal.guide.Question.plain;

import java.util.List;

/**
 * What comes first whatever is wrong: the cautions, the look at cord and plug, and the complaint.
 * Common practice, no published source.
 */
final class Begin {
  static final List<Question> QUESTIONS =
      List.of(
          caution(
              "caution-patient",
              "This pump is on no patient, and nobody needs it while you look: another one stands"
                  + " ready.",
              "caution-unplug"),
          caution(
              "caution-unplug",
              "Mains: the plug is out of the socket. Cord, plug and fuse are looked at and touched"
                  + " unplugged only, with dry hands.",
              "caution-damage"),
          caution(
              "caution-damage",
              "With a damaged cord or plug, a wet or broken housing, or a smell of burning it is"
                  + " not switched on: it stays unplugged, gets a label and goes out of use.",
              "caution-opening"),
          caution(
              "caution-opening",
              "The housing stays shut: to open it is for a qualified technician. Nothing in this"
                  + " guide asks for it.",
              "caution-infection"),
          caution(
              "caution-infection",
              "What was in jar and tubes may infect: gloves on, eyes covered; the jar is emptied"
                  + " and disinfected as the rules of your hospital say.",
              "cord-sound"),
          mains(
              "cord-sound",
              "Unplugged, look along the whole cord, at the plug and round the housing. Is all of"
                  + " it whole, dry, and without marks of heat?",
              yes("complaint"),
              no("mains-damaged")),
          plain(
              "complaint",
              "What is wrong with it?",
              new Choice("does-not-start", "it does not start", "other-device"),
              new Choice(
                  "no-suction",
                  "it runs, but does not suck, although its own gauge shows vacuum",
                  "gauge-open"),
              new Choice(
                  "weak", "it runs, but is weak when the inlet is blocked", "control-maximum")));

  static final List<Outcome> OUTCOMES =
      List.of(
          Outcome.technician(
              "mains-damaged",
              "Cord, plug or housing is damaged, wet or was too hot: a danger of electric shock and"
                  + " fire.",
              "Do not switch it on, and do not tape it. Leave it unplugged, label it, take it out"
                  + " of use and refer it: thumbseal refer ASSET"));

  private Begin() {}
}

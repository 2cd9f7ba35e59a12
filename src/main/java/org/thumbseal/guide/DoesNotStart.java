package org.thumbseal.guide;

import static org.thumbseal.guide.Choice.no;
import static org.thumbseal.guide.Choice.yes;
import static org.thumbseal.guide.Outcome.technician;
import static org.thumbseal.guide.Outcome.trained;
import static org.thumbseal.guide.Question.mains;

import java.util.List;

/** It does not start. Common practice, no published source. */
final class DoesNotStart {
  static final List<Question> QUESTIONS =
      List.of(
          mains(
              "other-device",
              "Plug something that you know works into the same socket. Does it run there?",
              yes("cord-seated"),
              no("no-mains")),
          mains(
              "cord-seated",
              "Still unplugged, push the cord home where it goes into the pump, if it can be taken"
                  + " off. Plug in and switch on. Does it start now?",
              yes("cord-was-loose"),
              no("hums")),
          mains(
              "hums",
              "With the switch on, does it hum or get warm without turning? (Switch off and unplug"
                  + " at once if so.)",
              yes("motor-stuck"),
              no("was-hot")),
          mains(
              "was-hot",
              "Unplug. Had it run for long before it stopped, is it hot, or were its vents"
                  + " covered?",
              yes("cooled"),
              no("fuse-reachable")),
          mains(
              "cooled",
              "Leave it unplugged for half an hour, vents free. Plug in and switch on. Does it"
                  + " start now?",
              yes("ran-too-hot"),
              no("fuse-reachable")),
          mains(
              "fuse-reachable",
              "Unplugged: has it a fuse that can be taken out from the outside, and do your local"
                  + " rules let you change it?",
              yes("fuse-blown"),
              no("electrical-fault")),
          mains(
              "fuse-blown",
              "Unplugged, take the fuse out. Is its wire parted, or the glass dark?",
              yes("fuse-replaced"),
              no("electrical-fault")),
          mains(
              "fuse-replaced",
              "Put in one new fuse of exactly the rating that is printed at the holder, once; never"
                  + " a larger one, never foil. Plug in and switch on. Does it run for five"
                  + " minutes?",
              yes("fuse-had-blown"),
              no("fuse-blows-again")));

  static final List<Outcome> OUTCOMES =
      List.of(
          new Outcome(
              "no-mains",
              "The socket has no power; of the pump nothing is known yet.",
              "Use another socket for the pump, then begin this guide anew if it still does not"
                  + " start. Have the socket seen to.",
              Outcome.Who.ELECTRICIAN),
          trained(
              "cord-was-loose",
              "The cord was not home in the pump.",
              "Make the monthly test before it is used. If the cord sits loosely again, refer the"
                  + " pump."),
          technician(
              "motor-stuck",
              "The motor has current and does not turn: stuck pump, worn brushes or bearings.",
              "Leave it unplugged, label it, and refer it: thumbseal refer ASSET"),
          trained(
              "ran-too-hot",
              "It was too hot and had switched itself off.",
              "Keep the vents free and clean, let it rest between uses, and make the monthly test"
                  + " before it is used. If it happens again, refer the pump."),
          technician(
              "electrical-fault",
              "A fault inside: switch, internal fuse, motor or wiring.",
              "Leave it unplugged and shut, label it, and refer it: thumbseal refer ASSET"),
          trained(
              "fuse-had-blown",
              "The fuse had blown once; fuses age.",
              "Note it, have the electrical safety of the pump checked by a qualified technician"
                  + " before it is used, and make the monthly test."),
          technician(
              "fuse-blows-again",
              "Something inside draws too much current.",
              "Put in no further fuse. Leave it unplugged, label it, and refer it: thumbseal refer"
                  + " ASSET"));

  private DoesNotStart() {}
}

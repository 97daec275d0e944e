package thinclick.client.standin;

import java.util.Arrays;
import java.util.Locale;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.message.ServerMessage.Dealt;
import thinclick.protocol.music.ClickPlan;

/**
 * How a stand-in plays, as a bandleader would say it: {@link Timing} and {@link Slip} under a plain
 * name. Gains are published ones, each named beside its value; where nothing is named the figure is
 * our own choice.
 */
public enum Manner {
  /** Keeps the time and listens. */
  STEADY(Timing.PRACTISED),
  /**
   * Follows the others as others follow a click: the gain that is best against a click ({@link
   * Timing#CLICK_OPTIMUM}), towards both.
   */
  FOLLOWS(new Timing(10, 5, Timing.CLICK_OPTIMUM, Timing.CLICK_OPTIMUM, 0, 0.01)),
  /** Keeps the click while it sounds, and gets faster when it goes. */
  PUSHES(Timing.PRACTISED.driftingInSilence(-1.5)),
  /** Keeps the click while it sounds, and gets slower when it goes. */
  DRAGS(Timing.PRACTISED.driftingInSilence(1.5)),
  /** Turned around for two bars as the click gets thin, then home. */
  LOST(Timing.PRACTISED),
  /**
   * Ahead of the others by a steady bit: more than is just noticed, 12.5 ms at half a second
   * (Friberg and Sundberg 1995, JASA 98:2524).
   */
  AHEAD(Timing.PRACTISED.leaning(-18)),
  /** Behind the others by as much. */
  BEHIND(Timing.PRACTISED.leaning(18)),
  /**
   * Scatters, and leaves some out: two of them are apart by 34 ms of standard deviation, within the
   * 30 to 50 of trios (Rasch 1979, Acustica 43:121).
   */
  LOOSE(new Timing(16, 12, 0.35, 0.2, 0, 0.05)),
  /**
   * Keeps its own time and follows nobody but the click, as a first violin adjusts least (Wing,
   * Endo, Bradbury and Vorberg 2014, J R Soc Interface 11:20131125); here not at all.
   */
  STUBBORN(new Timing(6, 5, 0.5, 0, 0, 0.01));

  private static final int FEWEST_BARS = 6;

  @SuppressWarnings("ImmutableEnumChecker") // a record of numbers
  private final Timing timing;

  Manner(Timing timing) {
    this.timing = timing;
  }

  /** The manner that somebody types: {@code steady}, in any case. */
  public static Manner of(String typed) {
    for (Manner one : values()) {
      if (one.word().equals(typed.strip().toLowerCase(Locale.ROOT))) {
        return one;
      }
    }
    throw new BadInput(
        "--manner",
        "expected one of "
            + String.join(", ", Arrays.stream(values()).map(Manner::word).toList())
            + ", found \""
            + typed
            + "\"");
  }

  /** The timing model's figures. */
  public Timing timing() {
    return timing;
  }

  /** Where in what is dealt it loses the beat; nowhere for all but one manner. */
  public Slip slip(Dealt dealt) {
    int bars = new ClickPlan(dealt.stages()).bars();
    if (this != LOST || bars < FEWEST_BARS) {
      return Slip.NONE;
    }
    int from = bars - bars / 3;
    int half = Math.max(1, dealt.stepsPerBeat() / 2);
    return new Slip(from, from + 2, half);
  }

  /** Its name where commands are typed. */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** Its name among the window's words, as {@code manner.steady}. */
  public String key() {
    return "manner." + word();
  }
}

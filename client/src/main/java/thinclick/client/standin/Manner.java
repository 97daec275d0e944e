package thinclick.client.standin;

import java.util.Locale;
import thinclick.protocol.message.ServerMessage.Dealt;
import thinclick.protocol.music.ClickPlan;

/**
 * How a stand-in plays, as a bandleader would say it: {@link Timing} and {@link Slip} under a plain
 * name. The figures are our own choice within what {@link Timing} says of people.
 */
public enum Manner {
  /** Keeps the time and listens. */
  STEADY(Timing.PRACTISED),
  /** Ahead of the others by a steady bit. */
  AHEAD(Timing.PRACTISED.leaning(-18)),
  /** Behind the others by a steady bit. */
  BEHIND(Timing.PRACTISED.leaning(18)),
  /** Scatters, and leaves some out. */
  LOOSE(new Timing(16, 12, 0.35, 0.2, 0, 0.05)),
  /** Keeps its own time and follows nobody but the click. */
  STUBBORN(new Timing(6, 5, 0.5, 0, 0, 0.01)),
  /** Turned around for two bars as the click gets thin, then home. */
  LOST(Timing.PRACTISED);

  private static final int FEWEST_BARS = 6;

  @SuppressWarnings("ImmutableEnumChecker") // a record of numbers
  private final Timing timing;

  Manner(Timing timing) {
    this.timing = timing;
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

  /** Its name among the window's words, as {@code manner.steady}. */
  public String key() {
    return "manner." + name().toLowerCase(Locale.ROOT);
  }
}

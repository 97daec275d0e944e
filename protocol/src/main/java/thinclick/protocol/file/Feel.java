package thinclick.protocol.file;

import thinclick.protocol.json.Check;

/**
 * A lean asked for on purpose, subtracted before anything is judged; milliseconds, positive late.
 *
 * @param onbeat wanted on the beats
 * @param offbeat wanted off the beats
 */
public record Feel(double onbeat, double offbeat) {
  /** Nothing asked for. */
  public static final Feel NONE = new Feel(0, 0);

  public Feel {
    Check.range("onbeat", onbeat, -250.0, 250.0);
    Check.range("offbeat", offbeat, -250.0, 250.0);
  }
}

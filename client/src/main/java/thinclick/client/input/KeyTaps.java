package thinclick.client.input;

import java.util.HashSet;
import java.util.Set;

/**
 * Which presses of a computer's keys are attacks. A key that is held repeats itself, which arrives
 * as a press without a release and is no attack; a release that happens while another window has
 * the focus never arrives at all.
 */
public final class KeyTaps {
  private final Set<String> held = new HashSet<>();

  /**
   * A key went down.
   *
   * @param key any name that stays the same for the key
   * @return true where it is an attack, false where the key was down already
   */
  public boolean pressed(String key) {
    return held.add(key);
  }

  /** A key came up. */
  public void released(String key) {
    held.remove(key);
  }

  /** Another window has the focus: what is held now will not be released here. */
  public void focusLost() {
    held.clear();
  }
}

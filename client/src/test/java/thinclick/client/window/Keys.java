package thinclick.client.window;

import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;

/** Key events as a keyboard that repeats makes them: pressed again without a release. */
final class Keys {
  private Keys() {}

  static KeyEvent pressed(KeyCode key) {
    return new KeyEvent(KeyEvent.KEY_PRESSED, "", key.getName(), key, false, false, false, false);
  }

  static KeyEvent released(KeyCode key) {
    return new KeyEvent(KeyEvent.KEY_RELEASED, "", key.getName(), key, false, false, false, false);
  }
}

package thinclick.client.window;

import java.util.LinkedHashMap;
import java.util.Map;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyCodeCombination;
import javafx.scene.input.KeyCombination;
import javafx.scene.input.KeyEvent;

/**
 * What the keyboard commands; always with Ctrl or a function key, because letters tap. Esc is not
 * among them: nothing stops by accident.
 */
final class Commands {
  private final Map<KeyCombination, Runnable> commands = new LinkedHashMap<>();

  Commands on(KeyCode key, Runnable does) {
    commands.put(new KeyCodeCombination(key), does);
    return this;
  }

  Commands onShift(KeyCode key, Runnable does) {
    commands.put(new KeyCodeCombination(key, KeyCombination.SHIFT_DOWN), does);
    return this;
  }

  Commands onCtrl(KeyCode key, Runnable does) {
    commands.put(new KeyCodeCombination(key, KeyCombination.SHORTCUT_DOWN), does);
    return this;
  }

  /** Signs that need Shift on one keyboard and none on another. */
  Commands onCtrlSign(KeyCode key, Runnable does) {
    commands.put(
        new KeyCodeCombination(key, KeyCombination.SHORTCUT_DOWN, KeyCombination.SHIFT_ANY), does);
    return this;
  }

  /** Carries out what a pressed key commands; false where it commands nothing. */
  boolean pressed(KeyEvent event) {
    for (Map.Entry<KeyCombination, Runnable> command : commands.entrySet()) {
      if (command.getKey().match(event)) {
        command.getValue().run();
        return true;
      }
    }
    return false;
  }
}

package thinclick.client.window.review;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.function.Supplier;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.layout.Region;
import javafx.stage.FileChooser;
import thinclick.client.window.look.Prose;
import thinclick.client.window.words.Words;

/** Keeps what the leader takes along where the leader wants it, and says below where it is. */
final class Keeping {
  private final Words words;
  private final Label says = Prose.in(new Label());

  /**
   * @param id of the sentence that says where it was kept
   */
  Keeping(Words words, String id) {
    this.words = words;
    says.setId(id);
    says.managedProperty().bind(says.textProperty().isNotEmpty());
  }

  /** Where it was kept, a sentence; it takes no room before. */
  Node says() {
    return says;
  }

  /** Forgets what was kept. */
  void clear() {
    says.setText("");
  }

  /** A button of the leader's part. */
  Button button(String id, String key, Runnable does) {
    Button button = new Button(words.say(key));
    button.setId(id);
    button.setMinWidth(Region.USE_PREF_SIZE);
    button.setOnAction(done -> does.run());
    return button;
  }

  /**
   * Asks where, and writes it there.
   *
   * @param title what it is of, for the name that is offered
   * @param make its bytes, made once it is known where
   */
  void keep(String title, String ending, Supplier<byte[]> make) {
    FileChooser chooser = new FileChooser();
    chooser.setInitialFileName(title.replaceAll("[^\\p{L}\\p{N}]+", "-") + "." + ending);
    File chosen = chooser.showSaveDialog(says.getScene().getWindow());
    if (chosen != null) {
      write(chosen.toPath(), make.get());
    }
  }

  private void write(Path file, byte[] bytes) {
    try {
      Files.write(file, bytes);
      says.setText(words.say("leader.kept", file.toString()));
    } catch (IOException unwritable) {
      says.setText(words.say("leader.notKept", file.toString()));
    }
  }
}

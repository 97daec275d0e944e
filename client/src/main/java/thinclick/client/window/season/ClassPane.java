package thinclick.client.window.season;

import static thinclick.client.window.look.Styled.styled;
import static thinclick.client.window.season.Controls.button;
import static thinclick.client.window.season.Controls.heading;
import static thinclick.client.window.season.Controls.line;
import static thinclick.client.window.season.Controls.wrapped;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javafx.scene.control.TextField;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;
import javafx.stage.FileChooser;
import javafx.stage.Window;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.words.Words;
import thinclick.protocol.file.FileCodec;
import thinclick.protocol.json.BadInput;
import thinclick.server.host.ClassBook;
import thinclick.server.host.Keeping;
import thinclick.server.season.Season;

/** What is done with a class as a whole: carried away, brought here, kept for so long, erased. */
final class ClassPane {
  private final ClassDesk desk;
  private final Words words;
  private final TextField months = new TextField();
  private final VBox root;

  ClassPane(ClassDesk desk, Words words, Erasure erasure) {
    this.desk = desk;
    this.words = words;
    months.getStyleClass().add("season-few");
    months.setPromptText(words.say("season.keep.ever"));
    root =
        new VBox(
            10,
            heading(words.say("season.whole")),
            new FlowPane(
                10, 8, button("save-season", words.say("season.save"), this::chooseAndSave)),
            line(
                words.say("season.keep"),
                months,
                "keep-months",
                button("put-months", words.say("season.keep.put"), this::keep)),
            styled(wrapped(words.say("season.kept")), "soft"),
            styled(
                button("erase-class", words.say("season.erase.class"), () -> erasure.ask(null)),
                "quiet"));
    root.getStyleClass().add("headed");
  }

  VBox root() {
    return root;
  }

  void show(@Nullable Season season) {
    Integer own = season == null ? null : season.list().keepMonths();
    int kept = own == null ? Keeping.USUAL_MONTHS : own;
    months.setText(kept == 0 ? "" : Integer.toString(kept));
  }

  private void keep() {
    String number = months.getText().strip();
    String written = number.isEmpty() ? "0" : number;
    String title = desk.openProperty().get();
    desk.change(
        book -> {
          if (!written.matches("\\d{1,4}")) {
            throw new BadInput("MONTHS", words.say("season.keep.wrong"));
          }
          int kept = Integer.parseInt(written);
          book.keep(title, kept);
          return words.count("season.keeps", kept);
        });
  }

  private void chooseAndSave() {
    FileChooser chooser = new FileChooser();
    chooser.setInitialFileName(
        desk.openProperty().get().replaceAll("[^\\p{L}\\p{N}]+", "-") + ".season.json");
    File chosen = chooser.showSaveDialog(root.getScene().getWindow());
    if (chosen != null) {
      save(chosen.toPath());
    }
  }

  /** Saves the open class to a file. */
  void save(Path file) {
    String title = desk.openProperty().get();
    desk.work(
        book -> {
          try {
            Files.write(file, FileCodec.writeSeason(book.save(title)));
          } catch (IOException unwritable) {
            throw new BadInput("FILE", words.say("season.save.not", file.toString()));
          }
          return words.say("season.saved", file.toString());
        },
        desk::tell);
  }

  /** Opens a season from a file that is asked for. */
  static void chooseAndOpen(ClassDesk desk, Words words, Window over) {
    FileChooser chooser = new FileChooser();
    chooser
        .getExtensionFilters()
        .add(new FileChooser.ExtensionFilter(words.say("season.open.kind"), "*.json"));
    File chosen = chooser.showOpenDialog(over);
    if (chosen != null) {
      open(desk, words, chosen.toPath());
    }
  }

  /** Opens a season from a file. */
  static void open(ClassDesk desk, Words words, Path file) {
    desk.work(
        book -> {
          try {
            return book.open(Files.readAllBytes(file));
          } catch (IOException unreadable) {
            throw new BadInput("FILE", words.say("season.open.not", file.toString()));
          }
        },
        opened -> {
          desk.open(opened.title());
          desk.tell(told(desk, words, opened));
        });
  }

  private static String told(ClassDesk desk, Words words, ClassBook.Opened opened) {
    List<String> conflicts =
        opened.conflicts().stream().map(conflict -> conflict.say(desk.speaker())).toList();
    String says =
        words.say(
            "season.opened",
            opened.title(),
            words.count("season.count.takes", opened.takes()),
            opened.there(),
            words.count(opened.there()),
            words.count("season.count.names", opened.members()));
    if (!opened.elsewhere().isEmpty()) {
      String stay = words.count("season.opened.elsewhere", opened.elsewhere().size());
      says += " " + Words.sentence(stay);
    }
    return conflicts.isEmpty() ? says : says + " " + String.join(" ", conflicts);
  }
}

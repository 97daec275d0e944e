package thinclick.client.window.season;

import static thinclick.client.window.look.Styled.styled;
import static thinclick.client.window.season.Controls.button;
import static thinclick.client.window.season.Controls.heading;
import static thinclick.client.window.season.Controls.line;
import static thinclick.client.window.season.Controls.shown;
import static thinclick.client.window.season.Controls.wrapped;

import java.time.ZoneId;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.words.Words;
import thinclick.protocol.json.BadInput;
import thinclick.server.season.Pupil;
import thinclick.server.season.Season;
import thinclick.server.season.SeasonWords;

/** Who is marked: how it goes for them, and what can be put right. */
final class PupilPane {
  private final ClassDesk desk;
  private final Words words;
  private final Label none = styled(wrapped(""), "soft");
  private final Label name = heading("");
  private final VBox says = new VBox(5);
  private final TextField newName = new TextField();
  private final TextField newChair = new TextField();
  private final VBox known = new VBox(10);
  private final VBox root = new VBox(10);
  private @Nullable Pupil pupil;

  PupilPane(ClassDesk desk, Words words, Erasure erasure) {
    this.desk = desk;
    this.words = words;
    none.setText(words.say("season.choose"));
    says.setId("pupil-says");
    newChair.getStyleClass().add("season-few");
    known
        .getChildren()
        .addAll(
            name,
            says,
            line(
                words.say("season.name"),
                newName,
                "pupil-name",
                button("put-name", words.say("season.name.put"), this::putName)),
            line(
                words.say("season.chair"),
                newChair,
                "pupil-chair",
                button("put-chair", words.say("season.chair.put"), this::putChair)),
            styled(
                button(
                    "erase-pupil",
                    words.say("season.erase.one"),
                    () -> {
                      if (pupil != null) {
                        erasure.ask(pupil.name());
                      }
                    }),
                "quiet"));
    root.getChildren().addAll(none, known);
    show(null, null);
  }

  VBox root() {
    return root;
  }

  void show(@Nullable Season season, @Nullable Pupil marked) {
    pupil = marked;
    shown(none, marked == null);
    shown(known, marked != null);
    says.getChildren().clear();
    if (season == null || marked == null) {
      return;
    }
    name.setText(marked.name());
    new SeasonWords(season, ZoneId.systemDefault(), desk.speaker())
        .of(marked)
        .forEach(sentence -> says.getChildren().add(wrapped(sentence)));
    newName.setText(marked.name());
    newChair.setText(marked.chair() == null ? "" : Integer.toString(marked.chair()));
  }

  private void putName() {
    Pupil now = pupil;
    String wanted = newName.getText().strip();
    if (now != null && !wanted.isEmpty() && !wanted.equals(now.name())) {
      String title = desk.openProperty().get();
      desk.change(
          book -> {
            int places = book.rename(title, now.name(), wanted, null);
            return words.say("season.renamed", now.name(), wanted, places, words.count(places));
          });
    }
  }

  private void putChair() {
    Pupil now = pupil;
    String written = newChair.getText().strip();
    if (now != null) {
      String title = desk.openProperty().get();
      desk.change(
          book -> {
            if (!written.matches("\\d{1,3}")) {
              throw new BadInput("CHAIR", words.say("season.chair.wrong"));
            }
            book.seat(title, now.name(), Integer.parseInt(written));
            return words.say("season.seated", now.name(), written);
          });
    }
  }
}

package thinclick.client.window.lectern;

import java.util.List;
import java.util.Locale;
import java.util.Objects;
import javafx.beans.property.ReadOnlyListProperty;
import javafx.beans.property.ReadOnlyListWrapper;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import javafx.collections.FXCollections;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.session.Session;
import thinclick.client.window.words.Words;
import thinclick.protocol.file.Drill;

/** The drills on the shelf, looked through by a part of their titles until one is chosen. */
public final class DrillSearch {
  private final Session session;
  private final Words words;
  private final LecternModel lectern;
  private final StringProperty looking = new SimpleStringProperty("");
  private final ReadOnlyListWrapper<Drill> found =
      new ReadOnlyListWrapper<>(FXCollections.observableArrayList());
  private @Nullable String inUse;

  DrillSearch(Session session, Words words, LecternModel lectern) {
    this.session = session;
    this.words = words;
    this.lectern = lectern;
    looking.addListener(any -> look());
    session
        .stateProperty()
        .addListener(
            (any, old, now) -> {
              if (!old.shelf().equals(now.shelf())) {
                look();
              }
            });
    lectern.changesProperty().addListener(any -> chosen());
    look();
  }

  private void look() {
    String wanted = looking.get().strip().toLowerCase(Locale.ROOT);
    List<Drill> fitting =
        session.state().shelf().drills().stream()
            .filter(drill -> drill.title().toLowerCase(Locale.ROOT).contains(wanted))
            .toList();
    if (!found.equals(fitting)) {
      found.setAll(fitting);
    }
  }

  /** Once another drill is in use nothing is looked for any more. */
  private void chosen() {
    Drill drill = lectern.chosen();
    String title = drill == null ? null : drill.title();
    if (!Objects.equals(title, inUse)) {
      inUse = title;
      looking.set("");
    }
  }

  /** What is looked for; empty for all. */
  public StringProperty lookingProperty() {
    return looking;
  }

  /** The drills that fit what is looked for. */
  public ReadOnlyListProperty<Drill> foundProperty() {
    return found.getReadOnlyProperty();
  }

  /** A drill in one line. */
  String line(Drill drill) {
    return words.say("lectern.drill", drill.title(), drill.level(), drill.meter().toString());
  }

  /** True for the drill that the room has now. */
  public boolean inUse(Drill drill) {
    return drill.title().equals(inUse);
  }
}

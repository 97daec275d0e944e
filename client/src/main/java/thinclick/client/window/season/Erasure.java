package thinclick.client.window.season;

import java.time.ZoneId;
import java.util.List;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.words.Words;
import thinclick.server.season.ErasedPlace;

/** What is about to be erased: told first, place by place, and done only when asked again. */
final class Erasure {
  private final ClassDesk desk;
  private final Words words;
  private final ReadOnlyObjectWrapper<@Nullable Wanted> wanted = new ReadOnlyObjectWrapper<>();

  /**
   * What is asked for.
   *
   * @param name who; null for the whole class
   * @param title of the class
   * @param goes what would go, a sentence a place
   */
  record Wanted(@Nullable String name, String title, List<String> goes) {}

  Erasure(ClassDesk desk, Words words) {
    this.desk = desk;
    this.words = words;
    wanted.addListener((any, old, now) -> desk.asksToErase(now != null));
  }

  /** What is asked for; null where nothing is. */
  ReadOnlyObjectProperty<@Nullable Wanted> wantedProperty() {
    return wanted.getReadOnlyProperty();
  }

  /** Asks what would go. */
  void ask(@Nullable String name) {
    String title = desk.openProperty().get();
    desk.work(
        book -> book.erasing().look(name, title),
        goes -> wanted.set(new Wanted(name, title, said().goes(goes))));
  }

  /** What comes before {@link #outside}. */
  String outsideHead() {
    return ErasedPlace.outsideHead(desk.speaker());
  }

  /** What this computer cannot reach, so that it is known before anything is erased. */
  List<String> outside() {
    return ErasedPlace.outside(desk.speaker());
  }

  private ErasureWords said() {
    return new ErasureWords(
        words, desk.seasonProperty().get(), desk.speaker().days(), ZoneId.systemDefault());
  }

  /** Leaves it. */
  void leave() {
    wanted.set(null);
  }

  /** True where it can be done now. */
  boolean possible() {
    return !desk.inRoom();
  }

  /** Erases what was told. */
  void go() {
    Wanted now = wanted.get();
    if (now == null || !possible()) {
      return;
    }
    wanted.set(null);
    ErasureWords said = said();
    String name = now.name();
    desk.work(
        book -> {
          List<String> gone = said.gone(book.erasing().erase(name, now.title()));
          String left =
              name == null
                  ? said.left(now.title(), book.classes().size())
                  : said.left(name, book.season(now.title()));
          return new Done(gone, left);
        },
        done -> {
          String says =
              words.say("season.erased")
                  + "\n"
                  + String.join("\n", done.gone())
                  + "\n"
                  + outsideHead()
                  + " "
                  + String.join(" ", outside());
          if (name == null) {
            desk.open("");
            desk.titles().remove(now.title());
          } else {
            desk.again();
          }
          desk.tell(says, done.left());
        });
  }

  /** What has gone, a sentence a place, and what is left. */
  private record Done(List<String> gone, String left) {}
}

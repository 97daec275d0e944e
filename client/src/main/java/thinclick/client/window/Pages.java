package thinclick.client.window;

import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import javafx.scene.Node;
import javafx.stage.Stage;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.session.Session;
import thinclick.client.window.words.Words;

/** The pages of a window: which one is in view, which are offered, and which follows by itself. */
final class Pages {
  private final Stage stage;
  private final Session session;
  private final Shell shell;
  private final Words words;
  private final Map<View, Page> pages = new EnumMap<>(View.class);
  private Runnable leaving = () -> {};
  private View current = View.DOOR;
  private View before = View.DOOR;

  /** A page and where its focus begins. */
  private record Page(Node root, Runnable begin) {}

  Pages(Stage stage, Session session, Shell shell, Words words) {
    this.stage = stage;
    this.session = session;
    this.shell = shell;
    this.words = words;
  }

  /**
   * Adds a page.
   *
   * @param begin puts the focus to its beginning
   */
  Pages add(View view, Node root, Runnable begin) {
    pages.put(view, new Page(root, begin));
    return this;
  }

  /** What is broken off whenever another page than the sound check comes into view. */
  void onLeavingCheck(Runnable does) {
    leaving = does;
  }

  /** The page in view. */
  View current() {
    return current;
  }

  /** The pages follow the rehearsal: in to the stand, after the take to its review. */
  void follow(RoomState old, RoomState now) {
    for (View view : View.values()) {
      shell.offer(view, there(view, now), offered(view, now));
    }
    View next = next(current, old, now, session.practising());
    if (next != null) {
      go(next);
    }
  }

  /**
   * The page that comes into view by itself; null where the one in view stays.
   *
   * @param practising whether one plays alone, and nobody else is led
   */
  static @Nullable View next(View current, RoomState old, RoomState now, boolean practising) {
    boolean inside = now.inside();
    if (inside != old.inside()) {
      return home(now, practising);
    }
    if (inside && now.takeRuns() && !Objects.equals(old.announced(), now.announced())) {
      return View.STAND;
    }
    if (inside && now.review() != null && old.review() == null) {
      return View.REVIEW;
    }
    // Nobody is left on a page that is over: a deal takes the review away, another takes the lead.
    return offered(current, old) && !offered(current, now) ? home(now, practising) : null;
  }

  /** Where one is of use: outside at the door, who leads at the lectern, else at the stand. */
  private static View home(RoomState room, boolean practising) {
    if (!room.inside()) {
      return View.DOOR;
    }
    return room.leader() && !practising ? View.LECTERN : View.STAND;
  }

  private static boolean there(View wanted, RoomState room) {
    return switch (wanted) {
      case CHECK -> true;
      case REVIEW -> room.inside();
      case SEASON -> !room.inside() || room.leader();
      case DOOR, PRACTICE, STAND, LECTERN, SETTINGS, HELP -> offered(wanted, room);
    };
  }

  private static boolean offered(View wanted, RoomState room) {
    return switch (wanted) {
      case DOOR, PRACTICE -> !room.inside();
      case CHECK -> !room.takeRuns();
      case STAND -> room.inside();
      case LECTERN -> room.inside() && room.leader();
      case REVIEW -> room.inside() && room.review() != null;
      case SEASON -> !room.inside() || (room.leader() && !room.takeRuns());
      case SETTINGS, HELP -> true;
    };
  }

  /** Turns to a page, where it is offered. */
  void go(View wanted) {
    @Nullable Page page = pages.get(wanted);
    if (page == null || !offered(wanted, session.state())) {
      return;
    }
    if (wanted != View.CHECK) {
      leaving.run();
    }
    current = wanted;
    shell.show(wanted, page.root());
    stage.setTitle(words.say("shell.title", words.say(wanted.key())));
    // A page is whole only once it has been styled; without this a key pressed at once would be
    // lost.
    shell.root().applyCss();
    shell.root().layout();
    page.begin().run();
  }

  /** To the help, and from there back to the page before. */
  void help() {
    if (current == View.HELP) {
      RoomState room = session.state();
      go(offered(before, room) ? before : home(room, session.practising()));
    } else {
      before = current;
      go(View.HELP);
    }
  }

  /** From the page to the head of the window and back. */
  void nextRegion() {
    Page page = pages.get(current);
    if (!shell.headHasFocus()) {
      shell.focusHead();
    } else if (page != null) {
      page.begin().run();
    }
  }
}

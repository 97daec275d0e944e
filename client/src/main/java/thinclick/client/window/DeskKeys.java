package thinclick.client.window;

import java.util.function.IntConsumer;
import java.util.function.Supplier;
import javafx.scene.Node;
import javafx.scene.Scene;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.input.MouseEvent;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.lectern.LecternDesk;
import thinclick.client.window.session.Session;
import thinclick.client.window.session.TakeMoment;
import thinclick.client.window.settings.SettingsModel;

/** What the keys of a window do: letters tap first, what is left over commands. */
final class DeskKeys {
  private final Session session;
  private final LecternDesk lecternDesk;
  private final SettingsModel looks;
  private final Pages pages;
  private final Runnable turnWall;
  private Supplier<@Nullable TakeMoment> moment = () -> null;
  private IntConsumer turnReader = by -> {};
  private Runnable toDrills = () -> {};
  private Runnable toCompose = () -> {};

  DeskKeys(
      Session session,
      LecternDesk lecternDesk,
      SettingsModel looks,
      Pages pages,
      Runnable turnWall) {
    this.session = session;
    this.lecternDesk = lecternDesk;
    this.looks = looks;
    this.pages = pages;
    this.turnWall = turnWall;
  }

  /** Where a take stands when a rescue is asked for. */
  DeskKeys rescuedAt(Supplier<@Nullable TakeMoment> now) {
    moment = now;
    return this;
  }

  /** What goes to the drills, and to what is composed. */
  DeskKeys toMaterial(Runnable drills, Runnable compose) {
    toDrills = drills;
    toCompose = compose;
    return this;
  }

  /** Where several play at this computer, whose page is seen; told 1 for the next, -1 for back. */
  DeskKeys nextReader(IntConsumer turn) {
    turnReader = turn;
    return this;
  }

  /** Stamps every key before anybody else has it. */
  static void bind(Scene scene, Taps taps, Commands commands) {
    scene.addEventFilter(
        KeyEvent.ANY,
        event -> {
          long nanos = System.nanoTime();
          if (taps.key(event, nanos)) {
            event.consume();
          } else if (event.getEventType() == KeyEvent.KEY_PRESSED && commands.pressed(event)) {
            event.consume();
          }
        });
  }

  /** Stamps presses of the mouse or a finger on a page. */
  static void touch(Node page, Taps taps) {
    page.addEventFilter(
        MouseEvent.MOUSE_PRESSED,
        event -> {
          long nanos = System.nanoTime();
          if (taps.pressed(nanos)) {
            event.consume();
          }
        });
  }

  /** The table of what the keyboard commands. */
  Commands commands() {
    Commands commands = new Commands();
    commands
        .onCtrl(KeyCode.D, lecternDesk.lectern()::deal)
        .onCtrl(KeyCode.Z, lecternDesk.lectern()::undo)
        .onCtrl(KeyCode.ENTER, lecternDesk.lesson()::goOn)
        .onCtrlSign(KeyCode.PERIOD, lecternDesk.take()::stop)
        .onCtrl(KeyCode.R, () -> lecternDesk.steering().rescue(moment.get()))
        .onCtrl(KeyCode.B, lecternDesk.lesson()::repeat)
        .onCtrl(KeyCode.N, lecternDesk.lesson()::next)
        .onCtrl(KeyCode.M, lecternDesk.lesson()::moreClicks)
        .onCtrl(KeyCode.L, lecternDesk.lesson()::fewerClicks)
        .onCtrl(KeyCode.G, lecternDesk.proposals()::take)
        .onCtrl(KeyCode.F, lecternDesk.proposals()::lookUp)
        .onCtrl(KeyCode.P, lecternDesk.lesson()::pause)
        .onCtrl(KeyCode.O, () -> toDrills.run())
        .onCtrl(KeyCode.E, () -> toCompose.run())
        .onCtrl(KeyCode.K, session.lead()::claim)
        .onCtrl(KeyCode.DIGIT4, turnWall)
        .onCtrl(KeyCode.T, looks::turn)
        .onCtrlSign(KeyCode.PLUS, () -> looks.grow(1))
        .onCtrlSign(KeyCode.EQUALS, () -> looks.grow(1))
        .onCtrlSign(KeyCode.ADD, () -> looks.grow(1))
        .onCtrlSign(KeyCode.MINUS, () -> looks.grow(-1))
        .onCtrlSign(KeyCode.SUBTRACT, () -> looks.grow(-1))
        .on(KeyCode.F1, pages::help)
        .on(KeyCode.F6, pages::nextRegion)
        .on(KeyCode.F7, () -> turnReader.accept(1))
        .onShift(KeyCode.F7, () -> turnReader.accept(-1));
    for (View each : View.values()) {
      if (each.digit() > 0) {
        KeyCode digit = KeyCode.getKeyCode(Integer.toString(each.digit()));
        commands.onCtrl(digit, () -> pages.go(each));
      }
    }
    return commands;
  }
}

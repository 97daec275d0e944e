package thinclick.client.window.wall;

import javafx.geometry.Rectangle2D;
import javafx.scene.Scene;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.StackPane;
import javafx.stage.Screen;
import javafx.stage.Stage;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.look.Palette;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.session.TakeMoment;
import thinclick.client.window.words.Words;

/** The wall's own window: on the second screen where there is one, over all of it. */
public final class WallWindow implements AutoCloseable {
  private static final double WIDTH = 1_024;
  private static final double HEIGHT = 640;

  private final WallModel model;
  private final WallView view = new WallView();
  private final Stage stage = new Stage();

  public WallWindow(Words words, String title) {
    model = new WallModel(words);
    Scene scene = new Scene(new StackPane(view.root()), WIDTH, HEIGHT);
    scene.addEventFilter(
        KeyEvent.KEY_PRESSED,
        key -> {
          if (key.getCode() == KeyCode.F11) {
            stage.setFullScreen(!stage.isFullScreen());
          }
        });
    stage.setTitle(title);
    stage.setScene(scene);
    stage.setFullScreenExitHint("");
  }

  /** Shows it, or puts it away. */
  public void turn(Stage beside) {
    if (stage.isShowing()) {
      stage.hide();
      return;
    }
    Screen other = other(beside);
    if (other != null) {
      Rectangle2D bounds = other.getVisualBounds();
      stage.setX(bounds.getMinX());
      stage.setY(bounds.getMinY());
      stage.setWidth(bounds.getWidth());
      stage.setHeight(bounds.getHeight());
    }
    stage.show();
    stage.setFullScreen(other != null);
    beside.requestFocus();
  }

  private static @Nullable Screen other(Stage beside) {
    for (Screen screen : Screen.getScreens()) {
      Rectangle2D bounds = screen.getBounds();
      if (!bounds.contains(beside.getX() + 1, beside.getY() + 1)) {
        return screen;
      }
    }
    return null;
  }

  /** True while it hangs. */
  public boolean showing() {
    return stage.isShowing();
  }

  /** True where all words stand within the page at a size that can be read. */
  public boolean fits() {
    return view.fits();
  }

  /** The window's scene. */
  public Scene scene() {
    return stage.getScene();
  }

  /** The room and the take have moved on. */
  public void look(RoomState room, TakeMoment moment) {
    model.remember(room);
    if (stage.isShowing()) {
      view.show(model.page(room, moment));
    }
  }

  /** Changes the colours. */
  public void dress(Palette palette) {
    view.dress(palette);
  }

  @Override
  public void close() {
    stage.close();
  }
}

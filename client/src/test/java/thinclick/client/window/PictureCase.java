package thinclick.client.window;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import javafx.scene.Scene;
import javafx.scene.image.WritableImage;
import javafx.scene.input.KeyCode;
import org.testfx.util.WaitForAsyncUtils;
import thinclick.client.window.look.Look;
import thinclick.client.window.look.Look.Shade;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.session.TakeMoment;
import thinclick.client.window.words.Words;

/**
 * What makes pictures of pages shares: light and dark, at three sizes, written once all is over.
 */
abstract class PictureCase extends WindowCase {
  private record Size(String name, int width, int height) {}

  /** {@code -Dgallery.language=de} makes the German ones. */
  private static final Locale LANGUAGE =
      Locale.forLanguageTag(System.getProperty("gallery.language", "en"));

  /**
   * {@code -Dpictures.only=stand-.*light-1366x768} makes just the pictures whose name matches, for
   * whoever mends one page.
   */
  private static final Pattern ONLY = Pattern.compile(System.getProperty("pictures.only", ".*"));

  private static final List<Size> SIZES =
      List.of(
          new Size("1366x768", 1366, 768),
          new Size("1920x1080", 1920, 1080),
          new Size("1024x768", 1024, 768));

  /** Pixels from the usual size of text to twice that. */
  private static final int STEPS_TO_TWICE = (int) Look.USUAL_TEXT;

  /** A picture that is put on disk once nothing is in a hurry any more. */
  private interface Written {
    void write() throws IOException;
  }

  private final Path into;
  private final List<Written> pictures = new ArrayList<>();
  private final Set<String> english = new TreeSet<>();
  private int leftOut;
  boolean forOthers;

  /**
   * @param folder in {@code target}; the German ones in a folder of their own
   */
  PictureCase(String folder) {
    into = Path.of("target", LANGUAGE.equals(Locale.ENGLISH) ? folder : folder + "-" + LANGUAGE);
    words = Words.in(LANGUAGE);
  }

  /** The page in view. */
  final void picture(String name) {
    picture(name, () -> {});
  }

  /**
   * The page in view.
   *
   * @param place brings into view what the picture is of, at each size
   */
  final void picture(String name, Runnable place) {
    pictures(name, () -> {}, this::sized, place, () -> {});
  }

  /** The page in view, light and of the usual size alone: of what there is too much of. */
  final void pictureOnce(String name) {
    one(Shade.LIGHT, SIZES.get(0), name, () -> {}, this::sized, () -> {}, () -> {});
  }

  /**
   * The page in view in a moment that passes.
   *
   * @param moment brings it about before each picture, outside the window's thread
   */
  final void pictureEachTime(String name, Runnable moment) {
    pictures(name, moment, this::sized, () -> {}, () -> {});
  }

  private Scene sized(Size size) {
    stage.setWidth(size.width());
    stage.setHeight(size.height());
    return stage.getScene();
  }

  /** The page in view at twice the usual size of text and music, as {@code name-200}. */
  final void pictureTwiceAsLarge(String name) {
    for (int i = 0; i < STEPS_TO_TWICE; i++) {
      control(KeyCode.ADD);
    }
    picture(name + "-200");
    for (int i = 0; i < STEPS_TO_TWICE; i++) {
      control(KeyCode.MINUS);
    }
  }

  /** The wall as it hangs now, which must fit. */
  final void wallPicture(String name) {
    wallPicture(name, on(() -> desk.chairs().first().stand().momentProperty().get()));
  }

  /** The wall at one moment of the take: the take goes on while the pictures are made. */
  final void wallPicture(String name, TakeMoment moment) {
    RoomState room = on(session::state);
    pictures(
        name,
        () -> {},
        size -> {
          desk.wall().scene().getWindow().setWidth(size.width());
          desk.wall().scene().getWindow().setHeight(size.height());
          return desk.wall().scene();
        },
        () -> {},
        () -> desk.wall().look(room, moment));
  }

  private interface Sized {
    Scene at(Size size);
  }

  /**
   * @param moment brought about before each, outside the window's thread
   * @param place moves the page to where it is to be seen
   * @param then done at once before each picture
   */
  private void pictures(String name, Runnable moment, Sized scene, Runnable place, Runnable then) {
    for (Shade shade : List.of(Shade.LIGHT, Shade.DARK)) {
      for (Size size : SIZES) {
        one(shade, size, name, moment, scene, place, then);
      }
    }
  }

  private void one(
      Shade shade,
      Size size,
      String name,
      Runnable moment,
      Sized scene,
      Runnable place,
      Runnable then) {
    String picture = name + "-" + shade.name().toLowerCase(Locale.ROOT) + "-" + size.name();
    if (!ONLY.matcher(picture).matches()) {
      leftOut++;
      return;
    }
    moment.run();
    Scene[] sized = new Scene[1];
    robot.interact(
        () -> {
          desk.begin(new WindowOptions(WindowOptions.Way.DOOR, "", "", "", forOthers, shade));
          sized[0] = scene.at(size);
        });
    WaitForAsyncUtils.waitForFxEvents();
    WaitForAsyncUtils.waitForFxEvents();
    robot.interact(place::run);
    WaitForAsyncUtils.waitForFxEvents();
    WritableImage[] made = new WritableImage[1];
    robot.interact(
        () -> {
          then.run();
          made[0] = sized[0].snapshot(null);
        });
    if (!LANGUAGE.equals(Locale.ENGLISH)) {
      robot.interact(
          () ->
              EnglishLeft.under(sized[0].getRoot())
                  .forEach(left -> english.add(name + ": " + left)));
    }
    if (sized[0] != stage.getScene()) {
      assertThat(desk.wall().fits()).as("%s at %s", name, size.name()).isTrue();
    }
    pictures.add(() -> write(made[0], into.resolve(picture + ".png")));
  }

  /**
   * Puts the pictures on disk; answers how many were asked for, with those left out by {@code
   * pictures.only}. None in another language may show English.
   */
  final int written() throws IOException {
    for (Written one : pictures) {
      one.write();
    }
    assertThat(english).as("still English").isEmpty();
    return pictures.size() + leftOut;
  }
}

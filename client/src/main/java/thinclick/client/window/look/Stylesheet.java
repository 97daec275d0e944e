package thinclick.client.window.look;

import java.nio.charset.StandardCharsets;
import java.util.Base64;

/** The palette and the size of text as a stylesheet, laid under {@code paper.css}. */
public final class Stylesheet {
  private Stylesheet() {}

  /** The shapes and distances, which do not change. */
  public static String shapes() {
    return Stylesheet.class.getResource("paper.css").toExternalForm();
  }

  /**
   * The colours and the size, as an address that a scene takes among its stylesheets.
   *
   * @param textSize pixels of running text
   */
  public static String of(Palette palette, double textSize) {
    String css =
        ".root {"
            + colour("paper", palette.paper())
            + colour("sheet", palette.sheet())
            + colour("band", palette.band())
            + colour("ink", palette.ink())
            + colour("soft", palette.soft())
            + colour("early", palette.early())
            + colour("late", palette.late())
            + colour("rule", palette.rule())
            + "-fx-font-family: \"Source Serif 4\";"
            + "-fx-font-size: "
            + textSize
            + "px;}";
    return "data:text/css;base64,"
        + Base64.getEncoder().encodeToString(css.getBytes(StandardCharsets.UTF_8));
  }

  private static String colour(String name, int colour) {
    return "-tc-" + name + ": " + Palette.web(colour) + ";";
  }
}

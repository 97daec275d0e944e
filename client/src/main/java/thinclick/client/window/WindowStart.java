package thinclick.client.window;

import java.util.logging.Logger;
import javafx.application.Application;
import thinclick.client.window.look.EvenLetters;
import thinclick.protocol.json.BadInput;

/** Opens the window and returns when it has been closed. */
public final class WindowStart {
  /** Complains at every start that the toolkit lies in our one jar, where it is meant to lie. */
  private static final Logger TOOLKIT = Logger.getLogger("javafx");

  private WindowStart() {}

  /**
   * Opens it; called once in a process.
   *
   * @throws BadInput where there is no display to open it on
   */
  public static void open(WindowOptions options) {
    if (System.getProperty("os.name").equals("Linux")
        && System.getenv("DISPLAY") == null
        && System.getProperty("glass.platform") == null) {
      throw new BadInput(
          "DISPLAY",
          "expected a display for the window, found none; rehearse and stand-in need none");
    }
    TOOLKIT.setFilter(record -> !String.valueOf(record.getMessage()).contains("unnamed module"));
    EvenLetters.ask(System.getProperties());
    Application.launch(WindowApp.class, options.arguments());
  }
}

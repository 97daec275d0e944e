package thinclick.client.window;

import javafx.application.Application;

/** Opens the window and returns when it has been closed. */
public final class WindowStart {
  private WindowStart() {}

  /** Opens it; called once in a process. */
  public static void open(WindowOptions options) {
    Application.launch(WindowApp.class, options.arguments());
  }
}

package thinclick.client.window;

import java.util.concurrent.Executor;
import javafx.application.Platform;

/** The one place where work crosses to the window's thread. */
final class WindowThread implements Executor {
  static final WindowThread INSTANCE = new WindowThread();

  private WindowThread() {}

  /** Runs soon, in the order handed in; dropped once the window has closed. */
  @Override
  public void execute(Runnable task) {
    try {
      Platform.runLater(task);
    } catch (IllegalStateException closed) {
      // The toolkit is gone, and with it everything that could be shown.
    }
  }
}

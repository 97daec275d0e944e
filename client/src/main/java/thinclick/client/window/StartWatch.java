package thinclick.client.window;

import java.lang.management.ManagementFactory;
import javafx.application.Platform;
import javafx.scene.Scene;

/**
 * Says how long the window took from the start of the process to its third frame, where it is asked
 * for by {@code -Dthinclick.start=say}, and then ends: for the bench, and for making the archive of
 * classes that the next start is quicker with.
 */
final class StartWatch {
  private static final int FRAMES = 3;

  private int left = FRAMES;

  private StartWatch() {}

  /** Watches a scene where it is asked for. */
  static void watch(Scene scene) {
    if ("say".equals(System.getProperty("thinclick.start"))) {
      StartWatch watch = new StartWatch();
      scene.addPostLayoutPulseListener(watch::frame);
    }
  }

  private void frame() {
    left--;
    if (left == 0) {
      long started = ManagementFactory.getRuntimeMXBean().getStartTime();
      System.out.println("third frame after ms: " + (System.currentTimeMillis() - started));
      Platform.exit();
    } else if (left > 0) {
      Platform.requestNextPulse();
    }
  }
}

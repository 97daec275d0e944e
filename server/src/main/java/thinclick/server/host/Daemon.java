package thinclick.server.host;

import java.util.concurrent.ThreadFactory;

/** Threads that keep no process alive, by the name under which a dump shows them. */
final class Daemon {
  private Daemon() {}

  static ThreadFactory called(String name) {
    return task -> {
      Thread made = new Thread(task, name);
      made.setDaemon(true);
      return made;
    };
  }
}

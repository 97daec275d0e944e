package thinclick.protocol.time;

import java.util.concurrent.ThreadFactory;

/** Threads that keep no process alive, by the name under which a dump of all threads shows them. */
public final class Daemon {
  private Daemon() {}

  /** Makes such threads, all of that name. */
  public static ThreadFactory called(String name) {
    return task -> {
      Thread made = new Thread(task, name);
      made.setDaemon(true);
      return made;
    };
  }
}

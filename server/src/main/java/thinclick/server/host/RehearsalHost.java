package thinclick.server.host;

import java.util.concurrent.CompletableFuture;
import thinclick.protocol.json.BadInput;
import thinclick.server.net.Listener;

/** A running host of rooms: one port, one database, any number of rooms. */
public final class RehearsalHost implements AutoCloseable {
  private final Listener listener;

  private RehearsalHost(Listener listener) {
    this.listener = listener;
  }

  /**
   * Opens the database, listens, and answers once both are done.
   *
   * @throws BadInput where the address, the port or the database cannot be had, in one line
   */
  public static RehearsalHost start(HostOptions options) {
    return new RehearsalHost(Listener.bind(options.host(), options.port()));
  }

  /** The port it listens on. */
  public int port() {
    return listener.port();
  }

  /**
   * Completes when everything that had reached the host before this call has been worked through:
   * events handled, rows committed, reviews made, answers handed to the sockets. For tests that
   * move the clock in lock step; bytes still under way in a socket are not seen.
   */
  public CompletableFuture<Void> settled() {
    return listener.settled();
  }

  /** Tells the rooms, ends their takes, writes what is left, and lets the port go. */
  @Override
  public void close() {
    listener.close();
  }
}

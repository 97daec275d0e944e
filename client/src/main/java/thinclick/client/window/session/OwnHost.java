package thinclick.client.window.session;

import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.InstantSource;
import java.util.Locale;
import java.util.concurrent.CompletableFuture;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import thinclick.client.link.RoomAddress;
import thinclick.protocol.json.BadInput;
import thinclick.server.host.ClassBook;
import thinclick.server.host.HostOptions;
import thinclick.server.host.RehearsalHost;
import thinclick.server.words.Speaker;

/** The host in this window, where it has opened a room itself. */
final class OwnHost {
  private static final Logger LOG = LoggerFactory.getLogger(OwnHost.class);
  private static final String EVERYWHERE = "0.0.0.0";
  private static final String DATABASE = "rooms.db";
  private static final int KNOCK_MILLIS = 500;

  /** In the network, where nobody's name is told. */
  private static final String CALLED = "Thinclick";

  private final Path data;
  private final Locale language;
  private volatile @Nullable RehearsalHost host;
  private volatile CompletableFuture<Void> closed = CompletableFuture.completedFuture(null);

  /**
   * @param language of the reviews and deals that it says
   */
  OwnHost(Path data, Locale language) {
    this.data = data;
    this.language = language;
  }

  /**
   * Starts a host, once the one before has let the database go. It takes a moment: not on the
   * window's thread.
   */
  RehearsalHost start(boolean forOthers) {
    closed.join();
    HostOptions options = HostOptions.local(data.resolve(DATABASE)).speaking(language);
    if (!forOthers) {
      return RehearsalHost.start(options);
    }
    HostOptions announced = options.announcedAs(CALLED);
    try {
      return RehearsalHost.start(announced.at(EVERYWHERE, HostOptions.USUAL_PORT));
    } catch (BadInput taken) {
      LOG.info("port {} is not to be had: {}", HostOptions.USUAL_PORT, taken.getMessage());
      return RehearsalHost.start(announced.at(EVERYWHERE, 0));
    }
  }

  /**
   * Starts the host again that this program was when it died, which takes a moment.
   *
   * @param was where its room was to be found
   * @return null where the room was another's: elsewhere, or at a host that still answers
   */
  @Nullable RehearsalHost startAgain(RoomAddress was) {
    closed.join();
    boolean mine = was.onThisComputer() && Files.exists(data.resolve(DATABASE));
    return mine && !answers(was) ? start(was.uri().getPort() == HostOptions.USUAL_PORT) : null;
  }

  private static boolean answers(RoomAddress host) {
    InetSocketAddress there =
        new InetSocketAddress(InetAddress.getLoopbackAddress(), host.uri().getPort());
    try (Socket line = new Socket()) {
      line.connect(there, KNOCK_MILLIS);
      return true;
    } catch (IOException nobody) {
      return false;
    }
  }

  private Path database() {
    return data.resolve(DATABASE);
  }

  /** True where something has been kept here already. */
  boolean hasKept() {
    return Files.exists(database());
  }

  /** Works on the classes, of the running host or of what one has kept. It waits for the disk. */
  <T> T classes(Function<ClassBook, T> work) {
    RehearsalHost running = host;
    if (running != null) {
      return work.apply(running.classes());
    }
    closed.join();
    try (ClassBook book =
        ClassBook.open(database(), null, InstantSource.system(), Speaker.of(language))) {
      return work.apply(book);
    }
  }

  /** From now on this one is the window's. */
  void is(RehearsalHost started) {
    host = started;
  }

  /** The host, null where none runs here. */
  @Nullable RehearsalHost running() {
    return host;
  }

  /** Ends the host, if there is one. */
  void end() {
    RehearsalHost ending = host;
    host = null;
    if (ending != null) {
      close(ending);
    }
  }

  /** Ends a host that was started here; one that is started after it waits until it is closed. */
  void close(RehearsalHost ending) {
    // Closing waits for the room's last rows; the window does not.
    CompletableFuture<Void> done = new CompletableFuture<>();
    closed = done;
    Thread closer =
        new Thread(
            () -> {
              try {
                ending.close();
              } finally {
                done.complete(null);
              }
            },
            "host-close");
    closer.start();
  }
}

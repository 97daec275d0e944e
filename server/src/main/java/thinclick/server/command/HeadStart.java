package thinclick.server.command;

import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Executor;
import org.jspecify.annotations.Nullable;
import org.slf4j.LoggerFactory;
import thinclick.protocol.json.BadInput;
import thinclick.server.host.HostOptions;
import thinclick.server.net.Port;
import thinclick.server.store.Store;

/**
 * What {@code serve} begins before its options are properly read, since reading them takes as long
 * as all the rest: the port is bound, so that nobody who comes meanwhile is turned away, and beside
 * the reading the log and the database are got through what takes long at first use only.
 *
 * <p>The port is a guess from the plainest reading of the arguments. It is kept where the options
 * come to the same, and let go where they do not.
 */
final class HeadStart {
  private static final String HOST = "--host";
  private static final String PORT = "--port";

  /** Whoever says one of these wants no port, or names it elsewhere. */
  private static final Set<String> ELSEWHERE =
      Set.of("--config", "--print-config", "--help", "-h", "--version", "-V");

  private final Port port;
  private final CompletableFuture<Void> log;

  private HeadStart(Port port) {
    this.port = port;
    // The log by itself: who asks for a logger while another thread makes the first has a stopgap.
    this.log = CompletableFuture.runAsync(() -> LoggerFactory.getLogger(HeadStart.class), beside());
    var unused = log.thenRunAsync(Store::warmUp, beside());
  }

  private static Executor beside() {
    return task -> {
      Thread made = new Thread(task, "thinclick-head-start");
      made.setDaemon(true);
      made.start();
    };
  }

  /** Null where the arguments do not plainly ask for a port, or for one that cannot be had. */
  static @Nullable HeadStart of(String[] arguments) {
    Port guessed = guess(arguments);
    return guessed == null ? null : new HeadStart(guessed);
  }

  /** The port that was bound where it is the one that is asked for, else that one. */
  Port port(String host, int number) {
    log.join();
    if (port.isAt(host, number)) {
      return port;
    }
    port.close();
    return Port.bind(host, number);
  }

  static @Nullable Port guess(String[] arguments) {
    if (arguments.length == 0 || !arguments[0].equals("serve")) {
      return null;
    }
    String host = HostOptions.HERE;
    String port = String.valueOf(HostOptions.USUAL_PORT);
    for (int i = 1; i < arguments.length; i++) {
      String name = name(arguments[i]);
      if (arguments[i].startsWith("@") || ELSEWHERE.contains(name)) {
        return null;
      }
      boolean joined = name.length() < arguments[i].length();
      if ((!name.equals(HOST) && !name.equals(PORT)) || (!joined && i + 1 == arguments.length)) {
        continue;
      }
      String value = joined ? arguments[i].substring(name.length() + 1) : arguments[++i];
      if (name.equals(HOST)) {
        host = value;
      } else {
        port = value;
      }
    }
    try {
      return Port.bind(host, Integer.parseInt(port));
    } catch (BadInput | IllegalArgumentException said) {
      return null; // said in full by who reads the options properly
    }
  }

  private static String name(String argument) {
    int end = argument.indexOf('=');
    return argument.startsWith("--") && end > 0 ? argument.substring(0, end) : argument;
  }
}

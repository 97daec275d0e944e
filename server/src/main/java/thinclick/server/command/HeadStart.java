package thinclick.server.command;

import org.jspecify.annotations.Nullable;
import thinclick.protocol.json.BadInput;
import thinclick.server.host.HostOptions;
import thinclick.server.net.Port;

/**
 * The port of {@code serve}, bound before its options are properly read: reading them and opening
 * the database take most of a second, and whoever comes meanwhile need not be turned away. What is
 * bound here is a guess from the plainest reading of the arguments; {@link ServeCommand} keeps it
 * where the options come to the same, and binds for itself where they do not.
 */
final class HeadStart {
  private static final String HOST = "--host";
  private static final String PORT = "--port";

  /** Whoever says one of these wants no port, or names it elsewhere. */
  private static final String ELSEWHERE = " --config --print-config --help -h --version -V ";

  private HeadStart() {}

  /** Null where the arguments do not plainly ask for a port, or for one that cannot be had. */
  static @Nullable Port of(String[] arguments) {
    if (arguments.length == 0 || !arguments[0].equals("serve")) {
      return null;
    }
    String host = HostOptions.HERE;
    String port = String.valueOf(HostOptions.USUAL_PORT);
    for (int i = 1; i < arguments.length; i++) {
      String name = name(arguments[i]);
      if (arguments[i].startsWith("@") || ELSEWHERE.contains(" " + name + " ")) {
        return null;
      }
      boolean joined = name.length() < arguments[i].length();
      if (!name.equals(HOST) && !name.equals(PORT) || !joined && i + 1 == arguments.length) {
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

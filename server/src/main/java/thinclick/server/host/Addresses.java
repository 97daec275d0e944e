package thinclick.server.host;

import java.net.Inet4Address;
import java.net.Inet6Address;
import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.SocketException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;

/** The numbers by which this computer is reached. */
final class Addresses {
  private static final List<String> ALONE = List.of("127.0.0.1");

  private static final Comparator<InetAddress> LIKELIEST =
      Comparator.<InetAddress, Boolean>comparing(address -> address instanceof Inet6Address)
          .thenComparing(address -> !address.isSiteLocalAddress());

  private Addresses() {}

  /**
   * By which a port bound to that address is reached from elsewhere: numbers of version 4 first,
   * those of one network before public ones; this computer's own loop where there is no other.
   */
  static List<String> reached(InetAddress bound) {
    if (!bound.isAnyLocalAddress()) {
      return List.of(shown(bound));
    }
    List<String> all =
        up().filter(Addresses::reachable).sorted(LIKELIEST).map(Addresses::shown).toList();
    return all.isEmpty() ? ALONE : all;
  }

  /** Of all network cards that are up, in the system's order. */
  static Stream<InetAddress> up() {
    List<InetAddress> found = new ArrayList<>();
    try {
      for (NetworkInterface each : Collections.list(NetworkInterface.getNetworkInterfaces())) {
        if (each.isUp()) {
          found.addAll(Collections.list(each.getInetAddresses()));
        }
      }
    } catch (SocketException unreadable) {
      return Stream.empty();
    }
    return found.stream();
  }

  private static boolean reachable(InetAddress address) {
    return !address.isLoopbackAddress() && !address.isLinkLocalAddress();
  }

  /** Without the name of the network card, which means nothing elsewhere. */
  private static String shown(InetAddress address) {
    String number = address.getHostAddress();
    int card = address instanceof Inet4Address ? -1 : number.indexOf('%');
    return card < 0 ? number : number.substring(0, card);
  }
}

package thinclick.server.net;

import java.net.Inet6Address;
import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.SocketException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.util.Collections;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.server.room.RoomWord;

/**
 * Who may open rooms here, and how long their words are.
 *
 * @param hostKey what somebody at another computer must show to open a room; null: nobody there may
 * @param syllables of a new room word
 */
public record Door(@Nullable String hostKey, int syllables) {
  /** Words are longer where strangers from all over can try them. */
  public static Door of(InetAddress bound, @Nullable String hostKey) {
    return new Door(hostKey, reachable(bound) ? RoomWord.PUBLIC : RoomWord.LOCAL);
  }

  private static boolean reachable(InetAddress bound) {
    List<InetAddress> addresses = bound.isAnyLocalAddress() ? all() : List.of(bound);
    return addresses.stream().anyMatch(Door::isPublic);
  }

  private static List<InetAddress> all() {
    try {
      return Collections.list(NetworkInterface.getNetworkInterfaces()).stream()
          .flatMap(NetworkInterface::inetAddresses)
          .toList();
    } catch (SocketException unknown) {
      return List.of();
    }
  }

  /** Neither of this computer alone nor of a network of one house. */
  static boolean isPublic(InetAddress address) {
    boolean house =
        address.isLoopbackAddress() || address.isLinkLocalAddress() || address.isSiteLocalAddress();
    boolean uniqueLocal =
        address instanceof Inet6Address && (address.getAddress()[0] & 0xfe) == 0xfc;
    return !house && !uniqueLocal;
  }

  /** True where somebody at that address, showing that key, may open a room. */
  boolean opensTo(InetAddress from, @Nullable String shown) {
    String key = hostKey;
    return from.isLoopbackAddress()
        || (key != null
            && shown != null
            && MessageDigest.isEqual(
                key.getBytes(StandardCharsets.UTF_8), shown.getBytes(StandardCharsets.UTF_8)));
  }
}

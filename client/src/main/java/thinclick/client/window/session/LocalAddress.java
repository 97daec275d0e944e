package thinclick.client.window.session;

import java.net.Inet4Address;
import java.net.InetAddress;
import java.net.NetworkInterface;
import java.net.SocketException;
import java.util.Collections;

/** The address by which other computers of the network find this one. */
final class LocalAddress {
  private static final String ALONE = "127.0.0.1";

  private LocalAddress() {}

  /** The first address that is not this computer's own loop; that one where there is no other. */
  static String find() {
    try {
      for (NetworkInterface each : Collections.list(NetworkInterface.getNetworkInterfaces())) {
        if (!each.isUp() || each.isLoopback() || each.isPointToPoint()) {
          continue;
        }
        for (InetAddress address : Collections.list(each.getInetAddresses())) {
          if (address instanceof Inet4Address && !address.isLinkLocalAddress()) {
            return address.getHostAddress();
          }
        }
      }
    } catch (SocketException unreadable) {
      return ALONE;
    }
    return ALONE;
  }
}

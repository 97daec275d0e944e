package thinclick.server.host;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.invite.Fingerprint;
import thinclick.protocol.json.BadInput;
import thinclick.server.identity.HostIdentity;
import thinclick.server.net.Door;
import thinclick.server.net.Lines;

/**
 * What stands between a host and the world, worked out before the port is bound.
 *
 * @param here true where it listens to this computer only
 * @param addresses by which it is reached, the likeliest first
 * @param fingerprint of the certificate that it shows; null for none
 */
record Threshold(
    boolean here,
    List<String> addresses,
    Door door,
    Lines lines,
    @Nullable Fingerprint fingerprint) {
  /** Beside the database, since who has the one may as well have the other. */
  private static final String IDENTITY = ".identity.pem";

  static Threshold of(HostOptions options) {
    Reach reach = options.reach();
    InetAddress bound = resolved(reach.host());
    HostIdentity identity = identity(reach, bound, options.database());
    Lines lines =
        identity == null
            ? Lines.PLAIN
            : Lines.encrypted(
                identity,
                reach.encryption() == Encryption.ALL
                    ? Lines.From.NOWHERE
                    : Lines.From.THIS_COMPUTER);
    return new Threshold(
        bound.isLoopbackAddress(),
        Addresses.reached(bound),
        Door.of(bound, options.hostKey()),
        lines,
        identity == null ? null : identity.fingerprint());
  }

  static InetAddress resolved(String host) {
    try {
      return InetAddress.getByName(host);
    } catch (UnknownHostException unknown) {
      throw new BadInput(
          "--host", "expected a name or address of this computer, found \"" + host + "\"");
    }
  }

  private static @Nullable HostIdentity identity(Reach reach, InetAddress bound, Path database) {
    Path certificate = reach.certificate();
    Path key = reach.certificateKey();
    if (reach.encryption() == Encryption.NONE) {
      if (certificate != null || key != null) {
        throw new BadInput("--certificate", "expected none where nothing is encrypted");
      }
      return null;
    }
    if (certificate != null && key != null) {
      return HostIdentity.own(certificate, key);
    }
    if (certificate != null || key != null) {
      throw new BadInput("--certificate", "expected it together with --certificate-key");
    }
    if (bound.isLoopbackAddress() && reach.encryption() == Encryption.OTHERS) {
      return null; // there are no others
    }
    return HostIdentity.selfMade(database.resolveSibling(database.getFileName() + IDENTITY));
  }

  boolean encrypted() {
    return lines.encryption() != null;
  }
}

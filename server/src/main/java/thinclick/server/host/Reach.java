package thinclick.server.host;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/**
 * Where a host is reached, and how.
 *
 * @param host the address to listen on: a name or number of this computer
 * @param port 0 to 65535; 0 takes any free one
 * @param encryption who must come encrypted
 * @param certificate the operator's own, PEM; null: one is made and kept beside the database
 * @param certificateKey the key of that certificate, PEM; null only where that is
 * @param called by which name the local network hears of it; null: it does not
 * @param metricsToAll true where other computers may read {@code /metrics} as well
 */
public record Reach(
    String host,
    int port,
    Encryption encryption,
    @Nullable Path certificate,
    @Nullable Path certificateKey,
    @Nullable String called,
    boolean metricsToAll) {
  /** This computer alone, at a free port. */
  static final Reach HERE =
      new Reach(HostOptions.HERE, 0, Encryption.OTHERS, null, null, null, false);

  Reach at(String otherHost, int otherPort) {
    return new Reach(
        otherHost, otherPort, encryption, certificate, certificateKey, called, metricsToAll);
  }

  Reach encrypting(Encryption other) {
    return new Reach(host, port, other, certificate, certificateKey, called, metricsToAll);
  }

  Reach calledInTheNetwork(String name) {
    return new Reach(host, port, encryption, certificate, certificateKey, name, metricsToAll);
  }

  Reach showing(Path ownCertificate, Path key) {
    return new Reach(host, port, encryption, ownCertificate, key, called, metricsToAll);
  }

  Reach withMetricsToAll() {
    return new Reach(host, port, encryption, certificate, certificateKey, called, true);
  }
}

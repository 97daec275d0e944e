package thinclick.server.net;

import io.netty.handler.ssl.SslContext;
import io.netty.handler.ssl.SslContextBuilder;
import io.netty.handler.ssl.SslProvider;
import java.net.InetAddress;
import javax.net.ssl.SSLException;
import org.jspecify.annotations.Nullable;
import thinclick.server.identity.HostIdentity;

/**
 * Which lines are taken. Encrypted and plain ones come to the same port and are told apart by their
 * first bytes.
 *
 * @param encryption null: no encrypted line is taken
 * @param plain from where a line that is not encrypted is taken
 */
public record Lines(@Nullable SslContext encryption, From plain) {
  /** From where. */
  public enum From {
    NOWHERE,
    THIS_COMPUTER,
    ANYWHERE
  }

  /** Without encryption. */
  public static final Lines PLAIN = new Lines(null, From.ANYWHERE);

  /** Encrypted with this identity, TLS 1.2 or 1.3. */
  public static Lines encrypted(HostIdentity identity, From plain) {
    try {
      return new Lines(
          SslContextBuilder.forServer(identity.key(), identity.chain())
              .sslProvider(SslProvider.JDK)
              .protocols("TLSv1.3", "TLSv1.2")
              .build(),
          plain);
    } catch (SSLException impossible) {
      throw new IllegalStateException(impossible); // key and certificates were checked
    }
  }

  boolean takesPlain(InetAddress from) {
    return switch (plain) {
      case NOWHERE -> false;
      case THIS_COMPUTER -> from.isLoopbackAddress();
      case ANYWHERE -> true;
    };
  }
}

package thinclick.server.net;

import java.io.IOException;
import java.net.BindException;
import java.net.InetSocketAddress;
import java.nio.channels.ServerSocketChannel;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.json.BadInput;

/**
 * A port of this computer that is bound and listened to, whoever will answer there. Nobody who
 * comes is refused from now on: the system lets them in and keeps what they say until the host
 * reads.
 */
public final class Port implements AutoCloseable {
  /** How many may have come before the first is read. */
  private static final int WAITING = 1_024;

  private final String host;
  private final int asked;
  private final ServerSocketChannel channel;

  private Port(String host, int asked, ServerSocketChannel channel) {
    this.host = host;
    this.asked = asked;
    this.channel = channel;
  }

  /**
   * Binds and listens.
   *
   * @param host an address of this computer, by name or number
   * @param number 0 to 65535; 0 takes any free one
   * @throws BadInput where the address is not this computer's or the port is taken
   */
  public static Port bind(String host, int number) {
    InetSocketAddress address = new InetSocketAddress(host, number);
    if (address.isUnresolved()) {
      throw new BadInput(
          "--host", "expected a name or address of this computer, found \"" + host + "\"");
    }
    ServerSocketChannel channel = null;
    try {
      channel = ServerSocketChannel.open();
      channel.bind(address, WAITING);
      return new Port(host, number, channel);
    } catch (IOException refused) {
      close(channel);
      throw refused(host, number, refused);
    }
  }

  private static BadInput refused(String host, int number, IOException cause) {
    if (cause instanceof BindException && String.valueOf(cause.getMessage()).contains("in use")) {
      return new BadInput(
          "--port", "expected a free port on " + host + ", found " + number + " in use");
    }
    return new BadInput(
        "--host",
        "expected an address of this computer, found \""
            + host
            + "\" with port "
            + number
            + " ("
            + cause.getMessage()
            + ")");
  }

  /** True where this is what would be bound for the same question. */
  public boolean isAt(String otherHost, int number) {
    return host.equals(otherHost) && asked == number;
  }

  ServerSocketChannel channel() {
    return channel;
  }

  /** Lets it go. */
  @Override
  public void close() {
    close(channel);
  }

  private static void close(@Nullable ServerSocketChannel channel) {
    try {
      if (channel != null) {
        channel.close();
      }
    } catch (IOException gone) {
      // It is not held any longer.
    }
  }
}

package thinclick.client.link;

import java.net.URI;
import java.net.URISyntaxException;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.message.MessageCodec;

/**
 * Where a server listens.
 *
 * @param uri {@code ws} or {@code wss}, a host, a port and the path of the conversation
 */
public record RoomAddress(URI uri) {
  private static final String EXPECTED = "expected an address such as ws://192.168.1.20:7070, ";

  /** Reads {@code ws://host:port}, {@code wss://host:port} or {@code host:port} (plain). */
  public static RoomAddress parse(String written) {
    String full = written.contains("://") ? written : "ws://" + written;
    URI uri;
    try {
      uri = new URI(full.strip());
    } catch (URISyntaxException wrong) {
      throw bad(written);
    }
    boolean known = "ws".equals(uri.getScheme()) || "wss".equals(uri.getScheme());
    if (!known || uri.getHost() == null || uri.getPort() < 1 || uri.getPort() > 65_535) {
      throw bad(written);
    }
    return of(uri.getScheme(), uri.getHost(), uri.getPort());
  }

  /** A server on this computer, without encryption. */
  public static RoomAddress local(int port) {
    return of("ws", "127.0.0.1", port);
  }

  private static RoomAddress of(String scheme, String host, int port) {
    return new RoomAddress(URI.create(scheme + "://" + host + ":" + port + MessageCodec.PATH));
  }

  private static BadInput bad(String written) {
    return new BadInput("server", EXPECTED + "found \"" + written + "\"");
  }

  /** True where the line is encrypted. */
  public boolean encrypted() {
    return "wss".equals(uri.getScheme());
  }

  /** The host without the brackets of an IPv6 address. */
  String host() {
    String host = uri.getHost();
    return host.startsWith("[") ? host.substring(1, host.length() - 1) : host;
  }

  /** As a person writes it. */
  @Override
  public String toString() {
    return uri.getScheme() + "://" + uri.getHost() + ":" + uri.getPort();
  }
}

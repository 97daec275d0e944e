package thinclick.client.link;

import java.net.URI;
import java.net.URISyntaxException;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.invite.Fingerprint;
import thinclick.protocol.invite.JoinLink;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.message.MessageCodec;

/**
 * Where a server listens, and by what it is known.
 *
 * @param uri {@code ws} or {@code wss}, a host, a port and the path of the conversation
 * @param pin the fingerprint of the certificate it must show; null: none was promised
 */
public record RoomAddress(URI uri, @Nullable Fingerprint pin) {
  private static final String EXPECTED =
      "expected an address such as 192.168.1.20:7420 or a join link, ";
  private static final Pattern THIS_COMPUTER =
      Pattern.compile("localhost|127\\.\\d+\\.\\d+\\.\\d+|\\[::1]");

  /**
   * Reads a join link, {@code wss://host:port}, {@code ws://host:port} (plain) or {@code
   * host:port}, which is encrypted unless it is this computer.
   */
  public static RoomAddress parse(String written) {
    String text = written.strip();
    if (JoinLink.isOne(text)) {
      return of(JoinLink.parse(text));
    }
    URI uri;
    try {
      uri = new URI(text.contains("://") ? text : "wss://" + text);
    } catch (URISyntaxException wrong) {
      throw bad(written);
    }
    boolean known = "ws".equals(uri.getScheme()) || "wss".equals(uri.getScheme());
    if (!known || uri.getHost() == null || uri.getPort() < 1 || uri.getPort() > 65_535) {
      throw bad(written);
    }
    boolean here = !text.contains("://") && THIS_COMPUTER.matcher(uri.getHost()).matches();
    return of(here ? "ws" : uri.getScheme(), uri.getHost(), uri.getPort(), null);
  }

  /** The host that a join link leads to. */
  public static RoomAddress of(JoinLink link) {
    String host = link.host().contains(":") ? "[" + link.host() + "]" : link.host();
    return of(link.plain() ? "ws" : "wss", host, link.port(), link.pin());
  }

  /** A server on this computer, without encryption. */
  public static RoomAddress local(int port) {
    return of("ws", "127.0.0.1", port, null);
  }

  private static RoomAddress of(String scheme, String host, int port, @Nullable Fingerprint pin) {
    return new RoomAddress(URI.create(scheme + "://" + host + ":" + port + MessageCodec.PATH), pin);
  }

  private static BadInput bad(String written) {
    return new BadInput("server", EXPECTED + "found \"" + written + "\"");
  }

  /** True where the host is reached without a network. */
  public boolean onThisComputer() {
    return THIS_COMPUTER.matcher(uri.getHost()).matches();
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

  /** As people say it to each other, such as {@code 192.168.1.20:7420}. */
  public String said() {
    return uri.getHost() + ":" + uri.getPort();
  }

  /** All that is known of it, as a join link, into a room where {@code word} is given. */
  public JoinLink link(@Nullable String word) {
    return new JoinLink(host(), uri.getPort(), word, pin, !encrypted());
  }

  /** As a person writes it; the pin is left out. */
  @Override
  public String toString() {
    return uri.getScheme() + "://" + said();
  }
}

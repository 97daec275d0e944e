package thinclick.protocol.invite;

import java.nio.charset.StandardCharsets;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.json.Check;

/**
 * What a host says of itself in the local network by multicast DNS (RFC 6762, RFC 6763), so that it
 * need not be typed. Room words are not among it, since they let people in; nor is the certificate,
 * since anybody in the network can say this.
 *
 * @param name what the host is called, 1 to 63 bytes
 * @param host the number it is reached by
 * @param port 1 to 65535
 * @param plain true where it takes lines that are not encrypted from others
 */
public record HostNotice(String name, String host, int port, boolean plain) {
  /** The kind of service, as multicast DNS writes it. */
  public static final String KIND = "_thinclick._tcp.local.";

  private static final String LINE = "line";
  private static final String PLAIN = "plain";
  private static final String ENCRYPTED = "encrypted";
  private static final int LONGEST_NAME = 63;

  public HostNotice {
    int bytes = name.getBytes(StandardCharsets.UTF_8).length;
    if (bytes == 0 || bytes > LONGEST_NAME || name.codePoints().anyMatch(Character::isISOControl)) {
      throw new BadInput("name", "expected 1 to 63 bytes of text, found \"" + name + "\"");
    }
    Check.range("port", port, 1L, 65_535);
  }

  /** The text record. */
  public Map<String, String> text() {
    return Map.of("v", "1", LINE, plain ? PLAIN : ENCRYPTED);
  }

  /**
   * Reads one.
   *
   * @param line the value of {@code line} in its text record, null where there is none
   * @throws BadInput where it cannot be understood
   */
  public static HostNotice of(String name, String host, int port, @Nullable String line) {
    if (!PLAIN.equals(line) && !ENCRYPTED.equals(line)) {
      throw new BadInput(LINE, "expected plain or encrypted, found " + line);
    }
    return new HostNotice(name, host, port, PLAIN.equals(line));
  }

  /** The key of the text record that {@link #of} asks for. */
  public static String lineKey() {
    return LINE;
  }

  /** The way to it, without a room and without a pin. */
  public JoinLink link() {
    return new JoinLink(host, port, null, null, plain);
  }
}

package thinclick.protocol.invite;

import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.json.Check;

/**
 * Everything that is needed to come into a room, in one line that can be sent, clicked or
 * photographed:
 *
 * <pre>
 * thinclick://192.168.1.20:7420/kodamine?pin=9Jx...   the certificate with this fingerprint
 * thinclick://rehearse.example:7420/kodamine          a certificate of a known authority
 * thinclick://127.0.0.1:7420/kodamine?plain           not encrypted
 * thinclick://192.168.1.20:7420/?pin=9Jx...           the host, without a room
 * </pre>
 *
 * <p>Parameters that are not known are ignored, so that a later host may say more.
 *
 * @param host a name or number; one of IP version 6 without brackets
 * @param port 1 to 65535
 * @param word the room word in the form it is kept; null: the host is meant, not a room
 * @param pin the certificate's fingerprint; null: none is promised
 * @param plain true where the line is not encrypted; then there is no pin
 */
public record JoinLink(
    String host, int port, @Nullable String word, @Nullable Fingerprint pin, boolean plain) {
  private static final Pattern FORM =
      Pattern.compile(
          "(?i:thinclick)://(?:\\[([0-9a-fA-F:.]+)]|([A-Za-z0-9](?:[A-Za-z0-9.-]*[A-Za-z0-9])?))"
              + ":(\\d{1,5})(?:/([A-Za-z-]{0,32}))?(?:\\?([A-Za-z0-9_=&-]*))?");
  private static final Pattern NAME = Pattern.compile("[A-Za-z0-9](?:[A-Za-z0-9.-]*[A-Za-z0-9])?");
  private static final Pattern NUMBER_6 = Pattern.compile("[0-9a-fA-F:.]*:[0-9a-fA-F:.]*");
  private static final Pattern WORD = Pattern.compile("[a-z]{1,32}");
  private static final int LONGEST_HOST = 253;

  public JoinLink {
    if (host.length() > LONGEST_HOST
        || !(NAME.matcher(host).matches() || NUMBER_6.matcher(host).matches())) {
      throw new BadInput("host", "expected a name or number of a computer, found \"" + host + "\"");
    }
    Check.range("port", port, 1L, 65_535);
    if (word != null && !WORD.matcher(word).matches()) {
      throw new BadInput("word", "expected 1 to 32 small letters, found \"" + word + "\"");
    }
    if (plain && pin != null) {
      throw new BadInput("plain", "expected either a pin or a plain line, found both");
    }
  }

  /** True where the text claims to be such a link, well formed or not. */
  public static boolean isOne(String text) {
    return text.strip().regionMatches(true, 0, "thinclick:", 0, "thinclick:".length());
  }

  /** Reads a link; spaces around it do not matter. */
  public static JoinLink parse(String text) {
    Matcher form = FORM.matcher(text.strip());
    if (!form.matches()) {
      throw new BadInput(
          "link",
          "expected a join link such as thinclick://192.168.1.20:7420/kodamine?pin=..., found \""
              + text.strip()
              + "\"");
    }
    String number = form.group(1);
    String name = form.group(2);
    String called = form.group(4);
    String word =
        called == null || called.isEmpty()
            ? null
            : called.toLowerCase(Locale.ROOT).replace("-", "");
    Fingerprint pin = null;
    boolean plain = false;
    for (String parameter : form.group(5) == null ? new String[0] : form.group(5).split("&", -1)) {
      if (parameter.startsWith("pin=")) {
        if (pin != null) {
          throw new BadInput("link", "expected one pin, found two");
        }
        pin = new Fingerprint(parameter.substring("pin=".length()));
      } else if (parameter.equals("plain")) {
        plain = true;
      }
    }
    return new JoinLink(
        number != null ? number : Check.present("host", name),
        Integer.parseInt(form.group(3)),
        word,
        pin,
        plain);
  }

  /** The same with another word. */
  public JoinLink to(@Nullable String otherWord) {
    return new JoinLink(host, port, otherWord, pin, plain);
  }

  /** As it is sent; {@link #parse} reads it back to an equal value. */
  @Override
  public String toString() {
    String named = host.contains(":") ? "[" + host + "]" : host;
    String trust = plain ? "?plain" : pin == null ? "" : "?pin=" + pin;
    return "thinclick://" + named + ":" + port + "/" + (word == null ? "" : word) + trust;
  }
}

package thinclick.protocol.message;

import java.nio.charset.StandardCharsets;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.message.TakeNews.Heard;
import thinclick.protocol.message.TakeNews.HeardAttack;

/**
 * Writes {@code heard}, the one message that goes out by the thousand, letter for letter as the
 * general writer does.
 */
final class HeardText {
  private static final int AN_ITEM = 64;

  private HeardText() {}

  /** The text; null where it holds what JSON escapes, which is left to the general writer. */
  static byte @Nullable [] of(Heard heard) {
    StringBuilder text = new StringBuilder(AN_ITEM + AN_ITEM * heard.items().size());
    text.append("{\"type\":\"heard\",\"takeId\":");
    boolean plain = string(text, heard.takeId());
    text.append(",\"items\":[");
    String comma = "";
    for (HeardAttack item : heard.items()) {
      text.append(comma).append("{\"playerId\":");
      plain &= string(text, item.playerId());
      text.append(",\"seq\":").append(item.seq()).append(",\"micros\":").append(item.micros());
      if (item.asynchronyMillis() != null) {
        double millis = item.asynchronyMillis();
        plain &= Double.isFinite(millis);
        text.append(",\"asynchronyMillis\":").append(millis);
      }
      if (item.judgement() != null) {
        text.append(",\"judgement\":");
        plain &= string(text, item.judgement());
      }
      if (item.again()) {
        text.append(",\"again\":true");
      }
      text.append('}');
      comma = ",";
    }
    text.append("]}");
    return plain ? text.toString().getBytes(StandardCharsets.ISO_8859_1) : null;
  }

  /** Appends it in quotes; false where a character is not plain ASCII. */
  private static boolean string(StringBuilder text, @Nullable String value) {
    if (value == null) {
      return false;
    }
    for (int i = 0; i < value.length(); i++) {
      char c = value.charAt(i);
      if (c < ' ' || c > '~' || c == '"' || c == '\\') {
        return false;
      }
    }
    text.append('"').append(value).append('"');
    return true;
  }
}

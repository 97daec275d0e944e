package thinclick.server.watch;

import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.classic.spi.IThrowableProxy;
import ch.qos.logback.classic.spi.StackTraceElementProxy;
import ch.qos.logback.core.LayoutBase;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import org.slf4j.event.KeyValuePair;
import thinclick.protocol.json.Visible;

/**
 * One line an event, whatever is in it: {@code time= level= in=}, the event's own values, {@code
 * says=} and, of a fault, {@code fault=} with where it was. Named by {@code logback.xml}.
 *
 * <p>Values may come from strangers: what would end the line, colour the terminal or turn its
 * direction is written as {@code \}{@code u001b}, quotes and backslashes with a backslash, and
 * after 200 characters a value is cut.
 */
public final class LogLine extends LayoutBase<ILoggingEvent> {
  /** Of one value, as written. */
  static final int LONGEST_VALUE = 200;

  private static final int LONGEST_FAULT = 4_000;
  private static final int FRAMES = 12;

  @Override
  public String doLayout(ILoggingEvent event) {
    StringBuilder line = new StringBuilder(160);
    String logger = event.getLoggerName();
    line.append("time=")
        .append(Instant.ofEpochMilli(event.getTimeStamp()).truncatedTo(ChronoUnit.MILLIS))
        .append(" level=")
        .append(event.getLevel())
        .append(" in=")
        .append(logger.substring(logger.lastIndexOf('.') + 1));
    List<KeyValuePair> values = event.getKeyValuePairs();
    if (values != null) {
      for (KeyValuePair each : values) {
        line.append(' ').append(each.key).append('=');
        value(line, String.valueOf(each.value));
      }
    }
    line.append(" says=");
    quoted(line, String.valueOf(event.getFormattedMessage()), LONGEST_VALUE);
    IThrowableProxy fault = event.getThrowableProxy();
    if (fault != null) {
      line.append(" fault=");
      quoted(line, told(fault), LONGEST_FAULT);
    }
    return line.append(System.lineSeparator()).toString();
  }

  /** As it is where it is one word of ours, else in quotes. */
  private static void value(StringBuilder line, String value) {
    boolean plain =
        !value.isEmpty()
            && value.length() <= LONGEST_VALUE
            && value.chars().allMatch(c -> c > ' ' && c < 0x7f && "\"\\=".indexOf(c) < 0);
    if (plain) {
      line.append(value);
    } else {
      quoted(line, value, LONGEST_VALUE);
    }
  }

  private static void quoted(StringBuilder line, String text, int longest) {
    line.append('"');
    int end = line.length() + longest;
    int point;
    for (int at = 0; at < text.length(); at += Character.charCount(point)) {
      point = text.codePointAt(at);
      String shown = shown(point);
      if (line.length() + shown.length() > end) {
        line.append("...");
        break;
      }
      line.append(shown);
    }
    line.append('"');
  }

  private static String shown(int point) {
    if (point == '"' || point == '\\') {
      return "\\" + (char) point;
    }
    return Visible.shown(point);
  }

  private static String told(IThrowableProxy fault) {
    StringBuilder told = new StringBuilder();
    for (IThrowableProxy each = fault; each != null; each = each.getCause()) {
      told.append(each == fault ? "" : " | because ")
          .append(each.getClassName())
          .append(": ")
          .append(each.getMessage());
      StackTraceElementProxy[] frames = each.getStackTraceElementProxyArray();
      for (int i = 0; i < Math.min(FRAMES, frames.length); i++) {
        told.append(" | ").append(frames[i].getSTEAsString());
      }
    }
    return told.toString();
  }
}

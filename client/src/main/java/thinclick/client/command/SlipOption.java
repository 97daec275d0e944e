package thinclick.client.command;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import thinclick.client.standin.Slip;
import thinclick.protocol.json.BadInput;

/** Reads {@code 9-12:1}: bars 9 to 12, both included, late by one step. */
final class SlipOption {
  private static final Pattern WRITTEN = Pattern.compile("(\\d{1,6})-(\\d{1,6}):(-?\\d{1,3})");

  private SlipOption() {}

  static Slip parse(String written) {
    Matcher matcher = WRITTEN.matcher(written);
    if (!matcher.matches()) {
      throw new BadInput(
          "--displaced", "expected bars and steps such as 9-12:1, found \"" + written + "\"");
    }
    int from = Integer.parseInt(matcher.group(1));
    int to = Integer.parseInt(matcher.group(2));
    if (from < 1 || to < from) {
      throw new BadInput(
          "--displaced", "expected bars from 1 on, the first not after the last, found " + written);
    }
    return new Slip(from - 1, to, Integer.parseInt(matcher.group(3)));
  }
}

package thinclick.server.material;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.BiFunction;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.Feel;
import thinclick.protocol.file.FreeBars;
import thinclick.protocol.json.BadInput;

/**
 * What is asked of single chairs, as it is typed: a feel ({@code "comping 25"}, {@code "ride 0
 * -10"} on the beats and off them) and bars to be played freely ({@code "comping 5-8 of 8"}).
 * Several stand with commas between; without a role or a chair's name it goes for all.
 */
public final class ChairWishes {
  private static final Pattern FEEL =
      Pattern.compile("(?:(.*?\\D)\\s+)??([+-]?\\d{1,3})(?:\\s+([+-]?\\d{1,3}))?");
  private static final Pattern FREE =
      Pattern.compile(
          "(?:(.*?\\D)\\s+)??(\\d{1,4})(?:\\s*[-\u2013]\\s*(\\d{1,4}))?"
              + "(?:\\s+(?:of|of every|von|von je)\\s+(\\d{1,4}))?");

  private ChairWishes() {}

  /**
   * The chairs with the feel that is asked of them.
   *
   * @param where what a refusal names
   */
  public static List<Drill.Chair> feel(String where, List<Drill.Chair> chairs, String typed) {
    return each(
        where,
        FEEL,
        "a role and milliseconds, late positive, such as \"comping 25\" or \"ride 0 -10\"",
        chairs,
        typed,
        (chair, read) -> {
          int onbeat = Integer.parseInt(read.group(2));
          int offbeat = read.group(3) == null ? onbeat : Integer.parseInt(read.group(3));
          return chair.edited().feelMillis(new Feel(onbeat, offbeat)).chair();
        });
  }

  /**
   * The chairs with the bars that they play freely, counted from 1 as they are read.
   *
   * @param where what a refusal names
   */
  public static List<Drill.Chair> free(String where, List<Drill.Chair> chairs, String typed) {
    return each(
        where,
        FREE,
        "a role and bars, such as \"comping 5-8 of 8\"",
        chairs,
        typed,
        (chair, read) -> {
          int from = Integer.parseInt(read.group(2));
          int to = read.group(3) == null ? from : Integer.parseInt(read.group(3));
          @Nullable Integer every = read.group(4) == null ? null : Integer.valueOf(read.group(4));
          List<FreeBars> free = new ArrayList<>(chair.free());
          free.add(new FreeBars(from - 1, to, every));
          return chair.edited().free(free).chair();
        });
  }

  private static List<Drill.Chair> each(
      String field,
      Pattern form,
      String expected,
      List<Drill.Chair> chairs,
      String typed,
      BiFunction<Drill.Chair, Matcher, Drill.Chair> change) {
    List<Drill.Chair> changed = new ArrayList<>(chairs);
    for (String wish : typed.split("[,;]", -1)) {
      Matcher read = form.matcher(wish.strip());
      if (!read.matches()) {
        throw new BadInput(field, "expected " + expected + ", found \"" + wish.strip() + "\"");
      }
      @Nullable String name = read.group(1);
      boolean found = false;
      for (int i = 0; i < changed.size(); i++) {
        Drill.Chair chair = changed.get(i);
        if (name == null || called(chair, name.strip())) {
          found = true;
          try {
            changed.set(i, change.apply(chair, read));
          } catch (BadInput wrong) {
            throw new BadInput(field, wrong.says() + " in \"" + wish.strip() + "\"");
          }
        }
      }
      if (!found) {
        throw new BadInput(
            field,
            "expected a role or a chair of the drill, "
                + String.join(", ", chairs.stream().map(ChairWishes::name).distinct().toList())
                + ", found \""
                + name
                + "\"");
      }
    }
    return changed;
  }

  private static boolean called(Drill.Chair chair, String name) {
    String folded = name.toLowerCase(Locale.ROOT);
    return folded.equals(chair.chair().toLowerCase(Locale.ROOT))
        || (chair.role() != null && folded.equals(chair.role().toLowerCase(Locale.ROOT)));
  }

  private static String name(Drill.Chair chair) {
    return chair.role() == null ? chair.chair() : chair.role();
  }
}

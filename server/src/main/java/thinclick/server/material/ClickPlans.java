package thinclick.server.material;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.music.Meter;

/** Reads click plans as people type them. */
public final class ClickPlans {
  private static final String TO = " to ";

  /** Short for what is long to type, and what rungs were called before. */
  private static final Map<String, Rung> SHORT =
      Map.ofEntries(
          Map.entry("the one", Rung.FIRST_ONLY),
          Map.entry("first only", Rung.FIRST_ONLY),
          Map.entry("last only", Rung.LAST_ONLY),
          Map.entry("every second bar", Rung.EVERY_SECOND_BAR),
          Map.entry("every fourth bar", Rung.EVERY_FOURTH_BAR),
          Map.entry("ands", Rung.ANDS),
          Map.entry("last and", Rung.LAST_AND),
          Map.entry("none", Rung.NONE),
          Map.entry("the first beat alone", Rung.FIRST_ONLY),
          Map.entry("the last beat alone", Rung.LAST_ONLY));

  private ClickPlans() {}

  /**
   * Rungs in order: {@code "first only"}, {@code "P4"}, {@code "one and three"} in 4/4, several
   * with commas between, a ladder with {@code to}: {@code "all beats to every second bar"}.
   *
   * @param groups how the beats of a bar stand together, or null for the usual
   */
  public static List<Rung> parse(
      String where, String written, Meter meter, @Nullable List<Integer> groups) {
    Map<String, Rung> names = names(meter, groups);
    @Nullable Rung whole = names.get(Nearest.folded(written));
    if (whole != null) {
      return List.of(whole);
    }
    List<Rung> rungs = new ArrayList<>();
    for (String piece : written.split(",", -1)) {
      String folded = Nearest.folded(piece);
      int to = folded.indexOf(TO);
      if (to >= 0) {
        rungs.addAll(
            ClickLadder.between(
                rung(where, folded.substring(0, to), names),
                rung(where, folded.substring(to + TO.length()), names),
                meter,
                groups));
      } else {
        rungs.add(rung(where, piece, names));
      }
    }
    return List.copyOf(rungs);
  }

  private static Rung rung(String where, String name, Map<String, Rung> names) {
    @Nullable Rung found = names.get(Nearest.folded(name));
    if (found == null) {
      throw new BadInput(
          where,
          "expected a click plan, found \""
              + name.strip()
              + "\"; "
              + Nearest.didYouMean(name, Rung.names()));
    }
    return found;
  }

  private static Map<String, Rung> names(Meter meter, @Nullable List<Integer> groups) {
    Map<String, Rung> names = new LinkedHashMap<>(SHORT);
    for (Rung rung : Rung.values()) {
      names.putIfAbsent(rung.plainName(), rung);
      names.putIfAbsent(rung.nameIn(meter, groups), rung);
      names.putIfAbsent(Nearest.folded(rung.number().toLowerCase(Locale.ROOT)), rung);
    }
    return names;
  }
}

package thinclick.server.season;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.DealtFigure;
import thinclick.protocol.file.Part;
import thinclick.server.words.Quantity;
import thinclick.server.words.Said;
import thinclick.server.words.Speaker;

/** The next deal fitted to each chair: at which level each stands, and why each got what. */
public final class Fitting {
  private Fitting() {}

  /**
   * The levels that a deal is to be fitted to.
   *
   * @param here names, as they are in the room
   * @return 1 to 10 by those names; who has no verdict yet is left out, and plays what is written
   */
  public static Map<String, Integer> levels(Season season, List<String> here) {
    Map<String, Integer> levels = new LinkedHashMap<>();
    for (String name : here) {
      standing(season, name).ifPresent(standing -> levels.put(name, standing.level()));
    }
    return levels;
  }

  private static Optional<Standing> standing(Season season, String name) {
    return season.pupil(name).flatMap(Pupil::standing);
  }

  /**
   * A sentence for each part that was dealt to somebody of the class: "Mina stands at level 4 (96 %
   * held of parts at level 3 over the last two takes with a verdict): the harder rhythm, level 4."
   * Stand-ins are left out.
   */
  public static List<String> sentences(Season season, List<Part> dealt, Speaker speaker) {
    List<String> says = new ArrayList<>();
    for (Part part : dealt) {
      if (part.standIn()) {
        continue;
      }
      Optional<Standing> standing = standing(season, part.player());
      says.add(
          speaker.say(
              standing.isEmpty()
                  ? Said.of("season.fit.unknown", part.player())
                  : Said.of(
                      "season.fit",
                      part.player(),
                      standing.get().level(),
                      Quantity.percent(standing.get().holdPercent()),
                      standing.get().played(),
                      standing.get().takes(),
                      Speaker.number(standing.get().takes()),
                      Said.of(figure(part.figure())),
                      part.level() == null ? "-" : Integer.toString(part.level()))));
    }
    return says;
  }

  private static String figure(@Nullable DealtFigure figure) {
    if (figure == null) {
      return "season.fit.written";
    }
    return switch (figure) {
      case EASIER -> "season.fit.easier";
      case HARDER -> "season.fit.harder";
    };
  }
}

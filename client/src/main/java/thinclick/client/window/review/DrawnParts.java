package thinclick.client.window.review;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.look.PictureParts.Part;
import thinclick.server.picture.Drawing;

/**
 * The parts of a drawing that belong together, from its items: what is drawn over each other, the
 * words beside it, the line of words close above and close below a plot, which are its scale's name
 * and the numbers of its ticks, the rows of counts below those, and lines of words below each other
 * with the key above them. In the drawing's own units.
 */
final class DrawnParts {
  /** No plot is higher; what is, is the ground of rows. */
  private static final double HIGHEST = 160;

  /** What is at least so high has a scale, or stands on one. */
  private static final double PLOT = 40;

  private static final double TOUCHING = 1;
  private static final double CLOSE = 13;

  /** Rows of figures are no further apart, lines of words a little more. */
  private static final double ROWS = 5;

  private static final double LINES = 7;

  private DrawnParts() {}

  static List<Part> of(Drawing drawing) {
    List<Part> drawn = new ArrayList<>();
    List<Part> words = new ArrayList<>();
    for (Drawing.Item item : drawing.items()) {
      Part part = part(item);
      if (item instanceof Drawing.Words) {
        words.add(part);
      } else if (part.foot() - part.top() < HIGHEST) {
        add(drawn, part, TOUCHING);
      }
    }
    List<Part> parts = new ArrayList<>(drawn);
    words.stream().filter(word -> meets(drawn, word)).forEach(word -> add(parts, word, 0));
    parts.replaceAll(part -> isPlot(part) ? withScale(part, words) : part);
    List<Part> captions = new ArrayList<>();
    words.stream().filter(word -> !meets(parts, word)).forEach(word -> add(captions, word, LINES));
    captions.forEach(caption -> addWithKey(parts, caption));
    return parts;
  }

  private static boolean isPlot(Part part) {
    return part.foot() - part.top() >= PLOT;
  }

  private static void addWithKey(List<Part> parts, Part caption) {
    List<Part> keys =
        parts.stream()
            .filter(part -> !isPlot(part) && part.foot() <= caption.top())
            .filter(part -> caption.top() - part.foot() < LINES)
            .toList();
    parts.removeAll(keys);
    parts.add(keys.stream().reduce(caption, Part::with));
  }

  private static boolean meets(List<Part> parts, Part word) {
    return parts.stream().anyMatch(part -> part.top() < word.foot() && word.top() < part.foot());
  }

  /** Adds one, together with all that it meets. */
  private static void add(List<Part> parts, Part more, double air) {
    Part all = more;
    for (Part part = met(parts, all, air); part != null; part = met(parts, all, air)) {
      parts.remove(part);
      all = all.with(part);
    }
    parts.add(all);
  }

  private static @Nullable Part met(List<Part> parts, Part all, double air) {
    return parts.stream()
        .filter(part -> part.top() <= all.foot() + air && all.top() <= part.foot() + air)
        .findFirst()
        .orElse(null);
  }

  private static Part withScale(Part plot, List<Part> words) {
    Part all = plot;
    for (Part word : words) {
      double below = word.top() - plot.foot();
      double above = plot.top() - word.foot();
      if ((below > -TOUCHING && below < CLOSE) || (above > -TOUCHING && above < CLOSE)) {
        all = all.with(word);
      }
    }
    for (Part row = next(all, words); row != null; row = next(all, words)) {
      all = all.with(row);
    }
    return all;
  }

  private static @Nullable Part next(Part all, List<Part> words) {
    return words.stream()
        .filter(word -> word.foot() > all.foot() && word.top() - all.foot() < ROWS)
        .findFirst()
        .orElse(null);
  }

  private static Part part(Drawing.Item item) {
    if (item instanceof Drawing.Line line) {
      double half = line.thickness() / 2;
      return new Part(Math.min(line.y1(), line.y2()) - half, Math.max(line.y1(), line.y2()) + half);
    }
    if (item instanceof Drawing.Box box) {
      return new Part(box.y(), box.y() + box.height());
    }
    if (item instanceof Drawing.Disc disc) {
      return new Part(disc.y() - disc.radius(), disc.y() + disc.radius());
    }
    Drawing.Words words = (Drawing.Words) item;
    return new Part(words.y() - 0.75 * words.size(), words.y() + 0.25 * words.size());
  }
}

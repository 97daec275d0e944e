package thinclick.client.window.stand;

import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.server.engraving.Engraver;
import thinclick.server.engraving.Reading;
import thinclick.server.engraving.StaffSystem;
import thinclick.server.material.WrittenPart;

/**
 * How large a part's music is on its place of the page, and how it is cut into lines: fewer bars
 * before smaller music, and no staff space under 8 pixels where any cut holds that.
 *
 * @param systems the lines
 * @param space a staff space, pixels
 * @param others how many lines of other players stand below each
 */
record SheetFit(List<StaffSystem> systems, double space, int others) {
  /** A staff space of usual size, read from a metre away, pixels. */
  static final double USUAL_SPACE = 12;

  static final double LEAST_SPACE = 8;
  static final double MOST_SPACE = 28;

  /** Between two lines, staff spaces. */
  static final double GAP_SPACES = 1.2;

  /** So much smaller a staff may become to keep a period's bars in one line. */
  private static final double GIVE = 0.75;

  /** Where not even one bar fits otherwise. */
  private static final double SMALLEST_SPACE = 3;

  /**
   * Where a part stands.
   *
   * @param width pixels
   * @param height pixels
   * @param scale how large text and music are wanted, 1 is usual
   * @param lanes how many players read it, each with marks in a lane of their own
   * @param others how many lines of other players are wanted below
   * @param click false where the click stands above another part of the page
   */
  record Space(double width, double height, double scale, int lanes, int others, boolean click) {
    private double wanted() {
      double high = height / SystemView.usualSpaces(lanes);
      double asked = Math.max(LEAST_SPACE, Math.min(MOST_SPACE, USUAL_SPACE * scale));
      return Math.max(SMALLEST_SPACE, Math.min(asked, high));
    }
  }

  /** The least staff space where several parts share a page; larger text asks for more. */
  static double floor(double scale) {
    return Math.min(MOST_SPACE, LEAST_SPACE * Math.max(1, scale));
  }

  /** How high the part is at the least, in one line with its last bar read ahead; pixels. */
  static double leastHeight(
      WrittenPart part, double width, double scale, int lanes, boolean click) {
    double floor = floor(scale);
    Reading reading = least(part, width / floor);
    if (reading == null) {
      reading = DealtPart.reading(part, 1);
    }
    double space = Math.min(floor, width / narrowest(reading));
    List<StaffSystem> laid = systems(reading, width / space, click);
    return Math.ceil(tallest(laid, lanes, 0) * space) + 1;
  }

  /** Fits a part into its place. */
  static SheetFit of(WrittenPart part, Space place) {
    double width = place.width();
    double wanted = place.wanted();
    int bars = Reading.barsPerSystem(part);
    Reading reading = DealtPart.reading(part, bars);
    double narrowest = narrowest(reading);
    while (bars > 1 && narrowest * Math.max(Math.min(wanted, LEAST_SPACE), wanted * GIVE) > width) {
      bars = bars == 3 ? 1 : bars / 2;
      reading = DealtPart.reading(part, bars);
      narrowest = narrowest(reading);
    }
    double space = Math.max(SMALLEST_SPACE, Math.min(wanted, width / narrowest));
    int lanes = place.lanes();
    int others = place.others();
    List<StaffSystem> laid = systems(reading, width / space, place.click());
    if (laid.size() > 1) {
      // Two lines, so that the next is read before it is needed; the others' lines give way first.
      double two = (place.height() - space * GAP_SPACES) / 2 - 1;
      while (others > 0 && tallest(laid, lanes, others) * LEAST_SPACE > two) {
        others--;
      }
      // Smaller music is laid out anew, and may then be a little higher in its own spaces.
      while (place.scale() <= 1
          && space > LEAST_SPACE
          && tallest(laid, lanes, others) * space > two) {
        space = Math.max(LEAST_SPACE, Math.min(space * 0.98, two / tallest(laid, lanes, others)));
        laid = systems(reading, width / space, place.click());
      }
    }
    if (laid.size() > 1 && slots(tallest(laid, lanes, others), space, place.height()) == 1) {
      reading = lookingAhead(part, width / wanted);
      space = Math.max(SMALLEST_SPACE, Math.min(wanted, width / narrowest(reading)));
      laid = systems(reading, width / space, place.click());
    }
    // One line at least must be seen whole, with its marks.
    while (space > SMALLEST_SPACE && tallest(laid, lanes, others) * space > place.height()) {
      double most = place.height() / tallest(laid, lanes, others);
      space = Math.max(SMALLEST_SPACE, Math.min(space * 0.98, most));
      laid = systems(reading, width / space, place.click());
    }
    SheetFit fit = new SheetFit(laid, space, others);
    return space < LEAST_SPACE ? fit.orAtTheLeast(part, place) : fit;
  }

  /** The least space that is read well, wherever a line with fewer bars holds it. */
  private SheetFit orAtTheLeast(WrittenPart part, Space place) {
    Reading reading = least(part, place.width() / LEAST_SPACE);
    if (reading == null) {
      return this;
    }
    List<StaffSystem> laid = systems(reading, place.width() / LEAST_SPACE, place.click());
    boolean holds = tallest(laid, place.lanes(), 0) * LEAST_SPACE <= place.height();
    return holds ? new SheetFit(laid, LEAST_SPACE, 0) : this;
  }

  /** How many lines stand on a page that is so high. */
  static int slots(double tallest, double space, double height) {
    double gap = space * GAP_SPACES;
    return (int) Math.max(1, Math.floor((height + gap) / (tallest * space + gap)));
  }

  /**
   * Where one line fits, its last bar is the first of the line after it, so that what comes next is
   * always in view; as many bars as that leaves room for.
   */
  private static Reading lookingAhead(WrittenPart part, double spaces) {
    Reading ahead = widestAhead(part, spaces);
    return ahead == null ? DealtPart.lookingAhead(part, 1) : ahead;
  }

  /** The widest reading that so many spaces hold; null where not even a bar fits. */
  private static @Nullable Reading least(WrittenPart part, double spaces) {
    Reading ahead = widestAhead(part, spaces);
    if (ahead != null) {
      return ahead;
    }
    Reading bar = DealtPart.reading(part, 1);
    return narrowest(bar) <= spaces ? bar : null;
  }

  private static @Nullable Reading widestAhead(WrittenPart part, double spaces) {
    for (int bars = Reading.MOST_BARS - 1; bars > 0; bars--) {
      Reading wider = DealtPart.lookingAhead(part, bars);
      if (narrowest(wider) <= spaces) {
        return wider;
      }
    }
    return null;
  }

  private static double narrowest(Reading reading) {
    return Engraver.narrowest(reading.part(), reading.plans());
  }

  private static List<StaffSystem> systems(Reading reading, double width, boolean click) {
    return Engraver.systems(reading.part(), reading.plans(), width, click);
  }

  private static double tallest(List<StaffSystem> laid, int lanes, int others) {
    return laid.stream()
        .mapToDouble(system -> SystemView.spaces(system, lanes, others))
        .max()
        .orElse(1);
  }
}

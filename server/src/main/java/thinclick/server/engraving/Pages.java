package thinclick.server.engraving;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.function.IntFunction;
import thinclick.server.material.WrittenPart;
import thinclick.server.material.pitch.Key;
import thinclick.server.words.SheetWords;

/** Lays parts out on paper: one chair, or a handout of one part in many keys. */
public final class Pages {
  private static final double MARGIN_MM = 15;

  /** From the paper's edge to the line that names the page, in the lower margin. */
  private static final double FOOT_MM = 10;

  private static final double LARGEST_SPACE_MM = 1.75;
  private static final double SMALLEST_ON_A_STAND_MM = 1.35;
  private static final double SMALLEST_IN_THE_HAND_MM = 1.25;

  /** Under so large a part of the largest staff, half as many bars a system are tried. */
  private static final double ROOMY = 0.85;

  private static final List<Double> SMALLER = List.of(0.96, 0.92, 0.88);
  private static final double BETWEEN_SYSTEMS = 2.6;
  private static final double BETWEEN_SECTIONS = 3.6;
  private static final double SMALL_SIZE = 1.6;
  private static final double SECTION_SIZE = 2.6;

  private final Paper paper;
  private final double spaceMm;
  private final List<List<Mark>> pages = new ArrayList<>();
  private double y;

  private Pages(Paper paper, double spaceMm) {
    this.paper = paper;
    this.spaceMm = spaceMm;
  }

  /** One chair's part through all stages of the click. */
  public static List<Page> part(WrittenPart written, Paper paper, Cut cut) {
    SheetWords said = SheetWords.in(written.heading().language());
    String title = written.heading().title() + ", " + written.heading().chair();
    return largest(
        List.of(written),
        bars -> List.of(Reading.wholeTake(written, bars, cut)),
        paper,
        SMALLEST_ON_A_STAND_MM,
        fit -> {
          Pages pages = new Pages(paper, fit.spaceMm());
          pages.newPage();
          pages.heading(new PartHeading(written, false));
          pages.systems(fit.readings().get(0));
          return pages.finished(title, said);
        });
  }

  /** All chairs, each beginning on a page of its own. */
  public static List<Page> parts(List<WrittenPart> written, Paper paper, Cut cut) {
    return written.stream().flatMap(part -> part(part, paper, cut).stream()).toList();
  }

  /**
   * One part in several keys on a common handout, the click of the plan's beginning above each.
   *
   * @param keys the same part in each key, in the order they are to stand
   */
  public static List<Page> handout(List<WrittenPart> keys, Paper paper, Cut cut) {
    SheetWords said = SheetWords.in(keys.get(0).heading().language());
    String title = keys.get(0).heading().title() + ", " + said.say("sheet.allKeys");
    return largest(
        keys,
        bars -> keys.stream().map(key -> Reading.once(key, bars, cut)).toList(),
        paper,
        SMALLEST_IN_THE_HAND_MM,
        fit -> {
          Pages pages = new Pages(paper, fit.spaceMm());
          pages.newPage();
          pages.heading(new PartHeading(keys.get(0), true));
          for (int i = 0; i < keys.size(); i++) {
            pages.section(keys.get(i), fit.readings().get(i));
          }
          return pages.finished(title, said);
        });
  }

  /**
   * As many bars a system as fit; half of them, and a larger staff, where that is small otherwise
   * and needs no more pages.
   */
  private static List<Page> largest(
      List<WrittenPart> written,
      IntFunction<List<Reading>> readings,
      Paper paper,
      double smallestMm,
      Function<Fit, List<Page>> layOut) {
    Fit most = fit(readings, paper, smallestMm, Reading.barsPerSystem(written.get(0)));
    List<Page> pages = fewest(most, layOut);
    if (most.spaceMm() < LARGEST_SPACE_MM * ROOMY && most.bars() > 1) {
      List<Page> larger = layOut.apply(fit(readings, paper, smallestMm, fewer(most.bars())));
      return larger.size() <= pages.size() ? larger : pages;
    }
    return pages;
  }

  /** Makes the staff up to an eighth smaller where that saves a page. */
  private static List<Page> fewest(Fit fit, Function<Fit, List<Page>> layOut) {
    List<Page> best = layOut.apply(fit);
    for (double part : SMALLER) {
      double smaller = fit.spaceMm() * part;
      if (best.size() > 1 && smaller >= fit.smallestMm()) {
        List<Page> tried = layOut.apply(fit.with(smaller));
        best = tried.size() < best.size() ? tried : best;
      }
    }
    return best;
  }

  /** The size of a staff space and the readings that fit with it, of so many bars a system. */
  private record Fit(double spaceMm, double smallestMm, int bars, List<Reading> readings) {
    Fit with(double otherMm) {
      return new Fit(otherMm, smallestMm, bars, readings);
    }
  }

  /**
   * The most bars in a system for which the staff does not become too small, and the largest staff
   * for them.
   */
  private static Fit fit(
      IntFunction<List<Reading>> readings, Paper paper, double smallestMm, int most) {
    double available = paper.width() - 2 * MARGIN_MM;
    int bars = most;
    while (true) {
      List<Reading> tried = readings.apply(bars);
      double narrowest =
          tried.stream()
              .mapToDouble(reading -> Engraver.narrowest(reading.part(), reading.plans()))
              .max()
              .orElse(1);
      double space = available / narrowest;
      if (space >= smallestMm || bars == 1) {
        return new Fit(Math.min(LARGEST_SPACE_MM, space), smallestMm, bars, tried);
      }
      bars = fewer(bars);
    }
  }

  private static int fewer(int bars) {
    return bars == 3 ? 1 : bars / 2;
  }

  private double left() {
    return MARGIN_MM / spaceMm;
  }

  private double width() {
    return (paper.width() - 2 * MARGIN_MM) / spaceMm;
  }

  private double bottom() {
    return (paper.height() - MARGIN_MM) / spaceMm;
  }

  private void newPage() {
    pages.add(new ArrayList<>());
    y = MARGIN_MM / spaceMm;
  }

  private List<Mark> page() {
    return pages.get(pages.size() - 1);
  }

  private void heading(PartHeading heading) {
    y = heading.draw(page(), left(), left() + width(), y);
  }

  /** Below the heading; a page begins earlier where else the last one had a single system. */
  private void systems(Reading reading) {
    List<StaffSystem> systems = Engraver.systems(reading.part(), reading.plans(), width());
    List<Integer> firsts = firsts(systems);
    int last = firsts.get(firsts.size() - 1);
    if (firsts.size() > 1 && last == systems.size() - 1) {
      int before = firsts.get(firsts.size() - 2);
      int earlier = earlier(reading.plans(), before, last);
      firsts.set(firsts.size() - 1, earlier);
    }
    for (int i = 0; i < systems.size(); i++) {
      if (i > 0 && firsts.contains(i)) {
        newPage();
      }
      place(systems.get(i));
    }
  }

  /** The systems that begin pages where each page takes as many as it has room for. */
  private List<Integer> firsts(List<StaffSystem> systems) {
    List<Integer> firsts = new ArrayList<>(List.of(0));
    double at = y;
    for (int i = 0; i < systems.size(); i++) {
      if (at + systems.get(i).height() > bottom() && i > firsts.get(firsts.size() - 1)) {
        firsts.add(i);
        at = MARGIN_MM / spaceMm;
      }
      at += systems.get(i).height() + BETWEEN_SYSTEMS;
    }
    return firsts;
  }

  /**
   * Where the last page begins instead of with its only system: with the stage that this one
   * belongs to, in the later half of the page before; else one system earlier.
   */
  private static int earlier(List<SystemPlan> plans, int before, int last) {
    for (int i = last - 1; i > (before + last) / 2; i--) {
      if (!plans.get(i).direction().isEmpty()) {
        return i;
      }
    }
    return Math.max(before + 1, last - 1);
  }

  private void section(WrittenPart written, Reading reading) {
    SheetWords said = SheetWords.in(written.heading().language());
    Key key = written.writtenKey();
    Key concert = written.concertKey();
    String name = key == null ? "" : ReaderWords.signs(key, said);
    String sounding =
        concert == null || concert.equals(key)
            ? ""
            : said.say("sheet.concert", ReaderWords.signs(concert, said));
    double head = SECTION_SIZE + 0.4;
    boolean first = true;
    for (StaffSystem system : Engraver.systems(reading.part(), reading.plans(), width())) {
      if (first) {
        if (y + head + system.height() > bottom()) {
          newPage();
        }
        y += SECTION_SIZE * 0.75;
        Place place = Place.saying(name + " " + sounding);
        TextRun title = new TextRun(place, Ink.FULL, name, Face.SEMIBOLD, SECTION_SIZE);
        page().addAll(title.at(left(), y));
        double x = left() + title.width() + 1.2;
        page()
            .addAll(
                new TextRun(Place.NOWHERE, Ink.SOFT, sounding, Face.ITALIC, SMALL_SIZE * 1.2)
                    .at(x, y));
        y += 0.6;
        first = false;
      }
      if (y + system.height() > bottom()) {
        newPage();
      }
      place(system);
    }
    y += BETWEEN_SECTIONS - BETWEEN_SYSTEMS;
  }

  private void place(StaffSystem system) {
    double top = y;
    system.marks().forEach(mark -> page().add(mark.shifted(left(), top)));
    y = top + system.height() + BETWEEN_SYSTEMS;
  }

  private List<Page> finished(String title, SheetWords said) {
    List<Page> finished = new ArrayList<>();
    for (int i = 0; i < pages.size(); i++) {
      List<Mark> marks = pages.get(i);
      double foot = (paper.height() - FOOT_MM) / spaceMm;
      marks.add(small(title, left(), foot));
      String number = said.say("sheet.of", i + 1, pages.size());
      double x = left() + width() - Face.REGULAR.width(number, SMALL_SIZE);
      marks.add(small(number, x, foot));
      finished.add(new Page(paper.width(), paper.height(), spaceMm, title, marks));
    }
    return finished;
  }

  private static Mark small(String text, double x, double y) {
    return new Mark.Text(Place.NOWHERE, Ink.SOFT, text, Face.REGULAR, SMALL_SIZE, x, y);
  }
}

package thinclick.client.window.stand;

import java.util.List;
import java.util.stream.Stream;

/**
 * The lines of music as they are laid out for a page of one size: which of them stand in its
 * places, and where.
 */
final class LaidPages {
  /** Without music. */
  static final LaidPages NONE = new LaidPages(List.of(), StaffPlaces.NONE, List.of(), false);

  private final List<ScoreLine> lines;
  private final StaffPlaces places;
  private final List<String> held;
  private final List<PageTurn.Line> bars;
  private final boolean keepsOver;
  private final boolean withOthers;

  /**
   * @param lines in order
   * @param places of a page
   * @param held what reminds of the click in each bar
   * @param withOthers whether lines for other players stand below the part
   */
  LaidPages(List<ScoreLine> lines, StaffPlaces places, List<String> held, boolean withOthers) {
    this.lines = List.copyOf(lines);
    this.places = places;
    this.held = held;
    this.withOthers = withOthers;
    bars = lines.stream().map(ScoreLine::bars).toList();
    keepsOver = PageTurn.keepsOver(bars, count());
  }

  boolean isEmpty() {
    return lines.isEmpty();
  }

  ScoreLine line(int number) {
    return lines.get(number);
  }

  /** What is laid out of one staff, line by line. */
  Stream<SystemView> staff(int at) {
    return at < 0 ? Stream.of() : lines.stream().map(line -> line.staves().get(at));
  }

  /** How many lines stand on a page. */
  int count() {
    return places.lines().size();
  }

  /** Between the lines beside what the least distance takes, pixels. */
  double air() {
    return places.air();
  }

  /**
   * What stands on the page.
   *
   * @param bar that sounds, from 0; -1 where none does
   * @param resting the bar that is in view where none sounds
   */
  PageTurn turn(int bar, int resting) {
    return bar < 0
        ? PageTurn.page(lines.size(), count(), page(resting))
        : PageTurn.at(bars, count(), bar);
  }

  private int page(int resting) {
    return PageTurn.current(bars, resting) / count();
  }

  /** The bar that is in view once so many pages were turned over from one. */
  int leafed(int page, int by) {
    return PageTurn.firstPlayed(bars, PageTurn.leafed(bars, count(), page, by) * count());
  }

  /** The page in view; where no bar sounds from its first line's first bar to its last's end. */
  Leaf leaf(int resting, PageTurn turn) {
    List<PageTurn.Line> inView =
        turn.lines().stream().filter(line -> line != PageTurn.NOTHING).map(bars::get).toList();
    return new Leaf(
        page(resting),
        PageTurn.pages(lines.size(), count()),
        inView.get(0).firstBar(),
        inView.get(inView.size() - 1).endBar(),
        bars.get(bars.size() - 1).endBar(),
        keepsOver,
        withOthers);
  }

  /** Whether a bar sounds on one of some lines. */
  boolean plays(List<Integer> some, int bar) {
    return some.contains(PageTurn.current(bars, bar));
  }

  /** What clicks where a line begins, where no words above the line say it; else empty. */
  String reminds(int line) {
    boolean headed = lines.get(line).staves().get(0).headed();
    return headed ? "" : held.get(bars.get(line).firstBar());
  }

  /**
   * Where a line begins in a place, pixels from the page's top: its staves stand where those do
   * that are read there.
   */
  double top(int place, int line) {
    StaffPlaces.Line here = places.lines().get(place);
    StaffPlaces.Line usual = places.lines().get(line % count());
    return here.top() + here.middles().get(0) - usual.middles().get(0);
  }
}

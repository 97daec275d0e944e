package thinclick.client.window.stand;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import thinclick.client.window.stand.PageTurn.Line;

/** What a player can rely on while pages turn by themselves. */
class PageTurnTest {
  @Test
  void twoPlacesAreTurnedOneAfterTheOther() {
    List<Line> lines = lines(8, 4);
    assertThat(PageTurn.at(lines, 2, 0)).isEqualTo(new PageTurn(List.of(0, 1), 0));
    assertThat(PageTurn.at(lines, 2, 5)).isEqualTo(new PageTurn(List.of(0, 1), 0));
    assertThat(PageTurn.at(lines, 2, 6)).isEqualTo(new PageTurn(List.of(2, 1), 1));
    assertThat(PageTurn.at(lines, 2, 8)).isEqualTo(new PageTurn(List.of(2, 1), 1));
    assertThat(PageTurn.at(lines, 2, 9)).isEqualTo(new PageTurn(List.of(2, 3), 0));
  }

  @Test
  void theLastPageMayBeShort() {
    List<Line> lines = lines(3, 4);
    assertThat(PageTurn.at(lines, 2, 7)).isEqualTo(new PageTurn(List.of(2, 1), 1));
    assertThat(PageTurn.at(lines, 2, 9))
        .as("the lower place keeps the line it had")
        .isEqualTo(new PageTurn(List.of(2, 1), 1));
    assertThat(PageTurn.at(lines, 2, 11)).isEqualTo(new PageTurn(List.of(2, 1), 1));
    assertThat(PageTurn.at(lines(4, 4), 3, 10)).isEqualTo(new PageTurn(List.of(3, 1, 2), 1));
    assertThat(PageTurn.at(lines(4, 4), 3, 14)).isEqualTo(new PageTurn(List.of(3, 1, 2), 1));
    assertThat(PageTurn.at(lines(1, 4), 2, 3).lines()).containsExactly(0, PageTurn.NOTHING);
    assertThat(PageTurn.page(3, 2, 1).lines()).as("looked at").containsExactly(1, 2);
    assertThat(PageTurn.page(1, 2, 0).lines()).containsExactly(0, PageTurn.NOTHING);
    assertThat(PageTurn.pages(3, 2)).isEqualTo(2);
  }

  /** Lines, bars in each, places on a page. */
  @ParameterizedTest
  @CsvSource({"16, 4, 2", "16, 2, 2", "15, 3, 2", "16, 1, 2", "13, 4, 3", "9, 2, 4", "12, 1, 3"})
  void nothingThatIsReadMovesAndWhatComesNextIsInView(int count, int bars, int places) {
    List<Line> lines = lines(count, bars);
    int upsideDown = 0;
    for (int bar = 0; bar < count * bars; bar++) {
      int current = PageTurn.current(lines, bar);
      PageTurn now = PageTurn.at(lines, places, bar);
      int place = now.lines().indexOf(current);
      assertThat(place).as("bar %d is in view", bar + 1).isNotNegative();
      if (bar > 0 && PageTurn.current(lines, bar - 1) == current) {
        assertThat(PageTurn.at(lines, places, bar - 1).lines().indexOf(current))
            .as("bar %d stands where the one before stood", bar + 1)
            .isEqualTo(place);
      }
      if (bar + 1 < count * bars) {
        int next = PageTurn.current(lines, bar + 1);
        int to = PageTurn.at(lines, places, bar + 1).lines().indexOf(next);
        assertThat(now.lines().get(to)).as("after bar %d", bar + 1).isEqualTo(next);
      }
      List<Integer> seen = now.lines().stream().filter(line -> line >= 0).toList();
      boolean inOrder = seen.equals(seen.stream().sorted().toList());
      assertThat(now.turnedAbove() > 0).as("said at bar %d", bar + 1).isEqualTo(!inOrder);
      upsideDown += inOrder ? 0 : 1;
    }
    int turns = PageTurn.pages(count, places) - 1;
    int around = (bars + 1) / 2 + (bars > 1 || places > 2 ? 1 : 0);
    int last = count % places * bars;
    assertThat(PageTurn.keepsOver(lines, places))
        .as("of two bars in view one sounds and one comes")
        .isEqualTo(bars > 1 || places > 2);
    assertThat(upsideDown)
        .as("only around a turn and on a short last page")
        .isLessThanOrEqualTo(turns * around + last);
  }

  @Test
  void ofTwoThatHaveABarTheOneIsReadThatShowsTheNext() {
    List<Line> ahead = List.of(new Line(0, 4), new Line(3, 4), new Line(6, 3));
    assertThat(PageTurn.at(ahead, 1, 2).lines()).containsExactly(0);
    assertThat(PageTurn.at(ahead, 1, 3).lines()).containsExactly(1);
    assertThat(PageTurn.at(ahead, 1, 8).lines()).containsExactly(2);
  }

  /** Lines that stand alone on their page: how many bars, and how many each has in common. */
  @ParameterizedTest
  @CsvSource({"3, 2", "4, 2", "4, 3"})
  void aBarThatIsOverStaysInViewBesideTheOneThatComes(int bars, int common) {
    int step = bars - common;
    List<Line> lines =
        IntStream.range(0, 12).mapToObj(line -> new Line(line * step, bars)).toList();
    int end = lines.get(11).endBar();
    for (int bar = 0; bar < end; bar++) {
      Line line = lines.get(PageTurn.at(lines, 1, bar).lines().get(0));
      assertThat(line.firstBar()).as("before bar %d", bar + 1).isLessThan(Math.max(1, bar));
      assertThat(line.endBar())
          .as("after bar %d", bar + 1)
          .isGreaterThan(Math.min(bar + 1, end - 1));
    }
    for (int line = 0; line < lines.size(); line++) {
      int played = PageTurn.firstPlayed(lines, line);
      assertThat(PageTurn.current(lines, played)).isEqualTo(line);
    }
  }

  @Test
  void byHandALineIsTurnedToThatBringsMoreThanOneNewBar() {
    List<Line> lines = IntStream.range(0, 9).mapToObj(line -> new Line(line, 3)).toList();
    assertThat(PageTurn.leafed(lines, 1, 0, 1)).isEqualTo(2);
    assertThat(PageTurn.leafed(lines, 1, 0, 2)).isEqualTo(4);
    assertThat(PageTurn.leafed(lines, 1, 4, -1)).isEqualTo(2);
    assertThat(PageTurn.leafed(lines, 1, 1, -1)).isZero();
    assertThat(PageTurn.leafed(lines, 1, 7, 1)).isEqualTo(8);
    assertThat(PageTurn.leafed(lines, 1, 8, 1)).isEqualTo(8);
    assertThat(PageTurn.leafed(lines(8, 4), 2, 3, 1)).as("two lines on a page").isEqualTo(3);
    assertThat(PageTurn.leafed(lines(8, 4), 2, 1, 1)).isEqualTo(2);
  }

  private static List<Line> lines(int count, int bars) {
    return IntStream.range(0, count).mapToObj(line -> new Line(line * bars, bars)).toList();
  }
}

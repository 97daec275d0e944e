package thinclick.server.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.Take;
import thinclick.server.engraving.Paper;
import thinclick.server.scoring.Figure;
import thinclick.server.scoring.Interval;
import thinclick.server.scoring.Scorer;
import thinclick.server.words.Comparison;
import thinclick.server.words.Comparison.Kind;
import thinclick.server.words.Comparison.Row;
import thinclick.server.words.HardTakes;
import thinclick.server.words.Speaker;

/** Two takes beside each other: every column is as high as its figure, on one scale. */
class ComparePictureTest {
  private static final Pattern BAR = Pattern.compile("  (First|Second) +\\|([-=]*) ?(\\d*)");

  private static Comparison comparison() {
    Take first = HardTakes.turnedAround();
    List<Attack> fewer = new ArrayList<>();
    for (int i = 0; i < first.attacks().size(); i++) {
      Attack one = first.attacks().get(i);
      long wobble = Math.round(18_000 * Math.sin(i * 1.9));
      if (i % 7 != 0) {
        fewer.add(Attack.tap(one.player(), one.micros() + wobble));
      }
    }
    return Comparison.of(Scorer.analyse(first), Scorer.analyse(first.withAttacks(fewer)));
  }

  @Test
  void everyColumnIsAsHighAsItsFigure() {
    Comparison comparison = comparison();
    List<Row> rows = new ArrayList<>();
    List<Row> spreads = new ArrayList<>();
    for (Row row : comparison.rows()) {
      (row.kind() == Kind.HOLD ? rows : spreads).add(row);
    }
    double top = ComparePicture.top(spreads);
    rows.addAll(spreads);
    List<Drawing.Item> items = ComparePicture.of(comparison, Speaker.english()).items();
    List<Drawing.Box> columns =
        items.stream()
            .flatMap(one -> one instanceof Drawing.Box box ? Stream.of(box) : Stream.of())
            .filter(box -> box.width() == ComparePicture.COLUMN)
            .toList();
    List<Drawing.Line> strokes =
        items.stream()
            .flatMap(one -> one instanceof Drawing.Line line ? Stream.of(line) : Stream.of())
            .filter(line -> line.thickness() == 1.2)
            .toList();

    // Eight groups: the band, three clicks, four players; all figures of this take are known.
    assertThat(rows).hasSize(16).allMatch(row -> row.first().known() && row.second().known());
    assertThat(columns).hasSize(32);
    int stroke = 0;
    for (int i = 0; i < columns.size(); i++) {
      Row row = rows.get(i / 2);
      boolean second = i % 2 == 1;
      Figure figure = second ? row.second() : row.first();
      double unit = ComparePicture.PLOT / (row.kind() == Kind.HOLD ? 100 : top);
      Drawing.Box column = columns.get(i);
      assertThat(column.height()).isCloseTo(unit * figure.get(), within(1e-6));
      assertThat(column.tint()).isEqualTo(second ? Tint.BAND : Tint.SHEET);
      Interval interval = figure.interval();
      if (interval != null) {
        double base = column.y() + column.height();
        Drawing.Line line = strokes.get(stroke++);
        assertThat(base - line.y1()).isCloseTo(unit * interval.low(), within(1e-6));
        assertThat(base - line.y2()).isCloseTo(unit * interval.high(), within(1e-6));
      }
    }
    assertThat(stroke).isEqualTo(strokes.size()).isPositive();
  }

  @Test
  void theSheetSaysWhatTheCommandSays() {
    Comparison comparison = comparison();
    Speaker english = Speaker.english();
    String page = comparison.page(english).replaceAll("\\s+", " ");
    PlayerSheet.Content sheet = ComparePicture.sheet(comparison, english);

    assertThat(page).contains(sheet.section("verdict").says().get(0));
    for (List<String> line : sheet.section("figures").table().lines()) {
      // A plain page has the hyphen for a dash.
      assertThat(page).contains(String.join(" ", line).replace('\u2013', '-'));
    }
    for (Drawing drawing : PlayerSheet.pages(sheet, Paper.A4)) {
      for (Drawing.Item item : drawing.items()) {
        if (item instanceof Drawing.Words words) {
          double right = words.left() + words.face().width(words.text(), words.size());
          assertThat(words.left()).as(words.text()).isGreaterThanOrEqualTo(72 - 1e-6);
          assertThat(right).as(words.text()).isLessThanOrEqualTo(drawing.width() - 72 + 1e-6);
        }
      }
    }
  }

  @Test
  void theBarsOfTextAreAsLongAsTheirFigures() {
    Comparison comparison = comparison();
    String page = comparison.page(Speaker.english());
    List<Matcher> bars = page.lines().map(BAR::matcher).filter(Matcher::matches).toList();

    // The band and three clicks, hold first.
    assertThat(bars).hasSize(16);
    List<Row> holds =
        comparison.rows().stream().filter(row -> row.kind() == Kind.HOLD).limit(4).toList();
    for (int i = 0; i < 8; i++) {
      Figure hold = i % 2 == 0 ? holds.get(i / 2).first() : holds.get(i / 2).second();
      assertThat(bars.get(i).group(2)).hasSize((int) Math.rint(40 * hold.get() / 100));
      assertThat(bars.get(i).group(3)).isEqualTo(Long.toString(Math.round(hold.get())));
    }
    assertThat(page.lines()).allMatch(line -> line.length() < 80);
  }
}

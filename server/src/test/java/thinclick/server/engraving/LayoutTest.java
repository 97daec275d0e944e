package thinclick.server.engraving;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.util.List;
import java.util.Locale;
import org.assertj.core.groups.Tuple;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import thinclick.protocol.file.Drill;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.server.material.PartWriter;
import thinclick.server.material.Stock;
import thinclick.server.material.WrittenPart;

class LayoutTest {
  @ParameterizedTest
  @ValueSource(strings = {"ands", "threes", "triplets", "twelve-eight", "slashes"})
  void systemIsLaidOutAsBefore(String name) throws Exception {
    WrittenPart part = sample(name);
    Reading reading = Reading.wholeTake(part, 4, Cut.BEATS);
    StaffSystem system = Engraver.systems(reading.part(), reading.plans(), 104).get(0);
    Golden.check("layout-" + name + ".json", json(system));
  }

  private static WrittenPart sample(String name) {
    List<Stage> stages = List.of(Stage.ofBeats(2, 1, 1, 2, 3, 4), Stage.ofBeats(2, 1, 2));
    return switch (name) {
      case "ands" -> Samples.andsAlone();
      case "threes" -> Samples.longThrees("tenor saxophone", "Bb");
      case "triplets" ->
          Samples.rhythm(
              "Triplets", "snare drum", Meter.FOUR_FOUR, 3, 1, "0 1 2 4 7 9 11", 4, stages);
      case "twelve-eight" ->
          Samples.rhythm("Bell", "cowbell", new Meter(12, 8), 3, 1, "0 2 4 5 7 9 11", 6, stages);
      default -> Samples.comping();
    };
  }

  /** PDF, SVG and the window draw these marks and no others. */
  @ParameterizedTest
  @CsvSource({"false, 4", "true, 2"})
  void slashStandsOnEachBeatThatIsFree(boolean compound, int beats) {
    Reading reading = Reading.wholeTake(Samples.tradingFours(compound), 4, Cut.BEATS);
    List<Mark> marks =
        Engraver.systems(reading.part(), reading.plans(), 104).stream()
            .flatMap(system -> system.marks().stream())
            .toList();
    for (int bar = 0; bar < 8; bar++) { // which stand on the page once, with a repeat
      int at = bar;
      boolean free = bar >= 4;
      assertThat(marks)
          .as("bar " + (bar + 1))
          .filteredOn(
              mark ->
                  mark instanceof Mark.Sign sign
                      && sign.glyph() == Glyph.NOTEHEAD_SLASH_HORIZONTAL_ENDS
                      && mark.place().bar() == at)
          .hasSize(free ? beats : 0);
      assertThat(marks)
          .filteredOn(
              mark ->
                  mark instanceof Mark.Text text
                      && text.text().equals("freely")
                      && mark.place().bar() == at)
          .hasSize(free && bar % 4 == 0 ? 1 : 0);
    }
  }

  /** The marks, one a line, to a hundredth of a space. */
  private static String json(StaffSystem system) {
    StringBuilder json = new StringBuilder("{\"width\": " + n(system.width()));
    json.append(", \"height\": ").append(n(system.height()));
    json.append(", \"firstX\": ").append(n(system.firstX()));
    json.append(", \"stepWidth\": ").append(n(system.stepWidth())).append(", \"marks\": [\n");
    String between = "";
    for (Mark mark : system.marks()) {
      json.append(between).append("  {").append(shape(mark));
      json.append(", \"ink\": \"").append(mark.ink()).append('"');
      Place place = mark.place();
      json.append(", \"bar\": ").append(place.bar()).append(", \"step\": ").append(place.step());
      json.append(", \"says\": \"").append(place.spoken()).append("\"}");
      between = ",\n";
    }
    return json.append("\n]}\n").toString();
  }

  private static String shape(Mark mark) {
    if (mark instanceof Mark.Sign sign) {
      return "\"sign\": \"%s\", \"at\": [%s, %s], \"scale\": %s"
          .formatted(sign.glyph(), n(sign.x()), n(sign.y()), n(sign.scale()));
    }
    if (mark instanceof Mark.Line line) {
      return "\"line\": [%s, %s, %s, %s], \"thick\": %s, \"dotted\": %s"
          .formatted(
              n(line.x1()),
              n(line.y1()),
              n(line.x2()),
              n(line.y2()),
              n(line.thickness()),
              line.dotted());
    }
    if (mark instanceof Mark.Text text) {
      return "\"text\": \"%s\", \"face\": \"%s\", \"size\": %s, \"at\": [%s, %s]"
          .formatted(text.text(), text.face(), n(text.size()), n(text.x()), n(text.y()));
    }
    Mark.Shape shape = (Mark.Shape) mark;
    StringBuilder curves = new StringBuilder();
    for (Mark.Curve c : shape.curves()) {
      curves.append(curves.isEmpty() ? "" : ", ");
      curves.append(
          "[%s, %s, %s, %s, %s, %s]"
              .formatted(n(c.x1()), n(c.y1()), n(c.x2()), n(c.y2()), n(c.x()), n(c.y())));
    }
    return "\"shape\": [%s, %s], \"curves\": [%s]".formatted(n(shape.x()), n(shape.y()), curves);
  }

  private static String n(double value) {
    String text = String.format(Locale.ROOT, "%.2f", value);
    return text.equals("-0.00") ? "0.00" : text;
  }

  @Nested
  class Accidentals {
    @Test
    void holdsToTheBarLineAndRemindsInTheNextBar() {
      // key of two flats; E natural twice in a bar, then E flat again in the next
      assertThat(signs(-2, "0 E4", "2 E4", "8 Eb4", "10 Eb4"))
          .containsExactly("NATURAL", "-", "FLAT", "-");
    }

    @Test
    void belongsToItsOctave() {
      assertThat(signs(0, "0 F#4", "2 F#5", "4 F#4")).containsExactly("SHARP", "SHARP", "-");
    }

    @Test
    void isNotNeededForTheKeysOwnNotes() {
      assertThat(signs(3, "0 F#4", "2 C#5", "4 G#4", "6 D4")).containsOnly("-");
      assertThat(signs(-4, "0 Bb4", "2 Eb5", "4 Ab4", "6 Db4", "8 G4")).containsOnly("-");
    }

    private List<String> signs(int fifths, String... notes) {
      return Accidental.of(Samples.staff(fifths, notes)).stream()
          .map(sign -> sign == null ? "-" : sign.name())
          .toList();
    }
  }

  @Nested
  class RepeatsOfATake {
    @Test
    void equalSystemsAreWrittenOnceWithTheirNumberOfTurns() {
      assertThat(plans(Samples.andsAlone(), 4))
          .containsExactly(
              "bar 1, 4 bars, from, 2 times, 8 bars, click on all beats",
              "bar 9, 4 bars, from, 2 times, 8 bars, click on two and four",
              "bar 17, 4 bars, from, 2 times, 8 bars, click on the one of every bar",
              "bar 25, 4 bars, from, 2 times, 8 bars, no click, end");
    }

    @Test
    void clickOverLongerSpansIsFoldedByItsOwnCycle() {
      List<Stage> stages = List.of(new Stage(16, 8, List.of(1), null), Stage.ofBeats(3, 1, 1));
      WrittenPart part =
          Samples.rhythm("Push only", "clapping", Meter.FOUR_FOUR, 2, 1, "7", 5, stages);
      assertThat(plans(part, 4))
          .containsExactly(
              "bar 1, 4 bars, from, 1 times, 16 bars, click on the one of every eighth bar",
              "bar 5, 4 bars, 2 times, ",
              "bar 17, 3 bars, 1 times, 3 bars, click on the one of every bar, end");
    }

    /**
     * A chair that comes in a beat late has a first bar of its own, and no line of its own for it.
     */
    @Test
    void laterChairTurnsToANewLineAtTheSameBarsAsTheFirst() {
      Drill canon = Stock.find("Four-chair canon");
      List<List<Integer>> begins =
          canon.chairs().stream()
              .map(chair -> PartWriter.write(canon, chair, 92, ""))
              .map(part -> Reading.writtenOut(part, 4, Cut.BEATS).plans())
              .map(plans -> plans.stream().map(SystemPlan::firstBar).toList())
              .toList();
      assertThat(begins).hasSize(4).containsOnly(List.of(0, 4, 8, 12, 16, 20));
    }

    private List<String> plans(WrittenPart part, int bars) {
      return Reading.wholeTake(part, bars, Cut.BEATS).plans().stream()
          .map(
              plan ->
                  "bar %d, %d bars, %s%d times, %s%s"
                      .formatted(
                          plan.firstBar() + 1,
                          plan.bars(),
                          plan.repeatFrom() ? "from, " : "",
                          plan.repeatTimes(),
                          plan.direction(),
                          plan.last() ? ", end" : ""))
          .toList();
    }
  }

  @ParameterizedTest
  @CsvSource({"Gm7b5/F, G, m7b5, F", "C6/9, C, 6/9, ''", "Bbmaj7, Bb, maj7, ''", "F#, F#, '', ''"})
  void chordSymbolIsTakenApart(String written, String root, String quality, String bass) {
    assertThat(ChordMark.parse(4, written)).isEqualTo(new ChordMark(4, root, quality, bass));
    assertThat(ChordMark.parse(4, written).text()).isEqualTo(written);
  }

  @Test
  void markSaysWhatItStandsFor() {
    Reading reading = Reading.once(Samples.longThrees("tenor saxophone", "Bb"), 4, Cut.BEATS);
    List<String> spoken =
        Engraver.systems(reading.part(), reading.plans(), 104).get(0).marks().stream()
            .map(mark -> mark.place().spoken())
            .filter(words -> !words.isEmpty())
            .toList();
    assertThat(spoken)
        .contains(
            "treble clef",
            "meter 4 4",
            "chord D m7",
            "quarter D 4 on beat 1, accent",
            "eighth D 4 on beat 2, held over",
            "eighth F 4 on the and of 2",
            "click, quarter on beat 1",
            "step 3 of 3",
            "meets the one, bar 4");
  }

  /** Threes meet a bar of eight eighths again after lcm(3, 8) = 24 of them, so every three bars. */
  @Test
  void everyMeetingWithTheOneIsSaid() {
    Drill threes = Stock.find("Threes over a blues");
    WrittenPart written = PartWriter.write(threes, threes.chairs().get(0), 120, "");
    assertThat(remarks(written, 12))
        .containsExactly(
            tuple(24, "meets the one, bar 4"),
            tuple(48, "meets the one, bar 7"),
            tuple(72, "meets the one, bar 10"));
  }

  private static List<Tuple> remarks(WrittenPart written, int bars) {
    return StaffPart.of(written, bars, Cut.BEATS).groupings().stream()
        .filter(group -> !group.remark().isEmpty())
        .map(group -> tuple(group.start(), group.remark()))
        .toList();
  }

  /** Fours meet a bar of six eighths again after lcm(4, 6) = 12 of them, where the line repeats. */
  @Test
  void whatMeetsTheOneWithTheRepeatSaysSo() {
    Drill fours = Stock.find("Waltz fours");
    WrittenPart written = PartWriter.write(fours, fours.chairs().get(0), 100, "");
    assertThat(written.bars()).isEqualTo(2);
    assertThat(written.comesRoundBar()).isEqualTo(2);
    assertThat(remarks(written, 6))
        .containsExactly(tuple(12, "meets the one, bar 3"), tuple(24, "meets the one, bar 5"));
  }

  /** Of a part that needs a second page, its last stage stands there whole. */
  @Test
  void noLastPageHasASingleLine() {
    Drill fives = Stock.find("Sevens over a blues");
    for (Paper paper : Paper.values()) {
      List<Page> pages =
          Pages.part(PartWriter.write(fives, fives.chairs().get(0), 100, ""), paper, Cut.BEATS);
      assertThat(pages).as("%s", paper).hasSizeGreaterThan(1);
      assertThat(pages.get(pages.size() - 1).marks())
          .as("%s", paper)
          .filteredOn(mark -> mark instanceof Mark.Text text && text.text().equals("click"))
          .hasSizeGreaterThan(1);
    }
  }

  @Test
  void handoutOfTwelveKeysHasTwoPagesAndNamesEveryKey() {
    List<WrittenPart> keys =
        List.of("C", "F", "Bb", "Eb", "Ab", "Db", "Gb", "B", "E", "A", "D", "G").stream()
            .map(key -> Samples.longThrees("alto saxophone", key))
            .toList();
    for (Paper paper : Paper.values()) {
      List<Page> pages = Pages.handout(keys, paper, Cut.BEATS);
      assertThat(pages).as("%s", paper).hasSizeBetween(2, 3);
      List<String> spoken =
          pages.stream()
              .flatMap(page -> page.marks().stream())
              .map(mark -> mark.place().spoken())
              .filter(words -> words.contains("concert"))
              .toList();
      assertThat(spoken).hasSize(12).startsWith("A major concert C major");
      for (Page page : pages) {
        double width = page.widthMm() / page.spaceMm();
        double height = page.heightMm() / page.spaceMm();
        assertThat(page.marks())
            .allMatch(mark -> mark.box().left() > 0 && mark.box().right() < width)
            .allMatch(mark -> mark.box().top() > 0 && mark.box().bottom() < height);
      }
    }
  }
}

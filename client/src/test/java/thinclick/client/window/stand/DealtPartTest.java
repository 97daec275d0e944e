package thinclick.client.window.stand;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.Part;
import thinclick.protocol.message.ServerMessage.Dealt;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.StepGrid;
import thinclick.server.dealing.Dealer;
import thinclick.server.dealing.Dealing;
import thinclick.server.engraving.Clef;
import thinclick.server.engraving.ReaderWords;
import thinclick.server.engraving.Reading;
import thinclick.server.engraving.StaffNote;
import thinclick.server.engraving.SystemPlan;
import thinclick.server.material.PartWriter;
import thinclick.server.material.Stock;
import thinclick.server.material.WrittenPart;

/** What stands on the stand is what was dealt, as the reader's instrument reads it. */
class DealtPartTest {
  private static final List<String> PLAYERS = List.of("Ana", "Ben", "Cleo", "Dara");

  @Test
  void everyDrillOfTheStockStandsAsItWasDealt() {
    for (Drill drill : Stock.drills()) {
      for (long seed : new long[] {1, 2}) {
        Dealt whole = dealt(drill, seed);
        for (Part part : whole.parts()) {
          Dealt own = whole.seenBy(part.player());
          assertThat(own.drill().chairs()).as(drill.title()).hasSize(1);
          Reading reading = DealtPart.reading(DealtPart.written(own, part), 4);
          assertThat(starts(reading))
              .as("%s, seed %d, %s", drill.title(), seed, part.player())
              .isEqualTo(part.attackSteps());
        }
      }
    }
  }

  @Test
  void everyBarHasAPlaceOfItsOwnAndEveryStageBeginsALine() {
    Dealt dealt = dealt(Stock.find("Threes over a blues"), 1).seenBy("Ben");
    Reading reading = DealtPart.reading(DealtPart.written(dealt, dealt.parts().get(1)), 4);
    List<Integer> bars = new ArrayList<>();
    List<Integer> firsts = new ArrayList<>();
    for (SystemPlan plan : reading.plans()) {
      firsts.add(plan.firstBar());
      for (int bar = 0; bar < plan.bars(); bar++) {
        bars.add(plan.firstBar() + bar);
      }
    }
    ClickPlan plan = new ClickPlan(dealt.stages());
    for (int bar = 0; bar < plan.bars(); bar++) {
      assertThat(bars.get(bar)).isEqualTo(bar);
    }
    assertThat(bars).hasSize(plan.bars());
    StepGrid grid = dealt.gridFrom(0);
    assertThat(reading.part().clickSteps())
        .as("the click's own part is the plan, also where it thins")
        .isEqualTo(
            plan.clicks(grid).stream()
                .map(click -> (int) Math.round(click.micros() / grid.stepMicros()))
                .toList());
    for (int stage = 0; stage < plan.stages().size(); stage++) {
      assertThat(firsts).contains(plan.fromBar(stage));
    }
  }

  /**
   * One line on the page: what is next is in view, and nothing is turned to for what is in view.
   */
  @Test
  void aLineShowsWhatComesNextAndWhatIsOverAndTheLastBarIsOnOneLine() {
    List<Stage> stages = List.of(Stage.ofBeats(31, 1, 1, 3), Stage.ofBeats(33, 2, 1));
    Drill drill = Stock.find("Threes over a blues").withStages(stages);
    WrittenPart part = PartWriter.write(drill, drill.chairs().get(0), 100, "");
    for (int bars = 1; bars < Reading.MOST_BARS; bars++) {
      List<SystemPlan> plans = DealtPart.lookingAhead(part, bars).plans();
      for (int line = 0; line + 1 < plans.size(); line++) {
        SystemPlan plan = plans.get(line);
        SystemPlan next = plans.get(line + 1);
        int shared = plan.firstBar() + plan.bars() - next.firstBar();
        assertThat(shared)
            .as("line %d of %d bars: what is over stays", line + 1, bars)
            .isBetween(Math.min(2, bars), bars);
        assertThat(plan.bars()).as("no short line").isEqualTo(bars + 1);
      }
      SystemPlan last = plans.get(plans.size() - 1);
      assertThat(last.last()).isTrue();
      assertThat(last.firstBar() + last.bars()).isEqualTo(64);
      assertThat(last.bars()).as("not a bar that was in view before").isGreaterThan(1);
      assertThat(stagesAsPlayed(plans)).containsExactly(0, 31);
    }
  }

  /** However short a stage is, its first bar is the first that is played on its line. */
  @Test
  void aStageBeginsTheLineOnWhichItIsPlayedBelowItsWords() {
    List<Stage> stages =
        List.of(
            Stage.ofBeats(1, 1, 1, 3),
            Stage.ofBeats(1, 1, 1),
            Stage.ofBeats(2, 1, 4),
            Stage.ofBeats(5, 1, 1, 2),
            Stage.ofBeats(1, 1, 3));
    Drill drill = Stock.find("Threes over a blues").withStages(stages);
    WrittenPart part = PartWriter.write(drill, drill.chairs().get(0), 100, "");
    for (int bars = 1; bars < Reading.MOST_BARS; bars++) {
      List<SystemPlan> plans = DealtPart.lookingAhead(part, bars).plans();
      assertThat(stagesAsPlayed(plans)).containsExactly(0, 1, 2, 4, 9);
      List<PageTurn.Line> lines = lines(plans);
      assertThat(PageTurn.keepsOver(lines, 1)).as("%d bars", bars).isEqualTo(bars > 1);
    }
  }

  /** Above which bars words stand, each the first that is played on its line. */
  private static List<Integer> stagesAsPlayed(List<SystemPlan> plans) {
    List<Integer> bars = new ArrayList<>();
    for (int line = 0; line < plans.size(); line++) {
      SystemPlan plan = plans.get(line);
      if (!plan.direction().startsWith("(")) {
        bars.add(plan.firstBar() + plan.directionBar());
        assertThat(PageTurn.firstPlayed(lines(plans), line))
            .isEqualTo(plan.firstBar() + plan.directionBar());
      }
    }
    return bars;
  }

  private static List<PageTurn.Line> lines(List<SystemPlan> plans) {
    return plans.stream().map(plan -> new PageTurn.Line(plan.firstBar(), plan.bars())).toList();
  }

  @Test
  void aPitchedPartHasItsClefAndSaysItsTransposition() {
    Drill drill = Stock.find("Two-five line");
    Drill.Chair first = drill.chairs().get(0);
    Drill.Chair tenor =
        new Drill.Chair(
            first.chair(),
            first.role(),
            first.cell(),
            first.entryStep(),
            first.line(),
            first.feelMillis(),
            "tenor saxophone");
    Dealt dealt = dealt(drill.withChairs(List.of(tenor)), 1).seenBy("Ana");
    WrittenPart part = DealtPart.written(dealt, dealt.parts().get(0));
    assertThat(ReaderWords.of(part)).startsWith("Tenor saxophone in B\u266d \u00b7 ");
    assertThat(DealtPart.reading(part, 4).part().clef()).isEqualTo(Clef.TREBLE);
    assertThat(part.notes().get(0).written().midi())
        .isEqualTo(part.notes().get(0).concert().midi() + 14);
  }

  @Test
  void aHostThatSendsNoMoreThanTheRhythmIsReadOnOneLine() {
    Dealt whole = dealt(Stock.find("Two-five line"), 1);
    Dealt bare =
        new Dealt(
            whole.revision(),
            whole.dealId(),
            whole.title(),
            whole.parts(),
            "Ana",
            whole.meter(),
            whole.stepsPerBeat(),
            whole.tempo(),
            whole.swing(),
            whole.toleranceMillis(),
            whole.stages(),
            whole.says(),
            null);
    Reading reading = DealtPart.reading(DealtPart.written(bare, bare.parts().get(0)), 4);
    assertThat(reading.part().clef()).isEqualTo(Clef.ONE_LINE);
    assertThat(starts(reading)).isEqualTo(bare.parts().get(0).attackSteps());
  }

  private static List<Integer> starts(Reading reading) {
    return reading.part().notes().stream().map(StaffNote::span).map(span -> span.start()).toList();
  }

  private static Dealt dealt(Drill drill, long seed) {
    double tempo = drill.tempo().start();
    Dealing dealing = Dealer.deal(drill, PLAYERS, seed, tempo, drill.stages());
    return new Dealt(
        1,
        "d1",
        drill.title(),
        dealing.parts(),
        null,
        drill.meter(),
        drill.stepsPerBeat(),
        tempo,
        drill.swing(),
        dealing.toleranceMillis(),
        drill.stages(),
        dealing.sentences(),
        dealing.dealt());
  }
}

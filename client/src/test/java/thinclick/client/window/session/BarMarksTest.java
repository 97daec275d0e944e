package thinclick.client.window.session;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import thinclick.client.link.PlayedAttack;
import thinclick.client.window.session.BarMark.Kind;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.protocol.message.TakeNews.Announced;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.StepGrid;
import thinclick.protocol.music.Swing;

/** What stands below the staff once a bar is over, and where a take stands on the way. */
class BarMarksTest {
  /** Eighths of 250 ms; bar 1 begins at 10 s of room time. */
  private final StepGrid grid = new StepGrid(Meter.FOUR_FOUR, 2, 120, Swing.STRAIGHT, 10_000_000);

  private final ClickPlan plan =
      new ClickPlan(List.of(Stage.ofBeats(2, 1, 1, 2, 3, 4), Stage.ofBeats(2, 1, 1)));

  private final Announced announced = new Announced("t1", "d1", 1, 8_000_000, 10_000_000, 1);

  @Test
  void tapsOnTheirPlacesArePlain() {
    assertThat(kinds(List.of(0, 3, 6), 10_000_000L, 10_760_000L, 11_490_000L))
        .containsExactly(Kind.PLACED, Kind.PLACED, Kind.PLACED);
  }

  @Test
  void thirtyMillisEarlyIsEarlyAndThirtyLateIsLate() {
    List<BarMark> marks = marks(List.of(0, 3), 9_970_000L, 10_780_000L);
    assertThat(marks).extracting(BarMark::kind).containsExactly(Kind.EARLY, Kind.LATE);
    assertThat(marks.get(0).offMillis()).isCloseTo(-30, within(1e-9));
    assertThat(marks.get(1).offSteps()).isCloseTo(0.12, within(1e-9));
  }

  @Test
  void whatNobodyPlayedIsDroppedAndWhatNobodyWroteIsAdded() {
    List<BarMark> marks = marks(List.of(0, 3), 10_000_000L, 11_000_000L);
    assertThat(marks)
        .extracting(BarMark::kind)
        .containsExactly(Kind.PLACED, Kind.DROPPED, Kind.ADDED);
    assertThat(marks.get(2).step()).isEqualTo(4);
  }

  @Test
  void ofTwoTapsTheNearerAnswersAndTheOtherIsAdded() {
    List<BarMark> marks = marks(List.of(0), 10_004_000L, 10_100_000L);
    assertThat(marks).extracting(BarMark::kind).containsExactly(Kind.PLACED, Kind.ADDED);
  }

  @Test
  void aTapJustBeforeTheBarLineBelongsToTheNextBar() {
    assertThat(BarMarks.of(grid, List.of(0, 8), List.of(11_960_000L), 0, 15))
        .extracting(BarMark::kind)
        .containsExactly(Kind.DROPPED);
    assertThat(BarMarks.of(grid, List.of(0, 8), List.of(11_960_000L), 1, 15))
        .extracting(BarMark::kind)
        .containsExactly(Kind.EARLY);
    assertThat(BarMarks.overMicros(grid, 0)).isEqualTo(11_875_000L);
  }

  /** Tapped along with the count-in, also against the pulse of others: no mark beside bar 1. */
  @Test
  void whatIsTappedBeforeBarOneIsNoBars() {
    Take take =
        new Take(
            Take.FORMAT,
            Take.VERSION,
            "Counted in",
            Meter.FOUR_FOUR,
            120,
            2,
            Swing.STRAIGHT,
            10_000_000,
            50.0,
            plan.stages(),
            List.of(Part.of("Ana", 0, List.of(0, 4)), Part.of("Ben", 0, List.of(0, 4))),
            List.of(),
            null,
            List.of());
    PulseMarks pulse = new PulseMarks(take, take.parts().get(0));
    for (long micros : new long[] {8_000_000, 9_000_000, 9_500_000, 9_990_000, 11_000_000}) {
      pulse.hear("Ben", micros);
      pulse.hear("Ana", micros);
    }
    assertThat(pulse.known()).isTrue();
    assertThat(pulse.of(0, 15)).extracting(BarMark::kind).containsExactly(Kind.PLACED, Kind.PLACED);
    assertThat(BarMarks.beforeBarOne(grid, 9_874_000)).isTrue();
    assertThat(BarMarks.beforeBarOne(grid, 9_876_000)).isFalse();
  }

  /** What is on its way may still come; once something later was heard it was dropped. */
  @Test
  void whatAnotherDroppedIsKnownOnceTheyAreHeardAgain() {
    Take take = Rooms.take(Meter.FOUR_FOUR, 2, plan.stages()); // eighths of 300 ms from 10 s
    RoomState room = Rooms.playing(take);
    String other = room.nameOf("p2");
    List<Integer> written =
        take.parts().stream()
            .filter(part -> part.player().equals(other))
            .findFirst()
            .orElseThrow()
            .attackSteps();
    OwnTake played = new OwnTake("t1");
    BandMarks band = BandMarks.of(room);
    played.heard("p2", sounds(written.get(0)));
    played.heard("p2", sounds(written.get(0)) + 450_000);
    band.hear(room, played, 0);
    assertThat(kinds(band, room, played, other))
        .as("played, added, and nothing said of what may come")
        .startsWith(Kind.PLACED)
        .contains(Kind.ADDED)
        .hasSizeLessThan(2 + written.size());
    played.heard("p2", sounds(8));
    band.hear(room, played, 1);
    int inBar = (int) written.stream().filter(step -> step < 8).count();
    assertThat(kinds(band, room, played, other)).contains(Kind.DROPPED).hasSize(1 + inBar);
    played.heard("p2", sounds(written.get(inBar - 1)));
    band.hear(room, played, 1);
    assertThat(kinds(band, room, played, other))
        .as("it was long on its way")
        .endsWith(Kind.PLACED)
        .hasSize(1 + inBar);
  }

  private static long sounds(int step) {
    return 10_000_000 + step * 300_000L;
  }

  private static List<Kind> kinds(BandMarks band, RoomState room, OwnTake take, String who) {
    return band.others(room, take, 0).get(who).stream().map(BarMark::kind).toList();
  }

  /** As the scorer has it, alone and against the pulse of others. */
  @Test
  void aChordAndAFlamOnAPadAreOneMark() {
    Take take = Rooms.take(Meter.FOUR_FOUR, 2, plan.stages()); // eighths of 300 ms from 10 s
    RoomState room = Rooms.playing(take);
    OwnTake played = new OwnTake("t1");
    for (int step = 0; step < 8; step++) {
      long at = 10_000_000 + step * 300_000L;
      assertThat(strikes(played, at, 36)).isTrue();
      assertThat(strikes(played, at + 20_000, 36)).as("the same pad again").isFalse();
      assertThat(strikes(played, at + 33_000, 38)).as("a flam").isFalse();
      assertThat(played.counted()).hasSize(step + 1);
    }
    BandMarks alone = BandMarks.of(room);
    alone.hear(room, played, 0);
    assertThat(alone.of(played, 0, 15))
        .extracting(BarMark::kind)
        .hasSize(8)
        .containsOnly(Kind.PLACED);
    played.heard("p2", 10_000_000);
    BandMarks together = BandMarks.of(room);
    together.hear(room, played, 0);
    assertThat(together.of(played, 0, 15))
        .extracting(BarMark::kind)
        .hasSize(8)
        .containsOnly(Kind.PLACED);
  }

  private static boolean strikes(OwnTake take, long micros, int pitch) {
    return take.played(micros, new PlayedAttack(micros * 1_000, 90, pitch, null, null));
  }

  @Test
  void aTakeStandsWhereItsClockIs() {
    assertThat(at(6_200_000)).isEqualTo(moment(TakeMoment.Part.BEFORE, 2, 0, -1, -1, 0));
    assertThat(at(8_000_000)).isEqualTo(moment(TakeMoment.Part.COUNT_IN, 0, 1, -1, -1, 0));
    assertThat(at(9_999_000)).isEqualTo(moment(TakeMoment.Part.COUNT_IN, 0, 4, -1, -1, 0));
    assertThat(at(10_000_000)).isEqualTo(moment(TakeMoment.Part.PLAYING, 0, 0, 0, 0, 2));
    assertThat(at(13_999_000)).isEqualTo(moment(TakeMoment.Part.PLAYING, 0, 0, 1, 0, 1));
    assertThat(at(14_000_000)).isEqualTo(moment(TakeMoment.Part.PLAYING, 0, 0, 2, 1, 0));
    assertThat(at(18_000_000)).isEqualTo(moment(TakeMoment.Part.OVER, 0, 0, 4, -1, 0));
  }

  private TakeMoment at(long micros) {
    return TakeMoment.at(grid, plan, announced, micros);
  }

  private static TakeMoment moment(
      TakeMoment.Part part, int seconds, int count, int bar, int stage, int toNext) {
    return new TakeMoment(part, seconds, count, bar, stage, toNext);
  }

  private List<Kind> kinds(List<Integer> written, Long... attacks) {
    return marks(written, attacks).stream().map(BarMark::kind).toList();
  }

  private List<BarMark> marks(List<Integer> written, Long... attacks) {
    return BarMarks.of(grid, written, List.of(attacks), 0, BarMarks.PLAIN_MILLIS);
  }
}

package thinclick.server.host;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.Swing;
import thinclick.server.history.Entry;
import thinclick.server.scoring.Scorer;
import thinclick.server.store.Store;
import thinclick.server.words.NextRung.Move;
import thinclick.server.words.Speaker;
import thinclick.server.words.Spoken;

/** What becomes of the click after a take, with the takes before it on this evening or another. */
class ReviewerTest {
  private static final List<String> CLASS =
      List.of("Mina", "Jonas", "Ilse", "Tariq", "Noor", "Pavel");

  @TempDir Path folder;

  /** Everybody on every beat of eight bars, exactly. */
  private static Take held(long startMicros, List<String> players) {
    List<Integer> beats = IntStream.range(0, 32).mapToObj(beat -> beat * 2).toList();
    Take written =
        new Take(
            Take.FORMAT,
            Take.VERSION,
            "Beats",
            Meter.FOUR_FOUR,
            120,
            2,
            Swing.STRAIGHT,
            startMicros,
            50.0,
            List.of(Stage.ofBeats(8, 1, 1, 2, 3, 4)),
            players.stream().map(name -> Part.of(name, 0, beats)).toList(),
            List.of(),
            null,
            List.of());
    List<Attack> attacks = new ArrayList<>();
    for (int step : beats) {
      players.forEach(name -> attacks.add(Attack.tap(name, written.grid().instantOf(step))));
    }
    return written.withAttacks(attacks);
  }

  private static Move after(Reviewer reviewer, Take take) {
    return Spoken.moveOf(reviewer.review(take));
  }

  @Test
  void twoThatWereHeldByTheSameBandMakeTheClickThinner() {
    Reviewer reviewer = new Reviewer(Speaker.english(), key -> List.of());
    assertThat(after(reviewer, held(1_000_000, CLASS))).isEqualTo(Move.ONCE_MORE);
    assertThat(after(reviewer, held(90_000_000, CLASS))).isEqualTo(Move.UP);
    assertThat(after(reviewer, held(90_000_000, CLASS))).as("reviewed again").isEqualTo(Move.UP);
  }

  @Test
  void oneWhoIsMissingMakesNoOtherBandAndMostWhoAreDo() {
    Reviewer reviewer = new Reviewer(Speaker.english(), key -> List.of());
    after(reviewer, held(1_000_000, CLASS));
    assertThat(after(reviewer, held(90_000_000, CLASS.subList(1, 6)))).isEqualTo(Move.UP);
    assertThat(after(reviewer, held(180_000_000, List.of("Lotte", "Emre", "Mina"))))
        .isEqualTo(Move.ONCE_MORE);
  }

  @Test
  void whatWasStoppedBeforeItsHalfCountsForNothing() {
    Reviewer reviewer = new Reviewer(Speaker.english(), key -> List.of());
    Take whole = held(1_000_000, CLASS);
    long third = whole.grid().instantOf(22);
    Take abandoned =
        whole
            .withAttacks(whole.attacks().stream().filter(a -> a.micros() < third).toList())
            .edited()
            .endMicros(third)
            .take();
    after(reviewer, abandoned);
    assertThat(after(reviewer, held(90_000_000, CLASS))).isEqualTo(Move.ONCE_MORE);
  }

  @Test
  void theTakesOfAnEarlierEveningCountWhereTheHostHasKeptThem() {
    Take lastWeek = held(1_000_000, CLASS);
    Instant then = Instant.parse("2026-03-01T19:00:00Z");
    Instant tonight = then.plus(Duration.ofDays(7));
    try (Store store =
        Store.open(folder.resolve("rooms.db"), InstantSource.fixed(then), available -> {})) {
      store.importTake("last-week", lastWeek).join();
      Spoken said = Spoken.of(Scorer.analyse(lastWeek), Speaker.english());
      store.keepReview("last-week", said.toJson().toString()).join();
      Reviewer reviewer =
          new Reviewer(
              Speaker.english(),
              key -> KeptHistory.entries(store, key, tonight, Speaker.english()));

      assertThat(after(reviewer, held(5_000_000, CLASS))).isEqualTo(Move.UP);
      assertThat(KeptHistory.entries(store, Entry.Key.of(lastWeek), then, Speaker.english()))
          .as("what began in this run is remembered, not looked up")
          .isEmpty();
    }
  }
}

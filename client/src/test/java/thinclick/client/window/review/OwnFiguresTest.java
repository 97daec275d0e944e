package thinclick.client.window.review;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import thinclick.client.link.PlayedAttack;
import thinclick.client.window.session.FurtherSeat;
import thinclick.client.window.session.Seat;
import thinclick.client.window.session.TwoChairs;
import thinclick.client.window.words.Words;
import thinclick.protocol.file.Drill;
import thinclick.protocol.music.Stage;
import thinclick.server.material.Stock;
import tools.jackson.databind.JsonNode;

/**
 * The picture of the own attacks is made here, the figures are the host's: both must place the same
 * of them, also where a chair was not measured and where a pad strikes chords.
 */
class OwnFiguresTest extends TwoChairs {
  private static final long LATE_MICROS = 55_000;
  private static final long CHORD_NANOS = 30_000_000;

  private ReviewModel model;

  @Test
  void whatThePictureSaysIsPlacedIsWhatTheHostSays() {
    run(() -> model = new ReviewModel(session, Words.in(Locale.ENGLISH), windowThread));
    FurtherSeat ben = take(twoNarrowBars(), 160);
    run(
        () -> {
          play(session, LATE_MICROS, true);
          play(ben, 0, false);
        });
    until(() -> session.state().review() != null && !session.state().review().provisional());
    until(
        () -> model.pageProperty().get() != null && model.pageProperty().get().analysis() != null);

    JsonNode told = on(() -> session.state().review().review().get("players").get(0));
    var seen = on(() -> model.pageProperty().get().analysis().review().players().get(0));
    assertThat(told.get("player").stringValue()).isEqualTo("Ana");
    assertThat(told.get("placed").intValue())
        .as("27 ms from the pulse is within what the chair may be off by")
        .isEqualTo(told.get("written").intValue());
    assertThat(seen.placed()).isEqualTo(told.get("placed").intValue());
    assertThat(seen.added()).isEqualTo(told.get("added").intValue()).isZero();
    assertThat(on(() -> session.state().uncertaintyMillis()))
        .as("nobody measured this chair, and the clock is sure")
        .isBetween(60.0, 62.0);
  }

  private static Drill twoNarrowBars() {
    Drill like = Stock.find("Even eighths");
    return new Drill(
        like.format(),
        like.version(),
        "Two narrow bars",
        like.level(),
        like.meter(),
        like.stepsPerBeat(),
        like.swing(),
        like.tempo(),
        20.0,
        like.periodBars(),
        like.deal(),
        like.chairs(),
        List.of(Stage.ofBeats(2, 1, 1, 2, 3, 4)),
        null);
  }

  /** Every written step, so late, and each a chord where that is wanted. */
  private static void play(Seat seat, long lateMicros, boolean chords) {
    for (int step : seat.state().ownPart().attackSteps()) {
      PlayedAttack one = attack(seat, step, lateMicros);
      seat.play(one);
      if (chords) {
        seat.play(new PlayedAttack(one.nanos() + CHORD_NANOS, 90, 64, null, null));
      }
    }
  }
}

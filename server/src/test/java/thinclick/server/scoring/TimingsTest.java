package thinclick.server.scoring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import thinclick.protocol.file.Hearing;
import thinclick.protocol.file.Take;
import thinclick.protocol.music.Stage;
import tools.jackson.databind.json.JsonMapper;

/** The timing model's figures in the review of a take. */
class TimingsTest {
  private static final JsonMapper JSON = JsonMapper.builder().build();
  private static final Stage FULL = Stage.ofBeats(32, 1, 1, 2, 3, 4);
  private static final Stage HALF = Stage.ofBeats(96, 1, 1, 3);
  private static final Stage SILENT = Stage.ofBeats(64, 1);

  /** One player's simulated timing: follows the click by half, the other by the gain. */
  private record Timed(String name, int every, int entry, double follows, Hearing hearing) {}

  @Test
  void playerAgainstTheClickHasTimekeeperMotorGainAndForecasts() {
    Take take = take(7, List.of(FULL, HALF), new Timed("Ana", 3, 0, 0, null));
    PlayerReview ana = Scorer.review(take).players().get(0);
    assertThat(ana.timekeeperMillis().interval().contains(10)).isTrue();
    assertThat(ana.motorMillis().interval().contains(5)).isTrue();
    assertThat(ana.clickGain().interval().contains(.5)).isTrue();
    assertThat(ana.forecasts())
        .extracting(ForecastReview::stage)
        .containsExactly(
            Stage.ofBeats(96, 1, 1),
            Stage.ofBeats(96, 2, 1),
            Stage.ofBeats(96, 4, 1),
            Stage.ofBeats(8, 1));
    List<Double> spreads =
        ana.forecasts().subList(0, 3).stream().map(one -> one.spreadMillis().get()).toList();
    assertThat(spreads).isSorted();
    // simulated without a tendency; where a click pulls it is known only with a wide interval
    assertThat(ana.tendencyMillis().known()).isTrue();
    assertThat(ana.tendencyMillis().interval().contains(0)).isTrue();
    assertThat(spreads.get(0)).isGreaterThan(ana.spreadMillis().get());
    ForecastReview silence = ana.forecasts().get(3);
    assertThat(silence.spreadMillis().known()).isFalse();
    // 32 beats of Vc 100 and little else: 57 ms, more where a tendency cannot be excluded.
    assertThat(silence.returnMillis().get()).isCloseTo(60, within(25.0));
  }

  @Test
  void modelFiguresSurviveTheReviewsJson() {
    Take take = take(7, List.of(FULL, HALF), new Timed("Ana", 3, 0, 0, null));
    Review review = Scorer.review(take);
    Review read = JSON.readValue(JSON.writeValueAsString(review), Review.class);
    assertThat(read).isEqualTo(review);
    Take far =
        take(
            3,
            List.of(SILENT),
            new Timed("Ana", 2, 0, .3, far(40)),
            new Timed("Ben", 2, 0, .1, far(40)));
    review = Scorer.review(far);
    assertThat(review.ensemble().delay()).isNotNull();
    assertThat(JSON.readValue(JSON.writeValueAsString(review), Review.class)).isEqualTo(review);
  }

  @Test
  void gainsStandInTheirPlacesWithIntervals() {
    Take take =
        take(
            5,
            List.of(FULL, SILENT),
            new Timed("Ana", 2, 0, .45, null),
            new Timed("Ben", 2, 1, .05, null));
    EnsembleReview ensemble = Scorer.review(take).ensemble();
    assertThat(ensemble.gainsReason()).isNull();
    assertThat(ensemble.gains().get(0).get(0)).isNull();
    assertThat(ensemble.gains().get(0).get(1)).isCloseTo(.45, within(.15));
    assertThat(ensemble.gains().get(1).get(0)).isCloseTo(.05, within(.15));
    assertThat(ensemble.gainsInterval().get(0).get(1).contains(.45)).isTrue();
    assertThat(ensemble.pairs()).hasSize(1);
    PairReview pair = ensemble.pairs().get(0);
    assertThat(pair.first()).isEqualTo("Ana");
    assertThat(pair.difference().get()).isCloseTo(.4, within(.2));
    assertThat(pair.leader()).isEqualTo("Ben");
  }

  @Test
  void shortTakeSaysHowManyAttacksGainsNeed() {
    Take take =
        take(
            5,
            List.of(Stage.ofBeats(8, 1, 1, 2, 3, 4)),
            new Timed("Ana", 2, 0, .3, null),
            new Timed("Ben", 2, 1, .1, null));
    EnsembleReview ensemble = Scorer.review(take).ensemble();
    assertThat(ensemble.gains()).isNull();
    assertThat(ensemble.gainsReason().code()).isEqualTo(Reason.Code.TOO_FEW);
    assertThat(ensemble.gainsReason().says()).contains("60").contains("32");
  }

  @Test
  void farPartnersHaveTheLinesPartOfTheirDrag() {
    Take take =
        take(
            3,
            List.of(SILENT),
            new Timed("Ana", 2, 0, .3, far(40)),
            new Timed("Ben", 2, 0, .1, far(40)));
    DelayReview delay = Scorer.review(take).ensemble().delay();
    // Together: a b D / (a + b) = .3 * .1 * 80 / .4 = 6 ms a beat.
    assertThat(delay.measuredMillis()).isCloseTo(6, within(2.0));
    assertThat(delay.networkMillis().interval().contains(6)).isTrue();
    assertThat(delay.playersMillis().interval().contains(0)).isTrue();
    assertThat(
            Scorer.review(
                    take(
                        3,
                        List.of(SILENT),
                        new Timed("Ana", 2, 0, .3, null),
                        new Timed("Ben", 2, 0, .1, null)))
                .ensemble()
                .delay())
        .isNull();
  }

  @Test
  void partnersHeardInTimeAreNotFollowed() {
    Hearing inTime = new Hearing(Hearing.Mode.IN_TIME, 40);
    Take take =
        take(
            5,
            List.of(FULL, FULL),
            new Timed("Ana", 2, 0, 0, inTime),
            new Timed("Ben", 2, 1, 0, inTime));
    EnsembleReview ensemble = Scorer.review(take).ensemble();
    assertThat(ensemble.gains()).isNull();
    assertThat(ensemble.gainsReason().says()).contains("did not hear");
    assertThat(ensemble.delay()).isNull();
  }

  private static Hearing far(double millis) {
    return new Hearing(Hearing.Mode.AS_IT_ARRIVES, millis);
  }

  private static Take take(long seed, List<Stage> stages, Timed... players) {
    ModelBand band = new ModelBand(stages.toArray(Stage[]::new));
    for (Timed player : players) {
      ModelBand.Member member =
          new ModelBand.Member(
              player.name(),
              s -> s >= player.entry() && (s - player.entry()) % player.every() == 0);
      member.toOthers = player.follows();
      member.hearing = player.hearing();
      band.with(member);
    }
    return band.play(new Random(seed)).take();
  }
}

package thinclick.server.scoring.model;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class TimingModelTest {
  private static Performance band(long seed) {
    return new CoupledPlayers(500, 2)
        .with(
            new CoupledPlayers.Member(s -> s % 3 == 0)
                .followsClick(.5)
                .follows(0, .2, .1)
                .means(0, 20),
            new CoupledPlayers.Member(s -> s % 2 == 1).followsClick(.4).follows(.1, 0, .1),
            new CoupledPlayers.Member(s -> s % 4 == 0)
                .followsClick(.6)
                .follows(.1, .1, 0)
                .slips(.02, 80))
        .click(s -> s < 256 ? s % 2 == 0 : s % 8 == 0)
        .play(512, new Random(seed));
  }

  @Test
  void sameTakeGivesTheSameFigures() {
    assertThat(TimingModel.fit(band(4))).isEqualTo(TimingModel.fit(band(4)));
  }

  @Test
  void orderOfThePlayersChangesNothing() {
    Performance take = band(5);
    List<Voice> turned = new ArrayList<>(take.voices());
    Collections.reverse(turned);
    TimingFindings found = TimingModel.fit(take);
    TimingFindings other = TimingModel.fit(new Performance(500, 2, 1, take.clickSteps(), turned));
    for (int i = 0; i < 3; i++) {
      PlayerTiming here = found.players().get(i);
      PlayerTiming there = other.players().get(2 - i);
      assertThat(there.player()).isEqualTo(here.player());
      close(there.timekeeperMillis(), here.timekeeperMillis(), 1, 1e-3);
      close(there.motorMillis(), here.motorMillis(), 1, 1e-3);
      for (int j = 0; j < 3; j++) {
        if (i != j) {
          close(
              other.coupling().gains().get(2 - i).get(2 - j),
              found.coupling().gains().get(i).get(j),
              1,
              1e-3);
        }
      }
    }
  }

  @Test
  void slowingEverythingDownScalesTheNoisesAndLeavesTheGains() {
    Performance take = band(6);
    double k = 1.5;
    List<Voice> voices = new ArrayList<>();
    for (Voice voice : take.voices()) {
      List<GridAttack> attacks = new ArrayList<>();
      for (GridAttack attack : voice.attacks()) {
        attacks.add(new GridAttack(attack.step(), k * attack.millis()));
      }
      voices.add(Voice.inTheRoom(voice.player(), attacks));
    }
    TimingFindings found = TimingModel.fit(take);
    TimingFindings scaled =
        TimingModel.fit(new Performance(500 * k, 2, 1, take.clickSteps(), voices));
    for (int i = 0; i < 3; i++) {
      PlayerTiming here = found.players().get(i);
      PlayerTiming there = scaled.players().get(i);
      close(there.timekeeperMillis(), here.timekeeperMillis(), k, 1e-3);
      close(there.motorMillis(), here.motorMillis(), k, 1e-3);
      close(there.clickGain(), here.clickGain(), 1, 1e-3);
      close(there.tendencyMillis(), here.tendencyMillis(), k, 1e-3);
    }
  }

  private static void close(Estimate found, Estimate expected, double factor, double by) {
    assertThat(found.known()).isEqualTo(expected.known());
    if (expected.known()) {
      double value = factor * expected.value();
      double margin = by * (1 + Math.abs(value));
      assertThat(found.value()).isCloseTo(value, within(margin));
      assertThat(found.interval().low())
          .isCloseTo(factor * expected.interval().low(), within(5 * margin));
      assertThat(found.interval().high())
          .isCloseTo(factor * expected.interval().high(), within(5 * margin));
    }
  }

  @Test
  void attacksWithoutNoiseHaveNoNoiseToEstimate() {
    List<GridAttack> attacks = new ArrayList<>();
    for (int k = 0; k < 100; k++) {
      attacks.add(new GridAttack(2 * k, 12));
    }
    PlayerTiming player =
        TimingModel.fit(
                new Performance(
                    500, 2, 1, List.of(0, 8, 16), List.of(Voice.inTheRoom("Ana", attacks))))
            .players()
            .get(0);
    assertThat(player.timekeeperMillis().unknown().cause()).isEqualTo(Estimate.Cause.CONSTANT);
    assertThat(player.motorMillis().known()).isFalse();
  }

  @Test
  void fewAttacksAreNotFitted() {
    Performance take =
        new CoupledPlayers(500, 2)
            .with(new CoupledPlayers.Member(s -> s % 4 == 0).followsClick(.5))
            .click(s -> s % 2 == 0)
            .play(40, new Random(1));
    Estimate timekeeper = TimingModel.fit(take).players().get(0).timekeeperMillis();
    assertThat(timekeeper.unknown().cause()).isEqualTo(Estimate.Cause.TOO_FEW);
    assertThat(timekeeper.unknown().says()).contains("16").contains("10");
  }

  @Test
  void soloInSilenceHasNoGainAndADriftingOneNoMotor() {
    Performance steady =
        new CoupledPlayers(500, 1)
            .with(new CoupledPlayers.Member(s -> true).noise(8, 8))
            .play(300, new Random(2));
    PlayerTiming player = TimingModel.fit(steady).players().get(0);
    assertThat(player.clickGain().unknown().cause()).isEqualTo(Estimate.Cause.NO_CLICK);
    assertThat(player.timekeeperMillis().interval().contains(8)).isTrue();
    assertThat(player.motorMillis().interval().contains(8)).isTrue();
    // A tempo that sways: neighbouring intervals move together.
    List<GridAttack> swaying = new ArrayList<>();
    Random random = new Random(3);
    for (int k = 0; k < 300; k++) {
      swaying.add(new GridAttack(k, 300 * Math.sin(k / 20.0) + random.nextGaussian()));
    }
    Estimate motor =
        TimingModel.fit(
                new Performance(500, 1, 1, List.of(), List.of(Voice.inTheRoom("Ana", swaying))))
            .players()
            .get(0)
            .motorMillis();
    assertThat(motor.unknown().cause()).isEqualTo(Estimate.Cause.VIOLATED);
  }

  @Test
  void forecastsAreWithheldFromPlayersWhoHearEachOther() {
    Performance take = band(7);
    List<Voice> voices = new ArrayList<>();
    for (Voice voice : take.voices()) {
      voices.add(
          new Voice(
              voice.player(),
              voice.written(),
              voice.attacks(),
              true,
              0,
              List.of(ThinnerClick.silent("8 bars of silence", 32))));
    }
    Forecast forecast =
        TimingModel.fit(new Performance(500, 2, 1, take.clickSteps(), voices))
            .players()
            .get(0)
            .forecasts()
            .get(0);
    assertThat(forecast.returnMillis().unknown().cause()).isEqualTo(Estimate.Cause.COUPLED);
  }

  @Test
  void everyFigureIsFiniteOrUnknownWhateverIsPlayed() {
    for (long seed = 1; seed <= 300; seed++) {
      Random random = new Random(seed);
      TimingFindings found = TimingModel.fit(anything(random));
      for (PlayerTiming player : found.players()) {
        for (Estimate figure :
            List.of(
                player.timekeeperMillis(),
                player.motorMillis(),
                player.clickGain(),
                player.tendencyMillis())) {
          finite(seed, figure);
        }
        for (Forecast forecast : player.forecasts()) {
          finite(seed, forecast.spreadMillis());
          finite(seed, forecast.returnMillis());
        }
      }
      for (List<Estimate> row : found.coupling().gains()) {
        for (Estimate gain : row) {
          if (gain != null) {
            finite(seed, gain);
          }
        }
      }
    }
  }

  private static void finite(long seed, Estimate figure) {
    if (figure.known()) {
      assertThat(figure.value()).as("seed %d", seed).isFinite();
      assertThat(figure.interval().low()).as("seed %d", seed).isFinite();
      assertThat(figure.interval().high())
          .as("seed %d", seed)
          .isGreaterThanOrEqualTo(figure.interval().low());
    } else {
      assertThat(figure.unknown().says()).as("seed %d", seed).isNotBlank();
    }
  }

  /** Any number of players and attacks, any spread from nothing to seconds, any delay. */
  private static Performance anything(Random random) {
    int steps = 1 + random.nextInt(200);
    int stepsPerBeat = new int[] {1, 2, 3, 4, 6}[random.nextInt(5)];
    List<Integer> clicks = new ArrayList<>();
    int clickShare = 1 + random.nextInt(20);
    for (int step = 0; step < steps; step++) {
      if (random.nextInt(clickShare) == 0 && random.nextInt(10) < 8) {
        clicks.add(step);
      }
    }
    List<Voice> voices = new ArrayList<>();
    int players = random.nextInt(5);
    for (int i = 0; i < players; i++) {
      double size = Math.pow(10, 5 * random.nextDouble() - 1.5);
      double drift = random.nextInt(3) == 0 ? size * random.nextGaussian() : 0;
      int share = 1 + random.nextInt(5);
      List<GridAttack> attacks = new ArrayList<>();
      for (int step = 0; step < steps; step++) {
        if (random.nextInt(share) == 0) {
          double shape = random.nextInt(4) == 0 ? 1 : random.nextGaussian();
          attacks.add(new GridAttack(step, size * shape + drift * step));
        }
      }
      List<ThinnerClick> ahead =
          List.of(
              ThinnerClick.silent("silence", 1 + random.nextInt(64)),
              ThinnerClick.clicking(
                  "one", attacks.stream().map(GridAttack::step).toList(), List.of(0, 8, 16)));
      voices.add(
          new Voice(
              "P" + i,
              attacks.size() + random.nextInt(3),
              attacks,
              random.nextInt(4) > 0,
              random.nextInt(2) * 40,
              ahead));
    }
    return new Performance(200 + random.nextInt(1800), stepsPerBeat, 1, clicks, voices);
  }
}

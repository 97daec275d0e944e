package thinclick.server.scoring.model;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/**
 * Intervals hold the truth as often as they say, in fewer runs than {@link Simulations#main} makes;
 * seeds run from 0, so the figures are the same each time.
 */
class SimulatedCoverageTest {
  private static final int SOLO = 200;
  private static final int BANDS = 40;

  @Test
  void collinearOffbeatsUnderAFullClickKeepTheGainsCoverage() {
    Simulations.Solo found =
        Simulations.solo(SOLO, 32, Simulations.FULL, Simulations.player(Simulations.OFFBEATS));
    assertThat(found.gain()).as("%s", found).isGreaterThanOrEqualTo(.85);
  }

  @Test
  void thinningClickKeepsAllThreeCoverages() {
    Simulations.Solo found =
        Simulations.solo(SOLO, 64, Simulations.THINNING, Simulations.player(Simulations.CELL));
    assertThat(found.gain()).as("%s", found).isGreaterThanOrEqualTo(.85);
    assertThat(found.timekeeper()).as("%s", found).isGreaterThanOrEqualTo(.85);
    assertThat(found.motor()).as("%s", found).isGreaterThanOrEqualTo(.85);
  }

  @Test
  void slipsOfTheHandAreScreenedBeforeTheMotorIsEstimated() {
    assertThat(slips(true).motor()).as("screened").isGreaterThanOrEqualTo(.80);
    assertThat(slips(false).motor()).as("not screened").isLessThan(.6);
  }

  private static Simulations.Solo slips(boolean screened) {
    return Simulations.solo(
        SOLO,
        64,
        Simulations.THINNING,
        Simulations.player(Simulations.CELL),
        Simulations::spoiled,
        screened,
        Simulations.GAIN,
        Simulations.TIMEKEEPER);
  }

  @Test
  void swingDroppedAttacksAndAChangingGainDoNotBreakTheNoises() {
    Simulations.Solo swung =
        Simulations.solo(
            SOLO, 64, Simulations.THINNING, Simulations.player(Simulations.CELL).means(0, 42));
    Simulations.Solo dropped =
        Simulations.solo(
            SOLO, 64, Simulations.THINNING, Simulations.player(Simulations.CELL).drops(.1));
    Simulations.Solo changing =
        Simulations.solo(
            SOLO,
            64,
            Simulations.THINNING,
            Simulations.player(Simulations.CELL).followsClick(.3, .7));
    for (Simulations.Solo found : new Simulations.Solo[] {swung, dropped, changing}) {
      assertThat(found.timekeeper()).as("%s", found).isGreaterThanOrEqualTo(.80);
      assertThat(found.motor()).as("%s", found).isGreaterThanOrEqualTo(.80);
    }
  }

  @Test
  void realisedSpreadFallsInsideTheForecast() {
    for (int every : new int[] {1, 2}) {
      Simulations.Foretold found = Simulations.foretold(SOLO, 32, 16, Simulations.CELL, every);
      assertThat(found.inside()).as("%s", found).isBetween(.85, .96);
    }
  }

  @Test
  void gainsOfCoupledPlayersAreUnbiasedAndCovered() {
    for (int players = 2; players <= 4; players++) {
      Simulations.Coupled found = Simulations.coupled(BANDS, players, true, Simulations.THINNING);
      assertThat(Math.abs(found.meanBias())).as("%s", found).isLessThanOrEqualTo(.03);
      assertThat(found.gain())
          .as("%d players, %s", players, found)
          .isGreaterThanOrEqualTo(players < 4 ? .84 : .82);
    }
  }

  @Test
  void swingDoesNotLookLikeFollowing() {
    Simulations.Coupled found = Simulations.coupled(BANDS, 2, true, Simulations.THINNING, 0, 42);
    assertThat(found.worstBias()).as("%s", found).isLessThanOrEqualTo(.03);
  }

  @Test
  void playersWhoDoNotFollowAreRarelyGivenALeader() {
    assertThat(Simulations.coupled(BANDS, 2, false, Simulations.FULL).named())
        .isLessThanOrEqualTo(.08);
    assertThat(Simulations.coupled(BANDS, 2, false, s -> false).named()).isLessThanOrEqualTo(.08);
  }

  @Test
  void hearingLateIsNotChargedToThePlayers() {
    Simulations.Delayed found = Simulations.delayed(5 * BANDS, 30, false);
    assertThat(Math.abs(found.own())).as("%s", found).isLessThanOrEqualTo(.6);
    assertThat(found.in90()).as("%s", found).isGreaterThanOrEqualTo(.84);
  }
}

package thinclick.client.clock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import thinclick.protocol.file.Span;
import thinclick.protocol.message.AnswerMessage.ClockAnswer;
import thinclick.protocol.message.PreparingMessage.ClockState;

class ClockFollowerTest {
  private static final SimulatedLine.Way CLEAN = SimulatedLine.Way.normal(2, 0.05);
  private static final SimulatedLine.Way JITTER = SimulatedLine.Way.normal(20, 5);

  private static FollowedLine clean(long seed) {
    return new FollowedLine(new SimulatedLine(seed, CLEAN, CLEAN), seed);
  }

  private static long micros(double seconds) {
    return Math.round(seconds * 1e6);
  }

  @Nested
  class Asking {
    @Test
    void tenTimesASecondAtFirstThenFiveThenTwo() {
      ClockFollower follower = new ClockFollower(0, 7);
      List<Double> gaps = new ArrayList<>();
      List<Double> at = new ArrayList<>();
      long now = 0;
      while (now < 60_000_000_000L) {
        follower.ask(now, now / 1_000_000);
        gaps.add((follower.dueNanos() - now) / 1e9);
        at.add(now / 1e9);
        now = follower.dueNanos();
      }
      for (int i = 0; i < gaps.size(); i++) {
        if (at.get(i) < 2) {
          assertThat(gaps.get(i)).isEqualTo(0.1);
        } else if (at.get(i) < 30) {
          assertThat(gaps.get(i)).isEqualTo(0.2);
        } else {
          assertThat(gaps.get(i)).isBetween(0.4, 0.6);
        }
      }
      assertThat(gaps.get(gaps.size() - 1)).isNotEqualTo(gaps.get(gaps.size() - 2));
    }

    @Test
    void answerAfterASecondIsDropped() {
      ClockFollower follower = new ClockFollower(0, 1);
      long id = follower.ask(0, 0).id();
      follower.answered(new ClockAnswer(id, 0, 500_000, 500_000, 1), 1_000_000_001L);
      assertThat(follower.view().bestRoundTripMicros()).isEqualTo(ClockView.UNKNOWN_MICROS);
    }

    @Test
    void answerNobodyAskedForIsDropped() {
      ClockFollower follower = new ClockFollower(0, 1);
      follower.answered(new ClockAnswer(99, 0, 500_000, 500_000, 1), 1_000_000);
      assertThat(follower.view().state()).isEqualTo(ClockState.FINDING);
      assertThat(follower.view().bestRoundTripMicros()).isEqualTo(ClockView.UNKNOWN_MICROS);
    }

    @Test
    void answerCountsOnce() {
      ClockFollower follower = new ClockFollower(0, 1);
      long id = follower.ask(0, 0).id();
      ClockAnswer answer = new ClockAnswer(id, 0, 500_000, 500_000, 1);
      follower.answered(answer, 2_000_000);
      ClockView once = follower.view();
      follower.answered(answer, 3_000_000);
      assertThat(follower.view()).isEqualTo(once);
    }
  }

  @Nested
  class Believing {
    @Test
    void unknownStartsAtTheWorstCase() {
      // RFC 5905's MAXDISP is 16 s.
      assertThat(new ClockFollower(0, 1).view().uncertaintyMicros()).isEqualTo(16e6);
    }

    @Test
    void uncertaintyAddsUpToTheErrorBoundOfTheSamplePrintedForTracking() {
      // chrony's documentation of its tracking report: the error is at most |system time offset| +
      // root dispersion + half the root delay; its sample shows 0.000006523 s, 0.001100737 s and
      // 0.013639022 s, together 7.926771 ms. Here: how far the mapping in use is from the wanted
      // one, two unknown clocks parting by 40 ppm over 27.518425 s, half the shortest round trip.
      ClockFollower follower = new ClockFollower(0, 1);
      long first = follower.ask(932, 0).id();
      follower.answered(new ClockAnswer(first, 0, 6_833, 6_833, 1), 13_653_000);
      follower.hold(0, micros(3_600));
      long answered = micros(27.518425);
      long sent = answered * 1_000 - 13_639_022;
      follower.online(sent);
      long second = follower.ask(sent, sent / 1_000_000).id();
      long read = answered - 6_820;
      follower.answered(new ClockAnswer(second, 0, read, read, 1), answered * 1_000);
      assertThat(follower.view().bestRoundTripMicros()).isCloseTo(13_639.022, within(1e-3));
      assertThat(follower.view().uncertaintyMicros()).isCloseTo(7_926.771, within(1e-3));
    }

    @Test
    void steadyWithinASecondOnACleanLine() {
      FollowedLine line = clean(1).until(0.5);
      assertThat(line.view().state()).isEqualTo(ClockState.FINDING);
      line.until(1);
      assertThat(line.view().state()).isEqualTo(ClockState.STEADY);
      assertThat(line.errorMillis()).isCloseTo(0, within(0.05));
    }

    @Test
    void statedUncertaintyHoldsTheTruthOnEveryKindOfLine() {
      int held = 0;
      int runs = 0;
      for (LineProfile profile : LineProfile.values()) {
        for (long seed = 0; seed < 40; seed++) {
          FollowedLine line = new FollowedLine(profile.line(seed), seed).until(5);
          runs++;
          if (Math.abs(line.errorMillis()) * 1e3 <= line.view().uncertaintyMicros()) {
            held++;
          }
        }
      }
      assertThat(held)
          .as("of %d runs, seeds 0 to 39", runs)
          .isGreaterThanOrEqualTo(runs * 95 / 100);
    }

    @Test
    void asymmetryShowsInTheUncertaintyNotInTheSpread() {
      SimulatedLine.Way there = SimulatedLine.Way.normal(10, 0.2);
      SimulatedLine.Way back = SimulatedLine.Way.normal(30, 0.2);
      FollowedLine line = new FollowedLine(new SimulatedLine(5, there, back), 5).until(30);
      assertThat(line.errorMillis()).isCloseTo(-10, within(0.3));
      assertThat(line.view().uncertaintyMicros()).isBetween(10_000.0, 21_500.0);
      assertThat(line.view().spreadMicros()).isLessThan(200);
    }

    @Test
    void halfOfAllExchangesLostLeavesAGoodClock() {
      SimulatedLine lossy = new SimulatedLine(11, JITTER, JITTER).loss(0.5);
      FollowedLine line = new FollowedLine(lossy, 11).until(30);
      assertThat(line.view().state()).isEqualTo(ClockState.STEADY);
      assertThat(line.errorMillis()).isCloseTo(0, within(2.0));
    }

    @Test
    void skewAndWanderAreFollowedForTenMinutes() {
      for (long seed = 0; seed < 5; seed++) {
        SimulatedLine drifting = new SimulatedLine(seed, CLEAN, CLEAN).skew(80).wander(0.02);
        FollowedLine line = new FollowedLine(drifting, seed).until(600);
        assertThat(line.view().mapping().skewPpm()).as("seed %d", seed).isCloseTo(80, within(6.0));
        assertThat(line.errorMillis()).as("seed %d", seed).isCloseTo(0, within(0.3));
      }
    }

    @Test
    void roundTripsAreReported() {
      FollowedLine line = clean(2).until(10);
      assertThat(line.view().roundTripMicros()).isCloseTo(4_000, within(50.0));
      assertThat(line.view().bestRoundTripMicros()).isLessThan(line.view().roundTripMicros());
    }
  }

  @Nested
  class Jumps {
    @Test
    void roomClockThatStepsIsFoundAnew() {
      SimulatedLine stepping = new SimulatedLine(3, JITTER, JITTER).step(20, 400);
      FollowedLine line = new FollowedLine(stepping, 3).until(19.9);
      assertThat(line.errorMillis()).isCloseTo(0, within(3.0));
      line.until(22);
      assertThat(line.view().state()).isEqualTo(ClockState.STEADY);
      assertThat(line.errorMillis()).isCloseTo(0, within(5.0));
    }

    @Test
    void sleepIsNoticedAtTheFirstQuestionAfterIt() {
      FollowedLine line = clean(4).until(10);
      line.sleep(1.5);
      line.follower.ask(line.nanos(), line.nanos() / 1_000_000);
      assertThat(line.view().state()).isEqualTo(ClockState.LOST);
      assertThat(line.view().uncertaintyMicros()).isEqualTo(ClockView.UNKNOWN_MICROS);
    }

    @Test
    void wallClockThatRanOnWhileTheMonotonicStoodIsNoticed() {
      FollowedLine line = clean(4).until(10).jumpWall(251);
      line.follower.ask(line.nanos(), line.nanos() / 1_000_000 + 251);
      assertThat(line.view().state()).isEqualTo(ClockState.LOST);
    }

    @Test
    void smallCorrectionOfTheWallClockIsNoSleep() {
      FollowedLine line = clean(4).until(10).jumpWall(240).until(12);
      assertThat(line.view().state()).isEqualTo(ClockState.STEADY);
      assertThat(line.follower.slept()).isNull();
    }

    @Test
    void wallClockThatWasSetIsFoundToHaveBeenNoSleep() {
      FollowedLine line = clean(4).until(10).jumpWall(3_600_000).until(12);
      assertThat(line.view().state()).isEqualTo(ClockState.STEADY);
      assertThat(line.follower.slept()).isNull();
    }

    @Test
    void sleepIsFoundOutWhereTheLineIsLostBeforeTheNextQuestion() {
      FollowedLine line = clean(4).until(10).sleep(40);
      line.follower.offline(line.nanos(), line.nanos() / 1_000_000);
      line.until(line.nanos() / 1e9 + 3);
      line.follower.online(line.nanos());
      line.until(line.nanos() / 1e9 + 2);
      Span slept = line.follower.slept();
      assertThat(slept.toMicros() - slept.fromMicros()).isBetween(micros(40), micros(40.7));
    }

    @Test
    void burstOfDelayIsNoJump() {
      for (long seed = 0; seed < 10; seed++) {
        SimulatedLine heavy =
            new SimulatedLine(
                seed,
                SimulatedLine.Way.logNormal(2, 15, 1.5),
                SimulatedLine.Way.logNormal(2, 15, 1.5));
        FollowedLine line = new FollowedLine(heavy, seed);
        for (double at = 2; at < 60; at += 0.5) {
          line.until(at);
          assertThat(line.view().state())
              .as("seed %d at %.1f s", seed, at)
              .isEqualTo(ClockState.STEADY);
        }
      }
    }

    @Test
    void newEpochOfTheServerStartsAnew() {
      FollowedLine line = clean(6).until(10).restartServer().until(10.2);
      assertThat(line.view().epoch()).isEqualTo(2);
      assertThat(line.view().state()).isEqualTo(ClockState.FINDING);
    }
  }

  @Nested
  class InATake {
    /** A mapping that is 3 ms out when the count-in begins, at 20 s of this computer's clock. */
    private FollowedLine outByThree() {
      SimulatedLine stepping = new SimulatedLine(8, JITTER, JITTER).step(20.5, 3);
      FollowedLine line = new FollowedLine(stepping, 8).until(20);
      long room = Math.round(line.roomNow());
      line.follower.hold(room, room + micros(4));
      return line;
    }

    @Test
    void mappingStandsStillInTheCountIn() {
      FollowedLine line = outByThree().until(20.2);
      ClockMapping before = line.view().mapping();
      line.until(23.5);
      assertThat(line.view().mapping()).isEqualTo(before);
    }

    @Test
    void mappingIsBentByAtMost200PartsInAMillion() {
      FollowedLine line = outByThree().until(24.1);
      double last = line.roomNow();
      long lastNanos = line.nanos();
      for (double at = 24.2; at < 60; at += 0.1) {
        line.until(at);
        double gained = (line.roomNow() - last) / ((line.nanos() - lastNanos) / 1e3) - 1;
        assertThat(Math.abs(gained) * 1e6).as("at %.1f s", at).isLessThan(200.01);
        last = line.roomNow();
        lastNanos = line.nanos();
      }
      assertThat(line.errorMillis()).isCloseTo(0, within(2.0));
    }

    @Test
    void mappingMayJumpOnceTheTakeIsOver() {
      SimulatedLine stepping = new SimulatedLine(9, CLEAN, CLEAN).step(20.5, 1.5);
      FollowedLine line = new FollowedLine(stepping, 9).until(20);
      long room = Math.round(line.roomNow());
      line.follower.hold(room, room + micros(60));
      line.until(55);
      assertThat(line.errorMillis()).isCloseTo(-1.5, within(0.2));
      line.follower.release(line.nanos());
      assertThat(line.errorMillis()).isCloseTo(0, within(0.2));
    }

    @Test
    void furtherOutThanTwentyMillisecondsIsLost() {
      // A step of less than half the round trip could be the line's, so it is not taken for one.
      SimulatedLine.Way slow = SimulatedLine.Way.normal(40, 0.1);
      SimulatedLine stepping = new SimulatedLine(10, slow, slow).step(20.5, 38);
      FollowedLine line = new FollowedLine(stepping, 10).until(20);
      long room = Math.round(line.roomNow());
      line.follower.hold(room, room + micros(1));
      line.until(60);
      assertThat(line.view().state()).isEqualTo(ClockState.LOST);
      assertThat(line.view().uncertaintyMicros()).isGreaterThan(ClockFollower.LOST_MICROS);
      line.follower.release(line.nanos());
      assertThat(line.view().state()).isEqualTo(ClockState.STEADY);
    }

    @Test
    void computerThatSleptInATakeFindsItsClockAnew() {
      FollowedLine line = clean(12).until(20);
      long room = Math.round(line.roomNow());
      line.follower.hold(room, room + micros(2));
      line.until(30).sleep(5);
      double woke = line.roomNow();
      line.until(line.nanos() / 1e9 + 2);
      assertThat(line.view().state()).isEqualTo(ClockState.STEADY);
      assertThat(line.errorMillis()).isCloseTo(0, within(0.1));
      Span slept = line.follower.slept();
      assertThat(slept.toMicros()).isCloseTo(Math.round(woke), within(micros(0.01)));
      assertThat(slept.toMicros() - slept.fromMicros())
          .as("from the last thing it did to the first")
          .isBetween(micros(5), micros(5.7));
      assertThat(line.follower.slept()).as("told once").isNull();
    }
  }

  @Test
  void slewClosesASmallDifferenceInTenSecondsAndALargeOneAtItsLimit() {
    ClockMapping used = new ClockMapping(0, 0, 30);
    assertThat(Slew.towards(used, new ClockMapping(0, 1_000, 30), 30, 0))
        .isEqualTo(new ClockMapping(0, 0, 130));
    assertThat(Slew.towards(used, new ClockMapping(0, -9_000, 30), 30, 0))
        .isEqualTo(new ClockMapping(0, 0, -170));
  }

  @Test
  void mappingAndItsInverseAgree() {
    ClockMapping mapping = new ClockMapping(123_456_789_012L, 9_876_543.25, 83.5);
    for (long micros = 0; micros < 4_000_000_000_000L; micros += 123_456_789_123L) {
      assertThat(mapping.roomMicros(mapping.nanosOf((double) micros))).isEqualTo(micros);
    }
    assertThat(mapping.anchoredAt(5_000_000_000L).roomAt(7_000_000_000L))
        .isCloseTo(mapping.roomAt(7_000_000_000L), within(1e-6));
  }
}

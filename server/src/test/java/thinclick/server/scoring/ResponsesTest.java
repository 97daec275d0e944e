package thinclick.server.scoring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import thinclick.protocol.file.FileCodec;
import thinclick.protocol.file.Take;

/** Answers against calls as they were played; worked by hand, 4/4 in eighths at 120. */
class ResponsesTest {
  /** Mina calls in bars 1, 3 ...; Jonas answers in bars 2, 4 ...; each attack is "step ms". */
  private static Take take(String calls, String answers) {
    List<String> attacks = new ArrayList<>();
    add(attacks, "Mina", calls);
    add(attacks, "Jonas", answers);
    String json =
        """
        {"format": "thinclick.take", "version": 1, "title": "Call", "meter": "4/4", "tempo": 120.0,
         "stepsPerBeat": 2, "startMicros": 3000000, "toleranceMillis": 50,
         "stages": [{"bars": 4, "everyBars": 1, "beats": [1, 2, 3, 4]}],
         "parts": [{"player": "Mina", "entryStep": 0, "attackSteps": [0, 3, 6, 16, 19, 22]},
                   {"player": "Jonas", "entryStep": 0, "attackSteps": [8, 11, 14, 24, 27, 30],
                    "answers": [{"of": 0, "fromStep": 8, "toStep": 16, "laterSteps": 8},
                                {"of": 0, "fromStep": 24, "toStep": 32, "laterSteps": 8}]}],
         "attacks": [%s]}
        """
            .formatted(String.join(",", attacks));
    return FileCodec.readTake(json.getBytes(StandardCharsets.UTF_8));
  }

  private static void add(List<String> attacks, String player, String written) {
    for (String one : written.split(", ", -1)) {
      String[] at = one.split(" ", -1);
      long micros =
          3_000_000
              + Long.parseLong(at[0]) * 250_000
              + Math.round(Double.parseDouble(at[1]) * 1000);
      attacks.add("{\"player\": \"%s\", \"micros\": %d}".formatted(player, micros));
    }
  }

  private static List<Response> of(String calls, String answers) {
    return Scorer.review(take(calls, answers)).responses();
  }

  @Test
  void anExactEchoComesBackWhole() {
    List<Response> found =
        of("0 0, 3 0, 6 0, 16 0, 19 0, 22 0", "8 0, 11 0, 14 0, 24 0, 27 0, 30 0");

    assertThat(found).hasSize(2);
    assertThat(found.get(0)).isEqualTo(new Response("Jonas", "Mina", 1, 2, 3, 3, 0, 0.0, 0.0));
    assertThat(found.get(1)).isEqualTo(new Response("Jonas", "Mina", 3, 4, 3, 3, 0, 0.0, 0.0));
  }

  /** The caller adds the and of 3 and leaves out the 4; the answer is asked for just that. */
  @Test
  void theAnswerIsHeldAgainstTheCallAsItWasPlayedNotAsItWasWritten() {
    Response asPlayed =
        of("0 0, 3 0, 5 0, 16 0, 19 0, 22 0", "8 0, 11 0, 13 0, 24 0, 27 0, 30 0").get(0);
    Response asWritten =
        of("0 0, 3 0, 5 0, 16 0, 19 0, 22 0", "8 0, 11 0, 14 0, 24 0, 27 0, 30 0").get(0);

    assertThat(asPlayed.called()).isEqualTo(3);
    assertThat(asPlayed.answered()).isEqualTo(3);
    assertThat(asPlayed.extra()).isZero();
    assertThat(asWritten.answered()).isEqualTo(2);
    assertThat(asWritten.extra()).isEqualTo(1);
  }

  @Test
  void aCallThatLiesBackIsAnsweredLyingBack() {
    Response echo =
        of("0 20, 3 20, 6 20, 16 20, 19 20, 22 20", "8 20, 11 20, 14 20, 24 20, 27 20, 30 20")
            .get(0);
    Response early =
        of("0 20, 3 20, 6 20, 16 20, 19 20, 22 20", "8 0, 11 0, 14 0, 24 0, 27 0, 30 0").get(0);

    assertThat(echo.laterMillis()).isCloseTo(0, within(3.0));
    assertThat(early.laterMillis()).isCloseTo(-20, within(3.0));
    assertThat(early.spreadMillis()).isCloseTo(0, within(1.0));
  }

  @Test
  void whatDoesNotComeBackIsNotKnownAndNotNought() {
    Response silent = of("0 0, 3 0, 6 0, 16 0, 19 0, 22 0", "24 0, 27 0, 30 0").get(0);

    assertThat(silent.called()).isEqualTo(3);
    assertThat(silent.answered()).isZero();
    assertThat(silent.laterMillis()).isNull();
    assertThat(silent.spreadMillis()).isNull();
  }

  /** Moving the whole take in time changes nothing. */
  @Test
  void seededAnswersKeepTheirCountsHoweverTheTakeIsMoved() {
    for (long seed = 0; seed < 20; seed++) {
      Random random = new Random(seed);
      StringBuilder calls = new StringBuilder();
      StringBuilder answers = new StringBuilder();
      for (int step : new int[] {0, 3, 6, 16, 19, 22}) {
        calls
            .append(calls.isEmpty() ? "" : ", ")
            .append(step)
            .append(' ')
            .append(random.nextInt(30));
        answers
            .append(answers.isEmpty() ? "" : ", ")
            .append(step + 8)
            .append(' ')
            .append(random.nextInt(30) - 10);
      }
      Take take = take(calls.toString(), answers.toString());
      assertThat(Scorer.review(take).responses())
          .as("seed %d", seed)
          .allMatch(one -> one.called() == 3 && one.answered() == 3 && one.extra() == 0);
    }
  }

  @Test
  void anAnswerToOneselfOrToNobodyIsRefused() {
    assertThatThrownBy(
            () ->
                FileCodec.readTake(
                    """
                    {"format": "thinclick.take", "version": 1, "title": "Call", "meter": "4/4",
                     "tempo": 120.0, "stepsPerBeat": 2, "startMicros": 0,
                     "stages": [{"bars": 2, "everyBars": 1, "beats": [1]}],
                     "parts": [{"player": "Mina", "entryStep": 0, "attackSteps": [8],
                       "answers": [{"of": 0, "fromStep": 8, "toStep": 16, "laterSteps": 8}]}],
                     "attacks": []}
                    """
                        .getBytes(StandardCharsets.UTF_8)))
        .hasMessageContaining("answers[0].of: expected another part");
  }
}

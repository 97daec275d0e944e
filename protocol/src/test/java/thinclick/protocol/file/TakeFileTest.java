package thinclick.protocol.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TakeFileTest {
  private final String json = twoPlayers();

  @Test
  void aTakeReadAndWrittenIsTheSame() {
    Take take = FileCodec.readTake(bytes(json));

    assertThat(FileCodec.readTake(FileCodec.write(take))).isEqualTo(take);
    assertThat(take.attacks()).hasSize(48);
    assertThat(take.plan().clicks(take.grid())).hasSize(20);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '~',
      textBlock =
          """
          "tempo": 120.0      ~ "tempo": "120"        ~ tempo: expected a number, found "120"
          "tempo": 120.0      ~ "tempo": 20           ~ tempo: expected 30 to 320, found 20
          "stepsPerBeat": 2   ~ "stepsPerBeat": 2.5   ~ stepsPerBeat: expected a whole number, found 2.5
          "stepsPerBeat": 2   ~ "stepsPerBeat": 5     ~ stepsPerBeat: expected 2, 3, 4 or 6, found 5
          "beats": [1]        ~ "beats": [5]          ~ stages[1].beats[0]: expected a beat from 1 to 4 in 4/4, found 5
          "beats": [1]        ~ "beats": [1], "steps": [0] ~ stages[1]: expected either beats or steps, found both
          "version": 1        ~ "version": 2          ~ version: expected at most 1, found 2; a newer Thinclick wrote this file
          "swing": 1.0        ~ "swing": "swung"      ~ swing: expected a ratio from 1 to 4 or "band", found "swung"
          59, 61, 63]         ~ 59, 61, 64]           ~ parts[0].attackSteps[31]: expected a step before the end of the stages, 64, found 64
          {"player": "Ben", "micros": 1988000 ~ {"player": "Zoe", "micros": 1988000 ~ attacks[0].player: expected a player with a part, found "Zoe"
          "title"             ~ "mood": 1, "title"    ~ mood: unknown field; expected one of attacks, clickInterrupted, endMicros, format, meter, parts, stages, startMicros, stepsPerBeat, swing, tempo, title, toleranceMillis, version
          """,
      quoteCharacter = '`')
  void wrongFieldsAreNamedWithWhatWasExpected(String from, String to, String says) {
    assertThat(json).contains(from);
    assertThatThrownBy(() -> FileCodec.readTake(bytes(json.replace(from, to)))).hasMessage(says);
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  private static String twoPlayers() {
    try (InputStream in =
        TakeFileTest.class.getResourceAsStream("/fixtures/two_players.take.json")) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }
}

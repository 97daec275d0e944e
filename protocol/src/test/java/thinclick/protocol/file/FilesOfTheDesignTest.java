package thinclick.protocol.file;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.Swing;

/** The examples that the design shows for each kind of file. */
class FilesOfTheDesignTest {
  @Test
  void theDrillIsReadWholeAndWrittenTheSame() {
    Drill drill = FileCodec.readDrill(Resource.bytes("/drills/long-threes.json"));

    assertThat(drill)
        .isEqualTo(
            new Drill(
                "thinclick.drill",
                1,
                "Long threes",
                6,
                Meter.FOUR_FOUR,
                2,
                Swing.STRAIGHT,
                new Drill.TempoRange(70, 200, 100),
                null,
                4,
                new Drill.Deal(DealKind.CANON, 7),
                List.of(
                    new Drill.Chair(
                        "1",
                        "comping",
                        new Drill.Cell(
                            32, List.of(0, 3, 6), List.of(0), List.of(2, 2, 2), null, null, null),
                        3,
                        null,
                        null,
                        null)),
                List.of(Stage.ofBeats(8, 1, 1, 2, 3, 4)),
                null));
    assertThat(FileCodec.readDrill(FileCodec.write(drill))).isEqualTo(drill);
  }

  @Test
  void theLessonIsReadWholeAndWrittenTheSame() {
    Lesson lesson = FileCodec.readLesson(Resource.bytes("/drills/first-day.lesson.json"));

    assertThat(lesson)
        .isEqualTo(
            new Lesson(
                "thinclick.lesson",
                1,
                "First day",
                45,
                List.of(new Lesson.Item("Even eighths", 2, "Clap it once without the click."))));
    assertThat(FileCodec.readLesson(FileCodec.write(lesson))).isEqualTo(lesson);
  }

  @Test
  void aTakeWithEveryOptionalFieldIsReadWholeAndWrittenTheSame() {
    Take take = FileCodec.readTake(Resource.bytes("/fixtures/whole.take.json"));

    assertThat(take)
        .isEqualTo(
            new Take(
                "thinclick.take",
                1,
                "Whole",
                new Meter(4, 4),
                132,
                2,
                Swing.BAND,
                3_000_000,
                42.5,
                List.of(Stage.ofBeats(8, 1, 1, 2, 3, 4), Stage.ofSteps(8, 2, 8)),
                List.of(
                    new Part(
                        "Ana",
                        3,
                        2.5,
                        List.of(3, 6, 9, 12),
                        List.of(3, 9),
                        List.of(2, 2, 3, 1),
                        List.of(60, 62, 63, 65),
                        new Feel(25, -3.5),
                        "comping",
                        0.5,
                        "alto saxophone",
                        true,
                        List.of(new Span(4_000_000, 5_000_000)),
                        new Hearing(Hearing.Mode.AS_IT_ARRIVES, 38))),
                List.of(
                    new Attack("Ana", 3_681_234, 96, 60, 110.0, 1.5, true, true),
                    Attack.tap("Ana", -5)),
                20_000_000L,
                List.of(new Span(6_000_000, 6_500_000))));
    assertThat(FileCodec.readTake(FileCodec.write(take))).isEqualTo(take);
  }

  @Test
  void whatIsLeftOutOfATakeHasItsDefault() {
    Take take = FileCodec.readTake(Resource.bytes("/fixtures/bare.take.json"));
    Part part = take.parts().get(0);

    assertThat(take.swing()).isEqualTo(Swing.STRAIGHT);
    assertThat(take.toleranceMillis()).isNull();
    assertThat(take.endMicros()).isNull();
    assertThat(take.clickInterrupted()).isEmpty();
    assertThat(part).isEqualTo(Part.of("Ana", 0, List.of(0, 2)));
    assertThat(part.pulseWeight()).isEqualTo(1);
    assertThat(part.feel()).isEqualTo(Feel.NONE);
    assertThat(take.attacks()).containsExactly(Attack.tap("Ana", 1_000_000));
  }

  /** Nothing that was not written in is written out, so that old files stay as they were. */
  @Test
  void nothingThatWasLeftOutIsWritten() {
    String written =
        new String(
            FileCodec.write(FileCodec.readTake(Resource.bytes("/fixtures/bare.take.json"))),
            java.nio.charset.StandardCharsets.UTF_8);

    assertThat(written)
        .doesNotContain(
            "null", "accentSteps", "standIn", "away", "setAside", "unsure", "endMicros", "weight")
        .endsWith("}\n");
  }

  @Test
  void barsThatAreFreeAreReadAndWrittenTheSame() {
    Drill drill = FileCodec.readDrill(Resource.bytes("/drills/trading-fours.json"));
    Take take = FileCodec.readTake(Resource.bytes("/fixtures/free.take.json"));

    Drill.Chair chair = drill.chairs().get(0);
    assertThat(chair.free()).containsExactly(new FreeBars(4, 8, null), new FreeBars(0, 1, 4));
    assertThat(IntStream.range(0, 20).filter(chair::freeAt))
        .containsExactly(0, 4, 5, 6, 7, 8, 12, 16);
    assertThat(take.parts().get(0).free()).containsExactly(new FreeSpan(1, 4), new FreeSpan(4, 8));
    assertThat(FileCodec.readDrill(FileCodec.write(drill))).isEqualTo(drill);
    assertThat(FileCodec.readTake(FileCodec.write(take))).isEqualTo(take);
    String written =
        new String(
            FileCodec.write(FileCodec.readDrill(Resource.bytes("/drills/long-threes.json"))),
            StandardCharsets.UTF_8);
    assertThat(written).as("what has none is written as before").doesNotContain("free");
  }
}

package thinclick.protocol.message;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import org.junit.jupiter.api.Test;
import thinclick.protocol.file.Drill;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.music.Meter;

class MessageCodecTest {
  @Test
  void typeComesFirstAndAbsentFieldsAreLeftOut() {
    TakeMessage.Attacks attacks =
        new TakeMessage.Attacks("t1", 3, 1, List.of(TakeMessage.WireAttack.tap(5_000)));

    assertThat(MessageCodec.write(attacks))
        .isEqualTo(
            "{\"type\":\"attacks\",\"takeId\":\"t1\",\"epoch\":3,\"firstSeq\":1,\"attacks\":[{\"micros\":5000}]}");
    assertThat(MessageCodec.readClient(MessageCodec.write(attacks))).isEqualTo(attacks);
  }

  @Test
  void unknownFieldsAreIgnoredAndUnknownTypesAreNot() {
    assertThat(MessageCodec.readClient("{\"type\":\"leave\",\"requestId\":4,\"mood\":\"good\"}"))
        .isEqualTo(new ClientMessage.Leave(4));
    assertThatThrownBy(() -> MessageCodec.readClient("{\"type\":\"dance\"}"))
        .isInstanceOf(MessageCodec.UnknownType.class)
        .hasMessageContaining("dance");
  }

  @Test
  void aWrongFieldIsNamed() {
    assertThatThrownBy(
            () ->
                MessageCodec.readClient(
                    "{\"type\":\"attacks\",\"takeId\":\"t1\",\"epoch\":3,\"firstSeq\":1,\"attacks\":[{\"micros\":\"5\"}]}"))
        .isInstanceOf(BadInput.class)
        .hasMessage("attacks[0].micros: expected a whole number, found \"5\"");
  }

  @Test
  void listThatIsWrittenOnceIsWhatTheGeneralWriterWrites() {
    AnswerMessage.LibraryList one = list("Short threes");
    AnswerMessage.LibraryList other = list("Bell and sand");

    for (AnswerMessage.LibraryList asked : List.of(one, one, other, one)) {
      assertThat(MessageCodec.writeBytes(asked)).isEqualTo(MessageCodec.writeByFields(asked));
    }
    MessageCodec.writeBytes(one)[0] = '!';
    assertThat(MessageCodec.writeBytes(one)).isEqualTo(MessageCodec.writeByFields(one));
  }

  private static AnswerMessage.LibraryList list(String title) {
    return new AnswerMessage.LibraryList(
        List.of(
            new AnswerMessage.DrillLine(
                title, 1, new Meter(4, 4), 2, 3, new Drill.TempoRange(60, 120, 80), null)),
        List.of());
  }
}

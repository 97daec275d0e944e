package thinclick.protocol.message;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.message.AnswerMessage.TakePiece;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.Swing;

/** A take cut into pieces and gathered again. */
class TakePiecesTest {
  private static Take take(int attacks) {
    return new Take(
        Take.FORMAT,
        Take.VERSION,
        "Ands",
        Meter.FOUR_FOUR,
        120,
        2,
        Swing.STRAIGHT,
        3_000_000,
        50.0,
        List.of(Stage.ofBeats(4, 1, 1)),
        List.of(Part.of("Mina", 0, List.of(1, 3))),
        LongStream.range(0, attacks).mapToObj(i -> Attack.tap("Mina", 3_000_000 + i)).toList(),
        null,
        List.of());
  }

  private static TakePieces gathered(Take take) {
    TakePieces pieces = new TakePieces();
    while (!pieces.complete()) {
      assertThat(pieces.add(TakePieces.cut("t1", true, take, pieces.next()))).isTrue();
    }
    return pieces;
  }

  @Test
  void whatIsGatheredIsWhatWasCutAndEveryPieceFitsIntoAFrame() {
    Take take = take(9_000);
    TakePieces pieces = gathered(take);
    assertThat(pieces.take()).isEqualTo(new AnswerMessage.KeptTake("t1", true, take));
    TakePiece first = TakePieces.cut("t1", true, take, 1);
    assertThat(first.of()).isGreaterThan(1);
    assertThat(MessageCodec.write(first).length()).isLessThan(MessageCodec.MAX_SERVER_FRAME);
    assertThat(MessageCodec.readServer(MessageCodec.write(first))).isEqualTo(first);
    assertThatThrownBy(() -> TakePieces.cut("t1", true, take, first.of() + 1))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("expected 1 to " + first.of());
  }

  @Test
  void aTakeThatGrewMeanwhileBeginsAgain() {
    TakePieces pieces = new TakePieces();
    assertThat(pieces.add(TakePieces.cut("t1", true, take(9_000), 1))).isTrue();
    assertThat(pieces.add(TakePieces.cut("t1", true, take(9_001), 2))).isFalse();
    assertThat(pieces.next()).isEqualTo(1);
    assertThat(pieces.complete()).isFalse();
  }

  @Test
  void aDamagedPieceIsNoticedByTheChecksum() {
    TakePiece whole = TakePieces.cut("t1", true, take(3), 1);
    TakePiece other = TakePieces.cut("t1", true, take(4), 1);
    TakePieces pieces = new TakePieces();
    pieces.add(new TakePiece("t1", true, 1, 1, whole.bytes(), whole.sha256(), other.lines()));
    assertThatThrownBy(pieces::take)
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("expected " + whole.bytes() + " bytes");
  }
}

package thinclick.server.room;

import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.message.AnswerMessage;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.ErrorCode;
import thinclick.protocol.message.MessageCodec;
import thinclick.protocol.message.QuestionMessage;
import thinclick.protocol.message.ServerMessage;
import thinclick.protocol.message.ServerMessage.Phase;
import thinclick.protocol.message.TakePieces;

/**
 * Takes that players keep for themselves: the whole where the leader shares it (a duo does by
 * itself), else the own part and attacks alone. The leader's is always whole.
 */
public final class TakeSharing {
  private static final long BETWEEN_MICROS = 2_000_000;
  private static final int MOST_BYTES = MessageCodec.MAX_SERVER_FRAME - 8_192;

  private final Standing room;

  TakeSharing(Standing room) {
    this.room = room;
  }

  /** Somebody asks for a take; the answer comes once it is read. */
  void asked(Member asking, QuestionMessage.KeepTake message) {
    room.expect(Phase.REVIEW);
    TakeRun take = room.remembered(message.takeId());
    boolean whole = room.leads(asking) || (asking.role != Role.LISTENER && room.shares(take));
    String seat = take.seats.get(asking.id);
    if (!whole && seat == null) {
      throw new Refusal(
          ErrorCode.NOT_ALLOWED,
          null,
          "expected somebody with a part in the take, or a take that the leader shares");
    }
    Integer piece = message.piece();
    Long connection = asking.connection;
    if (connection == null) {
      return;
    }
    if (piece == null || piece == 1) {
      if (room.now - asking.takeAskedMicros < BETWEEN_MICROS) {
        throw new Refusal(ErrorCode.NOT_ALLOWED, null, "expected two seconds between two of these");
      }
      asking.takeAskedMicros = room.now;
    } else if (connection.equals(asking.pieceAskedOn)) {
      throw new Refusal(
          ErrorCode.NOT_ALLOWED, null, "expected one piece at a time: one is on its way");
    }
    asking.pieceAskedOn = connection;
    room.out.readTake(
        new Effect.ReadTake(
            connection, message.requestId(), take.id(), whole ? null : seat, piece));
  }

  /** A take was read; whoever asked may be gone by now. */
  void read(RoomEvent.TakeRead read) {
    Effect.ReadTake asked = read.asked();
    Member asking = room.members.on(asked.connection());
    ServerMessage answer = read.answer();
    if (asking == null) {
      return;
    }
    asking.pieceAskedOn = null;
    if (answer == null) {
      room.out.refuse(
          asked.connection(),
          new Refusal(ErrorCode.NOT_ALLOWED, "takeId", read.why()),
          asked.requestId());
      return;
    }
    room.out.send(asking, answer);
    room.out.send(asking, new ServerMessage.Done(asked.requestId(), room.revision));
  }

  /**
   * A take as it goes to who asked for it: whole, or the own part alone where that was asked; where
   * it is too long for a frame the piece that was asked for.
   */
  public static RoomEvent.TakeRead seen(Effect.ReadTake asked, Take take) {
    boolean whole = asked.only() == null;
    Take seen = whole ? take : only(take, asked.only());
    ServerMessage inOne = new AnswerMessage.KeptTake(asked.takeId(), whole, seen);
    int bytes = MessageCodec.writeBytes(inOne).length;
    if (bytes <= MOST_BYTES) {
      return new RoomEvent.TakeRead(asked, inOne, "");
    }
    Integer piece = asked.piece();
    if (piece == null) {
      return new RoomEvent.TakeRead(
          asked,
          null,
          "expected a take of at most "
              + MOST_BYTES
              + " bytes, found "
              + bytes
              + "; ask for it in pieces, or export it by the host's own command");
    }
    try {
      return new RoomEvent.TakeRead(asked, TakePieces.cut(asked.takeId(), whole, seen, piece), "");
    } catch (BadInput noSuchPiece) {
      return new RoomEvent.TakeRead(asked, null, String.valueOf(noSuchPiece.getMessage()));
    }
  }

  /** One player's part and attacks. An answer's call is another's, so its mark goes too. */
  private static Take only(Take take, @Nullable String player) {
    List<Part> own =
        take.parts().stream()
            .filter(part -> part.player().equals(player))
            .map(part -> part.edited().answers(List.of()).part())
            .toList();
    return take.edited()
        .parts(own)
        .attacks(take.attacks().stream().filter(one -> one.player().equals(player)).toList())
        .take();
  }
}

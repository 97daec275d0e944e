package thinclick.server.room;

import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.protocol.message.AnswerMessage;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.ErrorCode;
import thinclick.protocol.message.MessageCodec;
import thinclick.protocol.message.QuestionMessage;
import thinclick.protocol.message.ServerMessage;
import thinclick.protocol.message.ServerMessage.Phase;

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
    TakeRun take =
        room.take(message.takeId())
            .orElseThrow(
                () ->
                    new Refusal(
                        ErrorCode.NOT_ALLOWED,
                        "takeId",
                        "expected one of the last takes, found \"" + message.takeId() + "\""));
    boolean whole = room.leads(asking) || (asking.role != Role.LISTENER && room.shares(take));
    String seat = take.seats.get(asking.id);
    if (!whole && seat == null) {
      throw new Refusal(
          ErrorCode.NOT_ALLOWED,
          null,
          "expected somebody with a part in the take, or a take that the leader shares");
    }
    if (room.now - asking.takeAskedMicros < BETWEEN_MICROS) {
      throw new Refusal(ErrorCode.NOT_ALLOWED, null, "expected two seconds between two of these");
    }
    asking.takeAskedMicros = room.now;
    Long connection = asking.connection;
    if (connection != null) {
      room.out.readTake(connection, message.requestId(), take.id(), whole ? null : seat);
    }
  }

  /** A take was read; whoever asked may be gone by now. */
  void read(RoomEvent.TakeRead read) {
    Effect.ReadTake asked = read.asked();
    Member asking = room.members.on(asked.connection());
    Take take = read.take();
    if (asking == null) {
      return;
    }
    if (take == null) {
      room.out.refuse(
          asked.connection(),
          new Refusal(ErrorCode.NOT_ALLOWED, "takeId", read.why()),
          asked.requestId());
      return;
    }
    room.out.send(asking, new AnswerMessage.KeptTake(asked.takeId(), asked.only() == null, take));
    room.out.send(asking, new ServerMessage.Done(asked.requestId(), room.revision));
  }

  /** A take as it goes to who asked for it: whole, or the own part alone where that was asked. */
  public static RoomEvent.TakeRead seen(Effect.ReadTake asked, Take take) {
    Take seen = asked.only() == null ? take : only(take, asked.only());
    int bytes = MessageCodec.write(new AnswerMessage.KeptTake(asked.takeId(), true, seen)).length();
    return bytes <= MOST_BYTES
        ? new RoomEvent.TakeRead(asked, seen, "")
        : new RoomEvent.TakeRead(
            asked,
            null,
            "expected a take of at most "
                + MOST_BYTES
                + " bytes, found "
                + bytes
                + "; the host's own command exports it");
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

package thinclick.server.room;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.message.CloseCode;
import thinclick.protocol.message.ErrorCode;
import thinclick.protocol.message.ServerMessage;
import thinclick.protocol.message.ServerMessage.Phase;

/** What a room wants done, gathered while it deals with one event. */
final class Outbox {
  private List<Effect> effects = new ArrayList<>();

  /** Everything since the last call, in order. */
  List<Effect> taken() {
    List<Effect> done = effects;
    effects = new ArrayList<>();
    return done;
  }

  void send(List<Long> connections, ServerMessage message) {
    if (!connections.isEmpty()) {
      effects.add(new Effect.Send(connections, message));
    }
  }

  void send(long connection, ServerMessage message) {
    effects.add(new Effect.Send(List.of(connection), message));
  }

  /** To a member where it is here. */
  void send(Member member, ServerMessage message) {
    if (member.connection != null) {
      send(member.connection.longValue(), message);
    }
  }

  void refuse(long connection, Refusal refused, @Nullable Long requestId) {
    refuse(connection, refused, requestId, null);
  }

  /**
   * Tells why something was not done.
   *
   * @param takeId the take that was spoken of; null for none
   */
  void refuse(long connection, Refusal refused, @Nullable Long requestId, @Nullable String takeId) {
    send(
        connection,
        new ServerMessage.Problem(
            refused.code(), refused.says(), refused.field(), requestId, false, takeId));
  }

  static ServerMessage.Problem problem(ErrorCode code, String says) {
    return new ServerMessage.Problem(code, says, null, null, false);
  }

  void close(long connection, CloseCode code, String says) {
    effects.add(new Effect.Close(connection, code, says));
  }

  void append(JournalEntry entry) {
    effects.add(new Effect.Append(entry));
  }

  void readTake(Effect.ReadTake wanted) {
    effects.add(wanted);
  }

  void recall(long connection, long requestId, PastQuestion question) {
    effects.add(new Effect.Recall(connection, requestId, question));
  }

  void makeReview(String takeId) {
    effects.add(new Effect.MakeReview(takeId));
  }

  void wantWord(long connection, long requestId) {
    effects.add(new Effect.WantWord(connection, requestId));
  }

  void phaseChanged(Phase from, Phase to, String why) {
    effects.add(new Effect.PhaseChanged(from, to, why));
  }

  void ended(String why) {
    effects.add(new Effect.Ended(why));
  }
}

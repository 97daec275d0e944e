package thinclick.server.room;

import java.util.HashSet;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.ErrorCode;
import thinclick.protocol.message.QuestionMessage;
import thinclick.protocol.message.ServerMessage;
import thinclick.protocol.message.ServerMessage.Phase;

/**
 * What members ask about takes before: the own course for whoever had a part, the band's for the
 * leader. One question of a kind is under way for each member, so that no more than that waits.
 */
final class Recalling {
  private final Standing room;

  Recalling(Standing room) {
    this.room = room;
  }

  void course(Member asking, QuestionMessage.AskCourse message) {
    room.expect(Phase.REVIEW);
    TakeRun take = room.remembered(message.takeId());
    boolean leads = room.leads(asking);
    boolean played = asking.role != Role.LISTENER && take.seats.containsKey(asking.id);
    if (!leads && !played) {
      throw new Refusal(
          ErrorCode.NOT_ALLOWED, null, "expected the leader, or somebody with a part in the take");
    }
    long connection = Objects.requireNonNull(asking.connection);
    checkNoneWaits(asking.courseAskedOn, connection);
    asking.courseAskedOn = connection;
    room.out.recall(
        connection,
        message.requestId(),
        new PastQuestion.CourseOf(
            take.id(), take.written().title(), leads, played ? asking.id : null));
  }

  void fewest(Member asking, QuestionMessage.AskFewest message) {
    if (!room.leads(asking)) {
      throw new Refusal(ErrorCode.NOT_ALLOWED, null, "expected the leader");
    }
    long connection = Objects.requireNonNull(asking.connection);
    checkNoneWaits(asking.fewestAskedOn, connection);
    asking.fewestAskedOn = connection;
    room.out.recall(
        connection,
        message.requestId(),
        new PastQuestion.FewestAt(message.title(), message.tempo(), band()));
  }

  private static void checkNoneWaits(@Nullable Long askedOn, long connection) {
    if (askedOn != null && askedOn == connection) {
      throw new Refusal(
          ErrorCode.NOT_ALLOWED, null, "expected one of these at a time: the answer is on its way");
    }
  }

  /** Those with a part, else those who are here to play. */
  private Set<String> band() {
    Set<String> names = new HashSet<>(room.seats.values());
    if (names.isEmpty()) {
      room.members.playersHere().stream()
          .filter(member -> !room.leads(member))
          .forEach(member -> names.add(member.name.shown()));
    }
    return names;
  }

  /** The host has looked; whoever asked may be gone by now. */
  void recalled(RoomEvent.Recalled recalled) {
    Effect.Recall asked = recalled.asked();
    Member asking = room.members.on(asked.connection());
    if (asking == null) {
      return;
    }
    if (asked.question() instanceof PastQuestion.CourseOf) {
      asking.courseAskedOn = null;
    } else {
      asking.fewestAskedOn = null;
    }
    ServerMessage answer = recalled.answer();
    if (answer == null) {
      room.out.refuse(
          asked.connection(),
          new Refusal(ErrorCode.NOT_ALLOWED, null, recalled.why()),
          asked.requestId());
      return;
    }
    room.out.send(asking, answer);
    room.out.send(asking, new ServerMessage.Done(asked.requestId(), room.revision));
  }
}

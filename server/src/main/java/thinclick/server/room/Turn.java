package thinclick.server.room;

import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Hearing;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.message.AnswerMessage;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.CloseCode;
import thinclick.protocol.message.ErrorCode;
import thinclick.protocol.message.LeaderCommand;
import thinclick.protocol.message.PreparingMessage;
import thinclick.protocol.message.QuestionMessage;
import thinclick.protocol.message.ServerMessage;
import thinclick.protocol.message.ServerMessage.Phase;
import thinclick.protocol.message.TakeMessage;
import thinclick.protocol.message.TakeNews.StopReason;

/** One message of one member: in which phases it is heard, and which part of the room hears it. */
final class Turn implements ClientMessage.Handler {
  private final Standing room;
  private final RoomParts parts;
  private final Member sender;

  /** True where {@code done} has been sent, or will be sent later. */
  private boolean answered;

  private Turn(Standing room, RoomParts parts, Member sender) {
    this.room = room;
    this.parts = parts;
    this.sender = sender;
  }

  /** Follows a message, or tells its sender why not. */
  static void take(Standing room, RoomParts parts, Member sender, RoomEvent.Said said) {
    ClientMessage message = said.message();
    Long requestId = message instanceof ClientMessage.Command command ? command.requestId() : null;
    try {
      if (message instanceof LeaderCommand command) {
        parts.leading().check(sender, command);
      }
      Turn turn = new Turn(room, parts, sender);
      message.to(turn);
      if (requestId != null && !turn.answered) {
        room.out.send(sender, new ServerMessage.Done(requestId, room.revision));
      }
    } catch (Refusal refused) {
      room.out.refuse(said.connection(), refused, requestId, deliveredTo(message));
    } catch (BadInput bad) {
      room.out.refuse(said.connection(), Refusal.of(bad), requestId, deliveredTo(message));
    }
  }

  /** The take that what was played is for; null where nothing played is in it. */
  private static @Nullable String deliveredTo(ClientMessage message) {
    return message instanceof TakeMessage.Attacks attacks
        ? attacks.takeId()
        : message instanceof TakeMessage.Lengths lengths
            ? lengths.takeId()
            : message instanceof TakeMessage.PlayedThrough through ? through.takeId() : null;
  }

  /** Everything but while a take is on. */
  private void expectNoTake() {
    room.expect(Phase.GATHERING, Phase.DEALT, Phase.REVIEW);
  }

  @Override
  public void onOpenRoom(ClientMessage.OpenRoom message) {
    throw new Refusal(ErrorCode.WRONG_PHASE, null, "expected once, as the first message");
  }

  @Override
  public void onJoin(ClientMessage.Join message) {
    throw new Refusal(ErrorCode.WRONG_PHASE, null, "expected once, as the first message");
  }

  @Override
  public void onClock(PreparingMessage.Clock message) {
    // Answered at the edge, where the instants are; here only when somebody drives a room alone.
    room.out.send(
        sender,
        new AnswerMessage.ClockAnswer(
            message.id(), message.t1Micros(), room.now, room.now, room.epoch));
  }

  @Override
  public void onClockReport(PreparingMessage.ClockReport message) {
    if (message.epoch() != room.epoch) {
      throw new Refusal(
          ErrorCode.WRONG_EPOCH, "epoch", "expected " + room.epoch + ", found " + message.epoch());
    }
    sender.clock = message;
    room.rosterChanged = true;
  }

  @Override
  public void onSoundCheck(PreparingMessage.SoundCheck message) {
    expectNoTake();
    if (sender.role == Role.LISTENER) {
      throw new Refusal(ErrorCode.NOT_ALLOWED, null, "a listener has no chair to measure");
    }
    boolean measured = message.taps() > 0;
    sender.latencyMillis = measured ? message.latencyMillis() : null;
    sender.soundUncertaintyMillis = measured ? message.uncertaintyMillis() : null;
    room.rosterChanged = true;
    room.changed = true;
    room.out.send(
        sender,
        new AnswerMessage.SoundCheckNoted(
            message.latencyMillis(), message.uncertaintyMillis(), measured));
  }

  @Override
  public void onReady(PreparingMessage.Ready message) {
    room.expect(Phase.DEALT);
    if (!room.seats.containsKey(sender.id)) {
      throw new Refusal(ErrorCode.NOT_ALLOWED, null, "expected a player with a part");
    }
    parts.table().checkDeal(message.dealId());
    sender.readyFor = message.ready() ? message.dealId() : null;
    room.rosterChanged = true;
  }

  @Override
  public void onAttacks(TakeMessage.Attacks message) {
    parts.playing().attacks(sender, message);
  }

  @Override
  public void onLengths(TakeMessage.Lengths message) {
    parts.playing().lengths(sender, message);
  }

  @Override
  public void onPlayedThrough(TakeMessage.PlayedThrough message) {
    parts.playing().through(sender, message);
  }

  @Override
  public void onHearsOthers(TakeMessage.HearsOthers message) {
    if (sender.role == Role.LISTENER) {
      throw new Refusal(ErrorCode.NOT_ALLOWED, null, "a listener hears whatever is played");
    }
    sender.hearing = new Hearing(message.mode(), message.delayMillis());
    room.changed = true;
    parts.desk().hears(sender);
  }

  @Override
  public void onClickInterrupted(TakeMessage.ClickInterrupted message) {
    if (sender.role == Role.LISTENER) {
      throw new Refusal(ErrorCode.NOT_ALLOWED, null, "a listener plays to no click");
    }
    parts.desk().clickInterrupted(message);
  }

  @Override
  public void onAsleep(TakeMessage.Asleep message) {
    parts.desk().asleep(sender, message);
  }

  @Override
  public void onLeave(ClientMessage.Leave message) {
    answered = true;
    room.out.send(sender, new ServerMessage.Done(message.requestId(), room.revision));
    parts.entrance().leave(sender, CloseCode.LEFT);
  }

  @Override
  public void onBrowse(QuestionMessage.Browse message) {
    parts.table().browse(sender, message);
  }

  @Override
  public void onKeepTake(QuestionMessage.KeepTake message) {
    parts.sharing().asked(sender, message);
    answered = true;
  }

  @Override
  public void onAskCourse(QuestionMessage.AskCourse message) {
    parts.recalling().course(sender, message);
    answered = true;
  }

  @Override
  public void onAskFewest(QuestionMessage.AskFewest message) {
    parts.recalling().fewest(sender, message);
    answered = true;
  }

  @Override
  public void onMaterial(LeaderCommand.Material message) {
    expectNoTake();
    parts.table().material(message);
  }

  @Override
  public void onPlan(LeaderCommand.Plan message) {
    expectNoTake();
    parts.table().plan(message);
  }

  @Override
  public void onDeal(LeaderCommand.Deal message) {
    expectNoTake();
    parts.table().deal(message);
  }

  @Override
  public void onStart(LeaderCommand.Start message) {
    room.expect(Phase.DEALT);
    parts.table().checkDeal(message.dealId());
    parts.desk().start(message);
  }

  @Override
  public void onStop(LeaderCommand.Stop message) {
    room.expect(Phase.COUNT_IN, Phase.TAKE);
    parts.desk().stop(parts.desk().running(message.takeId()), room.now, StopReason.LEADER);
  }

  @Override
  public void onResync(ClientMessage.Resync message) {
    parts.telling().missedTo(sender, message.revision());
  }

  @Override
  public void onClaimLead(ClientMessage.ClaimLead message) {
    parts.leading().claim(sender);
  }

  @Override
  public void onReplan(LeaderCommand.Replan message) {
    room.expect(Phase.COUNT_IN, Phase.TAKE);
    parts.desk().replan(message);
  }

  @Override
  public void onSeat(LeaderCommand.Seat message) {
    expectNoTake();
    parts.leading().seat(message);
  }

  @Override
  public void onStandIn(LeaderCommand.StandIn message) {
    expectNoTake();
    parts.leading().standIn(message);
  }

  @Override
  public void onPassLead(LeaderCommand.PassLead message) {
    expectNoTake();
    parts.leading().pass(message);
  }

  @Override
  public void onRemove(LeaderCommand.Remove message) {
    parts.leading().remove(sender, message);
  }

  @Override
  public void onLock(LeaderCommand.Lock message) {
    parts.leading().lock(message);
  }

  @Override
  public void onShare(LeaderCommand.Share message) {
    parts.leading().share(message);
  }

  @Override
  public void onNewWord(LeaderCommand.NewWord message) {
    answered = true;
    parts.leading().wantWord(sender, message);
  }

  @Override
  public void onNote(LeaderCommand.Note message) {
    parts.leading().note(message);
  }

  @Override
  public void onCloseRoom(LeaderCommand.CloseRoom message) {
    answered = true;
    room.out.send(sender, new ServerMessage.Done(message.requestId(), room.revision));
    room.runningTake().ifPresent(take -> parts.desk().stop(take, room.now, StopReason.LEADER));
    room.out.append(new JournalEntry.Closed());
    String why = "the leader has closed the room";
    parts.entrance().end(why, null, CloseCode.CLOSED, why);
  }
}

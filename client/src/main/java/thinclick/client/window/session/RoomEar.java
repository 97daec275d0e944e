package thinclick.client.window.session;

import java.util.concurrent.Executor;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import java.util.function.UnaryOperator;
import thinclick.client.clock.ClockView;
import thinclick.client.link.LinkState;
import thinclick.client.link.RoomListener;
import thinclick.client.window.words.Refused;
import thinclick.protocol.message.AnswerMessage;
import thinclick.protocol.message.ErrorCode;
import thinclick.protocol.message.ServerMessage;
import thinclick.protocol.message.TakeNews;
import thinclick.protocol.time.MonotonicClock;

/** Takes what the link tells to the window's thread, each piece as a change of the room's state. */
final class RoomEar implements RoomListener {
  private final Executor windowThread;
  private final MonotonicClock clock;
  private final BiConsumer<RoomEar, UnaryOperator<RoomState>> change;
  private final Consumer<AnswerMessage.KeptTake> kept;
  private final PastTakes past;
  private final BiConsumer<RoomEar, TakeNews.Heard> others;

  /**
   * @param change runs on the window's thread
   * @param others hears what fellow players play, on the window's thread
   * @param kept takes what was asked for to be kept, on the window's thread
   * @param past takes what is told of takes before, on the window's thread
   */
  RoomEar(
      Executor windowThread,
      MonotonicClock clock,
      BiConsumer<RoomEar, UnaryOperator<RoomState>> change,
      BiConsumer<RoomEar, TakeNews.Heard> others,
      Consumer<AnswerMessage.KeptTake> kept,
      PastTakes past) {
    this.windowThread = windowThread;
    this.clock = clock;
    this.change = change;
    this.others = others;
    this.kept = kept;
    this.past = past;
  }

  private void next(UnaryOperator<RoomState> step) {
    windowThread.execute(() -> change.accept(this, step));
  }

  @Override
  public void linkChanged(LinkState state, String says) {
    long nanos = clock.nanos();
    next(room -> room.linkChanged(state, says, nanos));
  }

  @Override
  public void clockChanged(ClockView view) {
    next(room -> room.clockChanged(view));
  }

  @Override
  public void soundCheckNoted(AnswerMessage.SoundCheckNoted noted) {
    next(room -> room.chairNoted(noted));
  }

  @Override
  public void waitingChanged(int waiting) {
    next(room -> room.waitingChanged(waiting));
  }

  @Override
  public void attacksRefused(int attacks, String says) {
    next(room -> room.problem(LeftBehind.givenUp(attacks, says)));
  }

  @Override
  public void welcome(ServerMessage.Welcome welcome) {
    next(room -> room.welcome(welcome));
  }

  @Override
  public void room(ServerMessage.Room message) {
    next(room -> room.room(message));
  }

  @Override
  public void roster(ServerMessage.Roster roster) {
    next(room -> room.roster(roster));
  }

  @Override
  public void dealt(ServerMessage.Dealt dealt) {
    next(room -> room.dealt(dealt));
  }

  @Override
  public void announced(TakeNews.Announced announced) {
    next(room -> room.announced(announced));
  }

  @Override
  public void replanned(TakeNews.Replanned replanned) {
    next(room -> room.replanned(replanned));
  }

  @Override
  public void stopped(TakeNews.Stopped stopped) {
    next(room -> room.stopped(stopped));
  }

  @Override
  public void reviewReady(TakeNews.ReviewReady review) {
    next(room -> room.reviewed(review));
  }

  @Override
  public void listed(AnswerMessage.LibraryList list) {
    next(room -> room.listed(list));
  }

  @Override
  public void drill(AnswerMessage.WholeDrill drill) {
    next(room -> room.ownDrill(drill.drill()));
  }

  @Override
  public void take(AnswerMessage.KeptTake take) {
    windowThread.execute(() -> kept.accept(take));
  }

  @Override
  public void course(AnswerMessage.CourseSoFar course) {
    windowThread.execute(() -> past.heard(course));
  }

  @Override
  public void fewest(AnswerMessage.Fewest fewest) {
    windowThread.execute(() -> past.heard(fewest));
  }

  @Override
  public void heard(TakeNews.Heard heard) {
    windowThread.execute(() -> others.accept(this, heard));
  }

  @Override
  public void problem(ServerMessage.Problem problem) {
    // Everything else is between programs: a player has not asked for it and can do nothing.
    boolean concernsPlayers =
        problem.code() == ErrorCode.STORE_UNAVAILABLE
            || problem.code() == ErrorCode.UNCERTAIN_CLOCK;
    if (problem.requestId() == null && concernsPlayers) {
      next(room -> room.problem(new Refused(problem.code(), problem.says())));
    }
  }
}

package thinclick.client.link;

import thinclick.client.clock.ClockView;
import thinclick.protocol.message.AnswerMessage;
import thinclick.protocol.message.ServerMessage;
import thinclick.protocol.message.TakeNews;

/**
 * What a link tells: a method for each message of the server's, and four for its own news. All
 * calls come in order from the link's own thread and must not block it.
 */
public interface RoomListener {
  /** The link's state changed; {@code says} is a sentence for a person. */
  default void linkChanged(LinkState state, String says) {}

  /** The belief about room time changed. */
  default void clockChanged(ClockView clock) {}

  /** Everything that was played so far is stored by the server: {@code waiting} attacks are not. */
  default void waitingChanged(int waiting) {}

  /**
   * So many attacks are given up: the server does not take them and never will, as it {@code says}.
   * Told once; before what waits is told.
   */
  default void attacksRefused(int attacks, String says) {}

  default void welcome(ServerMessage.Welcome welcome) {}

  default void room(ServerMessage.Room room) {}

  default void roster(ServerMessage.Roster roster) {}

  default void soundCheckNoted(AnswerMessage.SoundCheckNoted noted) {}

  default void dealt(ServerMessage.Dealt dealt) {}

  default void announced(TakeNews.Announced announced) {}

  default void listed(AnswerMessage.LibraryList list) {}

  default void drill(AnswerMessage.WholeDrill drill) {}

  default void take(AnswerMessage.KeptTake take) {}

  default void course(AnswerMessage.CourseSoFar course) {}

  default void fewest(AnswerMessage.Fewest fewest) {}

  default void stageNear(TakeNews.StageNear stage) {}

  default void replanned(TakeNews.Replanned replanned) {}

  default void heard(TakeNews.Heard heard) {}

  default void stored(TakeNews.Stored stored) {}

  default void stopped(TakeNews.Stopped stopped) {}

  default void reviewReady(TakeNews.ReviewReady review) {}

  default void done(ServerMessage.Done done) {}

  default void problem(ServerMessage.Problem problem) {}

  default void goodbye(ServerMessage.Goodbye goodbye) {}
}

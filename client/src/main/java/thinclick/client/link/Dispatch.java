package thinclick.client.link;

import thinclick.protocol.message.AnswerMessage;
import thinclick.protocol.message.ServerMessage;
import thinclick.protocol.message.TakeNews;

/** Hands each of the server's messages to the listener's method for it. */
final class Dispatch {
  private Dispatch() {}

  static void to(RoomListener listener, ServerMessage message) {
    if (message instanceof TakeNews.Heard heard) {
      listener.heard(heard);
    } else if (message instanceof TakeNews.Stored stored) {
      listener.stored(stored);
    } else if (message instanceof ServerMessage.Welcome welcome) {
      listener.welcome(welcome);
    } else if (message instanceof ServerMessage.Room room) {
      listener.room(room);
    } else if (message instanceof ServerMessage.Roster roster) {
      listener.roster(roster);
    } else if (message instanceof AnswerMessage.SoundCheckNoted noted) {
      listener.soundCheckNoted(noted);
    } else if (message instanceof ServerMessage.Dealt dealt) {
      listener.dealt(dealt);
    } else if (message instanceof TakeNews.Announced announced) {
      listener.announced(announced);
    } else if (message instanceof AnswerMessage.LibraryList list) {
      listener.listed(list);
    } else if (message instanceof AnswerMessage.WholeDrill drill) {
      listener.drill(drill);
    } else if (message instanceof AnswerMessage.KeptTake take) {
      listener.take(take);
    } else if (message instanceof AnswerMessage.CourseSoFar course) {
      listener.course(course);
    } else if (message instanceof AnswerMessage.Fewest fewest) {
      listener.fewest(fewest);
    } else if (message instanceof TakeNews.StageNear stage) {
      listener.stageNear(stage);
    } else if (message instanceof TakeNews.Replanned replanned) {
      listener.replanned(replanned);
    } else if (message instanceof TakeNews.Stopped stopped) {
      listener.stopped(stopped);
    } else if (message instanceof TakeNews.ReviewReady review) {
      listener.reviewReady(review);
    } else if (message instanceof ServerMessage.Done done) {
      listener.done(done);
    } else if (message instanceof ServerMessage.Problem problem) {
      listener.problem(problem);
    } else if (message instanceof ServerMessage.Goodbye goodbye) {
      listener.goodbye(goodbye);
    }
  }
}

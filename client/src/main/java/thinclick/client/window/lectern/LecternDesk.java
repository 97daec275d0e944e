package thinclick.client.window.lectern;

import thinclick.client.window.season.ClassDesk;
import thinclick.client.window.session.Session;
import thinclick.client.window.words.Words;
import thinclick.protocol.time.MonotonicClock;

/**
 * All that a leader works with, put together once for a window.
 *
 * @param roster who is here
 * @param lectern material, plan and deal
 * @param lesson the lesson that is run
 * @param steering the click of a running take
 * @param proposals what is proposed after a take
 * @param classes the class that the room was opened for
 */
public record LecternDesk(
    RosterModel roster,
    LecternModel lectern,
    LessonModel lesson,
    Steering steering,
    Proposals proposals,
    ClassDesk classes) {

  /** For a session. */
  public static LecternDesk of(
      Session session, Words words, MonotonicClock clock, ClassDesk classes) {
    RosterModel roster = new RosterModel(session, words);
    LecternModel lectern = new LecternModel(session, words, roster);
    lectern.fitBy(classes::levels);
    return new LecternDesk(
        roster,
        lectern,
        new LessonModel(session, words, lectern, clock),
        new Steering(session, words, lectern),
        new Proposals(session, words, lectern),
        classes);
  }
}

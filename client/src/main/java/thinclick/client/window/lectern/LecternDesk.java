package thinclick.client.window.lectern;

import thinclick.client.window.season.ClassDesk;
import thinclick.client.window.session.Session;
import thinclick.client.window.words.Words;
import thinclick.protocol.time.MonotonicClock;

/**
 * All that a leader works with, put together once for a window.
 *
 * @param roster who is here
 * @param lectern what is chosen and dealt
 * @param drills what can be chosen
 * @param plan tempo and click plan, as they are written
 * @param take the take in the leader's hand
 * @param lesson the lesson that is run
 * @param prompt what is said of all that now
 * @param steering the click of a running take
 * @param proposals what is proposed after a take
 * @param classes the class that the room was opened for
 */
public record LecternDesk(
    RosterModel roster,
    LecternModel lectern,
    DrillSearch drills,
    PlanModel plan,
    TakeModel take,
    LessonModel lesson,
    Prompt prompt,
    Steering steering,
    Proposals proposals,
    ClassDesk classes) {

  /** For a session. */
  public static LecternDesk of(
      Session session, Words words, MonotonicClock clock, ClassDesk classes) {
    RosterModel roster = new RosterModel(session, words);
    LecternModel lectern = new LecternModel(session, roster);
    lectern.fitBy(classes::levels);
    TakeModel take = new TakeModel(session, lectern);
    LessonModel lesson = new LessonModel(session, lectern, take, clock);
    return new LecternDesk(
        roster,
        lectern,
        new DrillSearch(session, words, lectern),
        new PlanModel(lectern, words),
        take,
        lesson,
        new Prompt(session, words, lectern, take, lesson),
        new Steering(session, words, lectern, take),
        new Proposals(session, words, lectern),
        classes);
  }
}

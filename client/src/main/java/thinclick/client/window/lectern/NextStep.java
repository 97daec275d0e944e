package thinclick.client.window.lectern;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.words.Words;
import thinclick.protocol.file.Drill;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.message.ServerMessage.Dealt;
import thinclick.protocol.message.TakeNews.ReviewReady;
import thinclick.protocol.music.Stage;
import thinclick.server.history.Entry;
import thinclick.server.material.Thinning;
import thinclick.server.scoring.Review;
import thinclick.server.words.Advice;
import thinclick.server.words.NextRung.Move;
import thinclick.server.words.Outcome;
import thinclick.server.words.Quantity;
import thinclick.server.words.Spoken;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.json.JsonMapper;

/**
 * The next rung after a take, with its reason. What becomes of the click is decided where the
 * review is made, so that the lectern, the wall and the review's own page say one thing; where
 * something is to be mended first that is said, and set up where it is a drill, a plan or a tempo.
 */
public final class NextStep {
  private static final JsonMapper MAPPER = JsonMapper.builder().build();
  private static final int MOST_TAKES = 200;

  private final Words words;
  private final Map<String, Played> played = new LinkedHashMap<>();

  /**
   * @param out who was off for more than four bars
   * @param notHeard who was not heard, and so is not in the outcome
   * @param move what becomes of the click; null where {@code first} is to be mended
   * @param first what the review says comes next, in its own words
   * @param advice the same as a value; null where the review does not say
   */
  private record Played(
      Entry.Key key,
      Outcome outcome,
      List<String> out,
      List<String> notHeard,
      @Nullable Move move,
      String first,
      @Nullable Advice advice) {}

  /**
   * What is proposed.
   *
   * @param move what to do with the click; null where something else is to be mended first
   * @param reason why, a sentence
   * @param drill the drill that is proposed; another one only where that is to be mended first
   * @param plan the click plan that is proposed
   * @param tempo beats a minute; another than before where the click cannot get fuller, or where
   *     what is to be mended first is played slower
   */
  public record Proposal(
      @Nullable Move move, String reason, Drill drill, List<Stage> plan, double tempo) {}

  public NextStep(Words words) {
    this.words = words;
  }

  /** Remembers what a review says; one that comes again takes the place of the one before. */
  public void remember(RoomState room) {
    ReviewReady ready = room.review();
    Dealt dealt = room.dealt();
    if (ready == null || dealt == null || room.abandoned()) {
      return;
    }
    try {
      Review review = MAPPER.treeToValue(ready.review(), Review.class);
      Entry.Key key =
          new Entry.Key(
              dealt.title(),
              dealt.meter(),
              dealt.stepsPerBeat(),
              dealt.swing(),
              dealt.tempo(),
              dealt.stages(),
              Entry.Key.fitted(dealt.parts()));
      played.remove(ready.takeId());
      played.put(
          ready.takeId(),
          new Played(
              key,
              Outcome.of(review),
              Outcome.out(review),
              Outcome.notHeard(review),
              Spoken.moveOf(ready.review()),
              ready.review().path("next").asString(""),
              Spoken.adviceOf(ready.review())));
      if (played.size() > MOST_TAKES) {
        played.remove(played.keySet().iterator().next());
      }
    } catch (JacksonException | BadInput unreadable) {
      // A review of another version: nothing is proposed from it.
    }
  }

  /** Forgets what was remembered; another room has other players. */
  public void forget() {
    played.clear();
  }

  private @Nullable Played last() {
    Played last = null;
    for (Played one : played.values()) {
      last = one;
    }
    return last;
  }

  /** What is proposed after the last take; null where none was reviewed. */
  public @Nullable Proposal proposal(@Nullable Drill drill) {
    Played last = last();
    if (last == null || drill == null || !drill.title().equals(last.key().title())) {
      return null;
    }
    Entry.Key key = last.key();
    Move move = last.move();
    if (move == null) {
      String first = words.say("lectern.next.first", last.first());
      FirstThings things = FirstThings.of(last.advice(), drill, key.stages(), key.tempo());
      return new Proposal(null, first, things.drill(), things.plan(), things.tempo());
    }
    Thinning thinning = new Thinning(drill.meter(), drill.stepsPerBeat(), drill.groups());
    long seed = drill.deal().seed() + played.size();
    List<Stage> plan = key.stages();
    List<Stage> proposed =
        switch (move) {
          case UP -> thinning.fewerClicks(plan, seed);
          case DOWN -> thinning.moreClicks(plan, seed);
          case DOWN_TWO -> thinning.moreClicks(thinning.moreClicks(plan, seed), seed);
          case ONCE_MORE, STAY, NO_VERDICT -> plan;
        };
    boolean atEnd = proposed.equals(plan) && move != Move.ONCE_MORE && move != Move.STAY;
    boolean slower = atEnd && (move == Move.DOWN || move == Move.DOWN_TWO);
    double tempo = slower ? FirstThings.slower(drill, key.tempo()) : key.tempo();
    String why = atEnd ? end(move, last) : reason(move, last);
    return new Proposal(move, why + aside(move, last), drill, proposed, tempo);
  }

  /**
   * What to do with the click after the last take; null where none was reviewed, or where something
   * else is to be mended first.
   */
  public @Nullable Move move() {
    Played last = last();
    return last == null ? null : last.move();
  }

  /** The ladder has an end each way: then something else changes than the click. */
  private String end(Move move, Played last) {
    return switch (move) {
      case UP -> words.say("lectern.next.thinnest");
      case DOWN, DOWN_TWO -> words.say("lectern.next.fullest");
      case ONCE_MORE, STAY, NO_VERDICT -> words.say("lectern.next.none", last.first());
    };
  }

  /** True where every beat of the last take's plan clicked already. */
  public boolean fullest() {
    Played last = last();
    if (last == null) {
      return false;
    }
    Entry.Key key = last.key();
    Thinning thinning = new Thinning(key.meter(), key.stepsPerBeat(), null);
    return thinning.moreClicks(key.stages(), 0).equals(key.stages());
  }

  private String reason(Move move, Played last) {
    Outcome outcome = last.outcome();
    double percent = outcome.holdPercent() == null ? 0 : outcome.holdPercent();
    String hold = Quantity.percent(percent).shown(words.locale());
    return switch (move) {
      case UP -> words.say("lectern.next.up", hold);
      case ONCE_MORE -> words.say("lectern.next.onceMore", hold);
      case STAY -> words.say(stay(outcome), hold);
      case DOWN -> words.say(percent < 75 ? "lectern.next.down" : "lectern.next.displaced", hold);
      case DOWN_TWO -> words.say("lectern.next.downTwo", hold);
      case NO_VERDICT -> words.say("lectern.next.none", last.first());
    };
  }

  /** Where the band goes on, the leader hears of those who were out or not heard all the same. */
  private String aside(Move move, Played last) {
    boolean goesOn = move == Move.UP || move == Move.ONCE_MORE || move == Move.STAY;
    return (goesOn ? said("lectern.next.out", last.out()) : "")
        + said("lectern.next.notHeard", last.notHeard());
  }

  private String said(String key, List<String> names) {
    return names.isEmpty() ? "" : " " + words.say(key, String.join(", ", names), names.size());
  }

  private static String stay(Outcome last) {
    Double hold = last.holdPercent();
    if (hold != null && hold < 90) {
      return "lectern.next.stay";
    }
    Double upbeats = last.upbeatPercent();
    return upbeats != null && upbeats < 85 ? "lectern.next.stay.upbeats" : "lectern.next.stay.back";
  }
}

package thinclick.client.window.session;

import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.client.clock.ClockView;
import thinclick.client.link.LinkState;
import thinclick.client.window.words.Refused;
import thinclick.protocol.message.ServerMessage.Dealt;
import thinclick.protocol.message.ServerMessage.Person;
import thinclick.protocol.message.ServerMessage.Phase;
import thinclick.protocol.message.TakeNews.Announced;
import thinclick.protocol.message.TakeNews.ReviewReady;
import thinclick.protocol.message.TakeNews.Stopped;

/** A room's state on the way to the next: what is not set stays as it was. */
final class RoomEdit {
  private String address;
  private @Nullable LinkState link;
  private String linkSays;
  private long lostNanos;
  private String word;
  private String myId;
  private boolean leader;
  private List<Person> people;
  private Phase phase;
  private @Nullable String title;
  private @Nullable Dealt dealt;
  private @Nullable Announced announced;
  private @Nullable Stopped stopped;
  private @Nullable ReviewReady review;
  private int waiting;
  private ClockView clock;
  private double chairMillis;
  private boolean locked;
  private String note;
  private Shelf shelf;
  private Refused problem;

  RoomEdit(RoomState from) {
    address = from.address();
    link = from.link();
    linkSays = from.linkSays();
    lostNanos = from.lostNanos();
    word = from.word();
    myId = from.myId();
    leader = from.leader();
    people = from.people();
    phase = from.phase();
    title = from.title();
    dealt = from.dealt();
    announced = from.announced();
    stopped = from.stopped();
    review = from.review();
    waiting = from.waiting();
    clock = from.clock();
    chairMillis = from.chairMillis();
    locked = from.locked();
    note = from.note();
    shelf = from.shelf();
    problem = from.problem();
  }

  RoomEdit address(String value) {
    address = value;
    return this;
  }

  RoomEdit link(LinkState value) {
    link = value;
    return this;
  }

  RoomEdit linkSays(String value) {
    linkSays = value;
    return this;
  }

  RoomEdit lostNanos(long value) {
    lostNanos = value;
    return this;
  }

  RoomEdit word(String value) {
    word = value;
    return this;
  }

  RoomEdit myId(String value) {
    myId = value;
    return this;
  }

  RoomEdit leader(boolean value) {
    leader = value;
    return this;
  }

  RoomEdit people(List<Person> value) {
    people = value;
    return this;
  }

  RoomEdit phase(Phase value) {
    phase = value;
    return this;
  }

  RoomEdit title(@Nullable String value) {
    title = value;
    return this;
  }

  RoomEdit dealt(@Nullable Dealt value) {
    dealt = value;
    return this;
  }

  RoomEdit announced(@Nullable Announced value) {
    announced = value;
    return this;
  }

  RoomEdit stopped(@Nullable Stopped value) {
    stopped = value;
    return this;
  }

  RoomEdit review(@Nullable ReviewReady value) {
    review = value;
    return this;
  }

  RoomEdit waiting(int value) {
    waiting = value;
    return this;
  }

  RoomEdit chairMillis(double value) {
    chairMillis = value;
    return this;
  }

  RoomEdit clock(ClockView value) {
    clock = value;
    return this;
  }

  RoomEdit locked(boolean value) {
    locked = value;
    return this;
  }

  RoomEdit note(String value) {
    note = value;
    return this;
  }

  RoomEdit shelf(Shelf value) {
    shelf = value;
    return this;
  }

  RoomEdit problem(Refused value) {
    problem = value;
    return this;
  }

  RoomState make() {
    return new RoomState(
        address,
        link,
        linkSays,
        lostNanos,
        word,
        myId,
        leader,
        people,
        phase,
        title,
        dealt,
        announced,
        stopped,
        review,
        waiting,
        clock,
        chairMillis,
        locked,
        note,
        shelf,
        problem);
  }
}

package thinclick.client.window.lectern;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.SimpleBooleanProperty;
import org.jspecify.annotations.Nullable;
import thinclick.client.rehearse.Band;
import thinclick.client.standin.Manner;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.session.Session;
import thinclick.client.window.words.Words;
import thinclick.protocol.file.Drill;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.ServerMessage.Person;
import thinclick.protocol.message.ServerMessage.Phase;

/** Who is here, in which chair, and what the leader can do with them. */
public final class RosterModel {
  private static final int MOST_CHAIRS = 24;

  private final Session session;
  private final Words words;
  private final BooleanProperty leaderPlays = new SimpleBooleanProperty(true);
  private @Nullable Seating seating;

  /** A stand-in that is to have a chair as soon as it is in the room. */
  private record Seating(String name, int chair, @Nullable String absentId) {}

  public RosterModel(Session session, Words words) {
    this.session = session;
    this.words = words;
    session.stateProperty().addListener((any, old, now) -> seatWhoCame(now));
  }

  /** Whether the leader is dealt a part as well. */
  public BooleanProperty leaderPlaysProperty() {
    return leaderPlays;
  }

  // ---------------------------------------------------------------- who is here

  /** Who would be dealt a part now, in the order of chairs. */
  public List<Person> playing() {
    return inOrder().stream().filter(Person::connected).toList();
  }

  /** Everybody who has a chair, here or away. */
  private List<Person> inOrder() {
    List<Person> players = new ArrayList<>();
    List<Integer> chairs = new ArrayList<>();
    for (Person person : session.state().people()) {
      boolean plays =
          person.role() == Role.PLAYER || (person.role() == Role.LEADER && leaderPlays.get());
      if (plays) {
        players.add(person);
        chairs.add(person.chair() == null ? players.size() : Integer.parseInt(person.chair()));
      }
    }
    return players.stream()
        .sorted(Comparator.comparingInt(person -> chairs.get(players.indexOf(person))))
        .toList();
  }

  /** The playerIds of those who would be dealt a part, in the order of chairs. */
  public List<String> chairIds() {
    List<String> practice = session.practiceChairs();
    if (practice != null) {
      return practice;
    }
    return playing().stream().map(Person::playerId).toList();
  }

  /** The roster: players by chair, then the others. */
  public List<RosterLine> lines(@Nullable Drill drill) {
    List<Person> players = inOrder();
    List<RosterLine> lines = new ArrayList<>();
    int chair = 0;
    for (Person person : players) {
      chair += person.connected() ? 1 : 0;
      lines.add(line(person, person.connected() ? chair : 0, drill));
    }
    session.state().people().stream()
        .filter(person -> !players.contains(person))
        .forEach(person -> lines.add(line(person, 0, drill)));
    return lines;
  }

  private RosterLine line(Person person, int chair, @Nullable Drill drill) {
    String clock =
        person.uncertaintyMicros() == null
            ? words.say("lectern.clock.finding")
            : words.say("lectern.clock", Math.max(1, Math.round(person.uncertaintyMicros() / 1e3)));
    String sound =
        person.standIn()
            ? words.say("lectern.person.standIn")
            : words.say(person.soundCheck() ? "lectern.sound.measured" : "lectern.sound.not");
    return new RosterLine(
        person,
        chair == 0 ? "" : Integer.toString(chair),
        does(person, chair, drill),
        person.connected() ? clock : "",
        sound,
        ready(person));
  }

  /** Nobody is ready or not before there is something to read, nor once it is being played. */
  private String ready(Person person) {
    if (!person.connected()) {
      return words.say("lectern.person.away");
    }
    if (session.state().phase() != Phase.DEALT) {
      return "";
    }
    if (person.ready()) {
      return words.say("lectern.person.ready");
    }
    return reads(person) ? words.say("lectern.person.reads") : "";
  }

  /** True for whoever was dealt a part and has not read it yet. */
  private boolean reads(Person person) {
    RoomState room = session.state();
    return room.phase() == Phase.DEALT
        && !person.ready()
        && room.dealt() != null
        && room.dealt().parts().stream().anyMatch(part -> part.player().equals(person.name()));
  }

  /** How many of those who are here and were dealt a part have read it; empty where none was. */
  String readiness() {
    List<Person> here = session.state().people().stream().filter(Person::connected).toList();
    long reading = here.stream().filter(this::reads).count();
    long ready = here.stream().filter(Person::ready).count();
    return session.state().phase() == Phase.DEALT && ready + reading > 0
        ? words.say("lectern.people.ready", ready, ready + reading)
        : "";
  }

  private String does(Person person, int chair, @Nullable Drill drill) {
    String role =
        drill == null || chair == 0
            ? null
            : drill.chairs().get((chair - 1) % drill.chairs().size()).role();
    return Stream.of(
            person.role() == Role.LEADER ? words.say("lectern.person.leads") : null,
            person.role() == Role.LISTENER ? words.say("lectern.person.listens") : null,
            role == null ? null : words.role(role))
        .filter(Objects::nonNull)
        .reduce((one, other) -> one + ", " + other)
        .orElse(words.say("lectern.person.plays"));
  }

  /** How others come in. */
  InviteModel invite() {
    return new InviteModel(session, words);
  }

  // ---------------------------------------------------------------- what can be done

  /** True where seats can be changed and people be brought in. */
  public boolean canSeat() {
    return session.state().leader() && session.state().betweenTakes();
  }

  /** Moves somebody a chair earlier (-1) or later (1); the one there changes places. */
  public void move(Person person, int by) {
    List<Person> order = playing();
    int at = order.indexOf(person);
    int to = at + by;
    if (canSeat() && at >= 0 && to >= 0 && to < order.size()) {
      session.lead().swap(person.playerId(), at + 1, order.get(to).playerId(), to + 1);
    }
  }

  /** True where the lead can be passed to somebody. */
  public boolean canLead(Person person) {
    return canSeat() && person.connected() && !person.standIn() && person.role() == Role.PLAYER;
  }

  /** Passes the lead on. */
  public void pass(Person person) {
    if (canLead(person)) {
      session.lead().pass(person.playerId());
    }
  }

  /** True where somebody can be sent out. */
  public boolean canRemove(Person person) {
    return session.state().leader()
        && person.role() != Role.LEADER
        && !person.playerId().equals(session.state().myId());
  }

  /** Sends somebody out. */
  public void remove(Person person) {
    if (canRemove(person)) {
      session.lead().remove(person.playerId());
    }
  }

  /**
   * Brings a stand-in in.
   *
   * @param absent whose chair it takes; null for a chair of its own
   * @param chair the chair it takes where nobody is stood in for; 0 for the next one
   */
  public void fill(Manner manner, @Nullable Person absent, int chair) {
    List<String> taken = session.state().people().stream().map(Person::name).toList();
    String name =
        Band.of(MOST_CHAIRS).stream()
            .filter(one -> taken.stream().noneMatch(one::equalsIgnoreCase))
            .findFirst()
            .orElse(null);
    if (!canSeat() || name == null) {
      return;
    }
    if (absent != null && !absent.connected()) {
      seating = new Seating(name, 0, absent.playerId());
    } else {
      seating = chair > 0 ? new Seating(name, chair, null) : null;
    }
    session.bring(name, manner);
  }

  private void seatWhoCame(RoomState room) {
    Seating wanted = seating;
    if (wanted == null) {
      return;
    }
    if (!room.inside()) {
      seating = null;
      return;
    }
    for (Person person : room.people()) {
      if (person.name().equals(wanted.name()) && person.connected()) {
        seating = null;
        if (wanted.absentId() != null) {
          session.lead().standInFor(wanted.absentId());
        } else {
          session.lead().seat(person.playerId(), wanted.chair());
        }
      }
    }
  }

  /** Lets nobody new in, or lets them in again. */
  public void lock(boolean locked) {
    if (session.state().leader()) {
      session.lead().lock(locked);
    }
  }

  /** Lets players see each other's marks and keep whole takes, or no longer. */
  public void share(boolean shared) {
    if (session.state().leader()) {
      session.lead().share(shared);
    }
  }

  /** Gives the room another word. */
  public void newWord() {
    if (session.state().leader()) {
      session.lead().newWord();
    }
  }

  /** Writes a note to one, or to everybody where nobody is named. */
  public void note(String text, @Nullable Person to) {
    if (session.state().leader()) {
      session.lead().note(text.strip(), to == null ? null : to.playerId());
    }
  }
}

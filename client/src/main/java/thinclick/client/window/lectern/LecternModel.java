package thinclick.client.window.lectern;

import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ReadOnlyListProperty;
import javafx.beans.property.ReadOnlyListWrapper;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import javafx.collections.FXCollections;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.session.Session;
import thinclick.client.window.words.Words;
import thinclick.protocol.file.Drill;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.ServerMessage.Dealt;
import thinclick.protocol.message.ServerMessage.Person;
import thinclick.protocol.message.ServerMessage.Phase;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.server.material.Stock;
import thinclick.server.words.ClickWords;
import thinclick.server.words.Speaker;

/** The leader's book: who is here, what can be played, what is chosen, what can be done now. */
public final class LecternModel {
  private final Session session;
  private final Words words;
  private final StringProperty looking = new SimpleStringProperty("");
  private final BooleanProperty leaderPlays = new SimpleBooleanProperty(true);
  private final ReadOnlyListWrapper<Drill> drills =
      new ReadOnlyListWrapper<>(FXCollections.observableArrayList());

  public LecternModel(Session session, Words words) {
    this.session = session;
    this.words = words;
    looking.addListener((any, old, now) -> look(now));
    look("");
  }

  private void look(String part) {
    String wanted = part.strip().toLowerCase(Locale.ROOT);
    drills.setAll(
        Stock.drills().stream()
            .filter(drill -> drill.title().toLowerCase(Locale.ROOT).contains(wanted))
            .toList());
  }

  /** Whether the leader is dealt a part as well. */
  public BooleanProperty leaderPlaysProperty() {
    return leaderPlays;
  }

  /** What is looked for among the drills. */
  public StringProperty lookingProperty() {
    return looking;
  }

  /** The drills that fit what is looked for. */
  public ReadOnlyListProperty<Drill> drillsProperty() {
    return drills.getReadOnlyProperty();
  }

  /** A drill in one line. */
  public String line(Drill drill) {
    return words.say("lectern.drill", drill.title(), drill.level(), drill.meter().toString());
  }

  /** The drill that the room has chosen, where it is one of the stock's; else null. */
  public @Nullable Drill chosen() {
    String title = session.state().title();
    return title != null && Stock.has(title) ? Stock.find(title) : null;
  }

  /** Chooses a drill for the room. */
  public void choose(Drill drill) {
    if (session.state().leader() && session.state().betweenTakes()) {
      session.choose(drill.title());
    }
  }

  /** Sets the tempo, beats a minute; answers what is wrong with it, empty where nothing is. */
  public String tempo(String written) {
    Drill drill = chosen();
    if (drill == null) {
      return "";
    }
    try {
      double tempo = Double.parseDouble(written.strip());
      if (tempo < drill.tempo().from() || tempo > drill.tempo().to()) {
        return words.say("lectern.tempo.range", drill.tempo().from(), drill.tempo().to());
      }
      session.plan(stages(drill), tempo);
      return "";
    } catch (NumberFormatException | BadInput wrong) {
      return words.say("lectern.tempo.range", drill.tempo().from(), drill.tempo().to());
    }
  }

  /** The tempo of what is dealt, else the drill's own. */
  public double tempoOf(Drill drill) {
    Dealt dealt = dealtOf(drill);
    return dealt == null ? drill.tempo().start() : dealt.tempo();
  }

  private List<Stage> stages(Drill drill) {
    Dealt dealt = dealtOf(drill);
    return dealt == null ? drill.stages() : dealt.stages();
  }

  private @Nullable Dealt dealtOf(Drill drill) {
    Dealt dealt = session.state().dealt();
    return dealt != null && drill.title().equals(dealt.title()) ? dealt : null;
  }

  /** Who is here, a line each. */
  public List<String> people() {
    return session.state().people().stream().map(this::person).toList();
  }

  private String person(Person person) {
    Stream<String> remarks =
        Stream.of(
                person.role() == Role.LEADER ? "lectern.person.leads" : "",
                person.role() == Role.LISTENER ? "lectern.person.listens" : "",
                person.standIn() ? "lectern.person.standIn" : "",
                person.connected() ? "" : "lectern.person.away",
                person.ready() ? "lectern.person.ready" : "")
            .filter(key -> !key.isEmpty())
            .map(words::say);
    List<String> said = remarks.toList();
    return said.isEmpty() ? person.name() : person.name() + ", " + String.join(", ", said);
  }

  /** The click plan, a sentence a stage. */
  public List<String> plan() {
    Drill drill = chosen();
    if (drill == null) {
      return List.of();
    }
    Meter meter = drill.meter();
    Speaker speaker = Speaker.of(words.locale());
    return stages(drill).stream()
        .map(
            stage ->
                words.say(
                    "lectern.stage",
                    stage.bars(),
                    speaker.say(ClickWords.of(stage, meter, drill.stepsPerBeat()))))
        .toList();
  }

  /** Who comes in where, a sentence a part. */
  public List<String> dealt() {
    Dealt dealt = session.state().dealt();
    return dealt == null ? List.of() : dealt.says();
  }

  /** True where dealing is possible. */
  public boolean canDeal() {
    RoomState room = session.state();
    return room.leader() && room.betweenTakes() && room.title() != null;
  }

  /** True where the count-in can be announced. */
  public boolean canCountIn() {
    RoomState room = session.state();
    return room.leader() && room.inside() && room.phase() == Phase.DEALT;
  }

  /** True where there is something to stop. */
  public boolean canStop() {
    return session.state().leader() && session.state().takeRuns();
  }

  /** Deals. */
  public void deal() {
    if (canDeal()) {
      session.deal(leaderPlays.get());
    }
  }

  /** Counts in. */
  public void countIn() {
    if (canCountIn()) {
      session.countIn();
    }
  }

  /** Stops. */
  public void stop() {
    if (canStop()) {
      session.stop();
    }
  }
}

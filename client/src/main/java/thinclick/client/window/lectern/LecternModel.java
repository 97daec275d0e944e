package thinclick.client.window.lectern;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ReadOnlyListProperty;
import javafx.beans.property.ReadOnlyListWrapper;
import javafx.beans.property.ReadOnlyLongProperty;
import javafx.beans.property.ReadOnlyLongWrapper;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import javafx.collections.FXCollections;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.season.ClassDesk;
import thinclick.client.window.session.Lead.Hand;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.session.Session;
import thinclick.client.window.words.Words;
import thinclick.protocol.file.Drill;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.message.ServerMessage.Dealt;
import thinclick.protocol.message.ServerMessage.Phase;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.Stage;
import thinclick.server.words.Speaker;
import thinclick.server.words.StageLines;

/** The leader's book: the material, its click plan, the deal, what can be done now. */
public final class LecternModel {
  private final Session session;
  private final Words words;
  private final RosterModel roster;
  private final BooleanProperty asHeld = new SimpleBooleanProperty();
  private final StringProperty looking = new SimpleStringProperty("");
  private final ReadOnlyLongWrapper changes = new ReadOnlyLongWrapper();
  private final ReadOnlyListWrapper<Drill> drills =
      new ReadOnlyListWrapper<>(FXCollections.observableArrayList());

  private @Nullable Drill draft;
  private double tempo;
  private long nextSeed;
  private @Nullable Hand dealt;

  /** The take that this leader paused; empty for none. */
  private String paused = "";

  private @Nullable Rest rest;

  /** What was dealt last, where that is the rest of a take and not the whole. */
  private @Nullable Hand ofRest;

  private boolean countsInRest;
  private final BooleanProperty fitting = new SimpleBooleanProperty();
  private ClassDesk.@Nullable Levels levels;

  public LecternModel(Session session, Words words, RosterModel roster) {
    this.session = session;
    this.words = words;
    this.roster = roster;
    looking.addListener((any, old, now) -> look(now));
    look("");
    session.stateProperty().addListener((any, old, now) -> follow(old, now));
  }

  private void look(String part) {
    String wanted = part.strip().toLowerCase(Locale.ROOT);
    drills.setAll(
        session.state().shelf().drills().stream()
            .filter(drill -> drill.title().toLowerCase(Locale.ROOT).contains(wanted))
            .toList());
  }

  /** Another leader's choice, or that of the room one comes back into, becomes the draft. */
  private void follow(RoomState old, RoomState now) {
    if (!old.shelf().equals(now.shelf())) {
      look(looking.get());
    }
    followRest(now);
    if (!now.inside()) {
      draft = null;
      dealt = null;
    } else if (now.title() != null
        && !Objects.equals(old.title(), now.title())
        && (draft == null || !draft.title().equals(now.title()))
        && now.shelf().has(now.title())) {
      draft = now.shelf().find(now.title());
      tempo = draft.tempo().start();
      Dealt hand = now.dealt();
      if (hand != null) {
        draft = draft.withStages(hand.stages());
        tempo = hand.tempo();
      }
      changed();
    }
  }

  private void followRest(RoomState now) {
    Hand last = dealt;
    if (!now.inside()) {
      paused = "";
      rest = null;
      ofRest = null;
      countsInRest = false;
    } else if (now.announced() != null
        && now.announced().takeId().equals(paused)
        && now.stopped() != null
        && now.dealt() != null
        && !countsInRest
        && rest == null
        && last != null
        && last.drill().title().equals(now.dealt().title())) {
      rest = Rest.of(now, last);
      changed();
    } else if (countsInRest
        && now.phase() == Phase.DEALT
        && now.dealt() != null
        && ofRest != null
        && now.dealt().stages().equals(ofRest.drill().stages())) {
      countsInRest = false;
      session.lead().countIn();
    }
  }

  private void changed() {
    changes.set(changes.get() + 1);
  }

  // ---------------------------------------------------------------- what is chosen

  /** Counts up whenever what is chosen has changed. */
  public ReadOnlyLongProperty changesProperty() {
    return changes.getReadOnlyProperty();
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

  /** What is chosen, with its click plan as it stands; null for nothing. */
  public @Nullable Drill chosen() {
    return draft;
  }

  /** Beats a minute of what is chosen. */
  public double tempo() {
    return tempo;
  }

  /** True where material and plan can be changed. */
  public boolean canChoose() {
    return session.state().leader() && session.state().betweenTakes();
  }

  /** Chooses a drill for the room, from the stock or composed. */
  public void choose(Drill drill) {
    if (canChoose()) {
      take(drill, drill.tempo().start());
      session.lead().choose(drill, tempo);
    }
  }

  private void take(Drill drill, double beats) {
    ofRest = null;
    draft = drill;
    tempo = beats;
    nextSeed = drill.deal().seed();
    changed();
  }

  /** Sets the tempo, beats a minute; answers what is wrong with it, empty where nothing is. */
  public String tempo(String written) {
    Drill drill = draft;
    if (drill == null || !canChoose()) {
      return "";
    }
    try {
      double wanted = Double.parseDouble(written.strip());
      if (wanted >= drill.tempo().from() && wanted <= drill.tempo().to()) {
        tempo = wanted;
        ofRest = null;
        session.lead().plan(drill.stages(), tempo);
        changed();
        return "";
      }
    } catch (NumberFormatException noNumber) {
      // Said below, as for a number outside the range.
    }
    return words.say("lectern.tempo.range", drill.tempo().from(), drill.tempo().to());
  }

  // ---------------------------------------------------------------- the click plan

  /** The click plan, a line a stage; empty where nothing is chosen. */
  public List<String> plan() {
    Drill drill = draft;
    return drill == null ? List.of() : drill.stages().stream().map(lines(drill)::of).toList();
  }

  /**
   * Writes a line of the click plan anew: an empty one is taken out, one after the last added.
   *
   * @return what is wrong with it, empty where nothing is
   */
  public String plan(int line, String written) {
    Drill drill = draft;
    if (drill == null || !canChoose()) {
      return "";
    }
    List<Stage> stages = new ArrayList<>(drill.stages());
    boolean added = line >= stages.size();
    if (!added) {
      stages.remove(line);
    }
    try {
      if (!written.isBlank()) {
        stages.addAll(Math.min(line, stages.size()), lines(drill).parse(written, nextSeed));
      }
      if (stages.isEmpty()) {
        return words.say("lectern.plan.one");
      }
      plan(stages);
      return "";
    } catch (BadInput wrong) {
      return Words.sentence(words.say("lectern.plan.wrong", words.say(wrong)));
    }
  }

  private StageLines lines(Drill drill) {
    return new StageLines(
        Speaker.of(words.language()), drill.meter(), drill.stepsPerBeat(), drill.groups());
  }

  /** Replaces the click plan. */
  void plan(List<Stage> stages) {
    Drill drill = draft;
    if (drill != null && canChoose() && !stages.equals(drill.stages())) {
      new ClickPlan(stages).checkMeter(drill.meter(), drill.stepsPerBeat());
      draft = drill.withStages(stages);
      ofRest = null;
      session.lead().plan(stages, tempo);
      changed();
    }
  }

  // ---------------------------------------------------------------- the deal and the take

  /** What stands on the page: what is dealt, or what would be dealt now; null for nothing. */
  public @Nullable Hand page() {
    Drill drill = draft;
    if (drill == null) {
      return null;
    }
    Hand last = dealt;
    boolean asDealt =
        last != null
            && session.state().phase() != Phase.GATHERING
            && (last.equals(ofRest) || (last.drill().equals(drill) && last.tempo() == tempo));
    return asDealt ? last : hand(drill, tempo);
  }

  private Hand hand(Drill drill, double beats) {
    ClassDesk.@Nullable Levels known = levels;
    return new Hand(
        drill,
        beats,
        nextSeed,
        roster.chairIds(),
        fitting.get() && known != null ? known.of(roster.playing()) : Map.of());
  }

  /** Whether each chair's figure is fitted to what its player has played before. */
  public BooleanProperty fittingProperty() {
    return fitting;
  }

  /** True where what is dealt now was fitted. */
  public boolean dealtFitted() {
    Hand last = dealt;
    return last != null
        && !last.levels().isEmpty()
        && session.state().inside()
        && session.state().phase() != Phase.GATHERING;
  }

  /** Where levels come from. */
  public void fitBy(ClassDesk.Levels source) {
    levels = source;
    fitting.addListener(any -> changed());
  }

  /** True where dealing is possible. */
  public boolean canDeal() {
    return canChoose() && draft != null && !roster.chairIds().isEmpty();
  }

  /** Deals what is chosen, each time another way where the drill leaves a choice. */
  public void deal() {
    Drill drill = draft;
    if (drill != null && canDeal()) {
      Hand hand = hand(drill, tempo);
      nextSeed++;
      dealt = hand;
      boolean planned = drill.title().equals(session.state().title()) && ofRest == null;
      ofRest = null;
      if (planned) {
        session.lead().deal(hand);
      } else {
        session.lead().chooseAndDeal(hand);
      }
      changed();
    }
  }

  /** Chooses and deals at once; the same seed deals the same. */
  void chooseAndDeal(Drill drill, double beats) {
    if (canChoose() && !roster.chairIds().isEmpty()) {
      take(drill, beats);
      Hand hand = hand(drill, beats);
      nextSeed++;
      dealt = hand;
      session.lead().chooseAndDeal(hand);
      changed();
    } else {
      choose(drill);
    }
  }

  /** True where the last deal can be taken back. */
  public boolean canUndo() {
    return session.lead().canUndo();
  }

  /** Takes the last deal back. */
  public void undo() {
    if (canUndo()) {
      Hand before = session.lead().undo();
      dealt = before;
      ofRest = null;
      if (before == null) {
        nextSeed--;
      } else {
        draft = before.drill();
        tempo = before.tempo();
        nextSeed = before.seed() + 1;
      }
      changed();
    }
  }

  /** True where the count-in can be announced. */
  public boolean canCountIn() {
    RoomState room = session.state();
    return room.leader() && room.inside() && room.phase() == Phase.DEALT;
  }

  /** Counts in. */
  public void countIn() {
    if (canCountIn()) {
      session.lead().countIn();
    }
  }

  /** True where there is something to stop. */
  public boolean canStop() {
    return session.state().leader() && session.state().takeRuns();
  }

  /** Stops. */
  public void stop() {
    if (canStop()) {
      session.lead().stop();
    }
  }

  /** Stops the take so that it can be gone on with; what was played is kept. */
  public void pause() {
    RoomState room = session.state();
    if (canStop() && room.announced() != null) {
      paused = room.announced().takeId();
      rest = null;
      session.lead().stop();
    }
  }

  /** True where the last take was paused, whether or not its rest is played. */
  boolean wasPaused(String takeId) {
    return takeId.equals(paused);
  }

  /** What is left of a take that was paused; null for nothing, or where something else is dealt. */
  @Nullable Rest rest() {
    Rest left = rest;
    Dealt now = session.state().dealt();
    return left != null && canChoose() && now != null && now.dealId().equals(left.dealId())
        ? left
        : null;
  }

  /** True where what is dealt is the rest of a take. */
  boolean playsRest() {
    return ofRest != null;
  }

  /** Deals what is left of the paused take to the same chairs, and counts in. */
  public void goOn() {
    Rest left = rest();
    if (left != null) {
      rest = null;
      ofRest = left.hand();
      dealt = left.hand();
      countsInRest = true;
      session.lead().dealRest(left.hand());
      changed();
    }
  }

  /** Whether the click of a take follows what is held. */
  public BooleanProperty asHeldProperty() {
    return asHeld;
  }
}

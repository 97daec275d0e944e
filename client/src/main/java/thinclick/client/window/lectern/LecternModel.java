package thinclick.client.window.lectern;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.ReadOnlyLongProperty;
import javafx.beans.property.ReadOnlyLongWrapper;
import javafx.beans.property.SimpleBooleanProperty;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.season.ClassDesk;
import thinclick.client.window.session.Lead.Hand;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.session.Session;
import thinclick.protocol.file.Drill;
import thinclick.protocol.message.ServerMessage.Dealt;
import thinclick.protocol.message.ServerMessage.Phase;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.Stage;

/** What is chosen for the room, with its click plan and tempo, and how it is dealt. */
public final class LecternModel {
  private final Session session;
  private final RosterModel roster;
  private final ReadOnlyLongWrapper changes = new ReadOnlyLongWrapper();

  private @Nullable Drill draft;
  private double tempo;
  private long nextSeed;
  private @Nullable Hand dealt;

  /** True where what was dealt last is the rest of a take and not the whole. */
  private boolean restDealt;

  private final BooleanProperty fitting = new SimpleBooleanProperty();
  private ClassDesk.@Nullable Levels levels;

  public LecternModel(Session session, RosterModel roster) {
    this.session = session;
    this.roster = roster;
    session.stateProperty().addListener((any, old, now) -> follow(old, now));
  }

  /** Another leader's choice, or that of the room one comes back into, becomes the draft. */
  private void follow(RoomState old, RoomState now) {
    if (!now.inside()) {
      dealt = null;
      restDealt = false;
      if (draft != null) {
        draft = null;
        changed();
      }
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

  private void changed() {
    changes.set(changes.get() + 1);
  }

  // ---------------------------------------------------------------- what is chosen

  /** Counts up whenever what is chosen has changed. */
  public ReadOnlyLongProperty changesProperty() {
    return changes.getReadOnlyProperty();
  }

  /** What is chosen, with its click plan as it stands; null for nothing. */
  public @Nullable Drill chosen() {
    return draft;
  }

  /** What is chosen; while it is played, with its click as thinned or filled up since the deal. */
  @Nullable Drill inPlay() {
    Drill drill = draft;
    Dealt now = session.state().dealt();
    return drill == null
            || now == null
            || !session.state().takeRuns()
            || !drill.title().equals(now.title())
        ? drill
        : drill.withStages(now.stages());
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
    restDealt = false;
    draft = drill;
    tempo = beats;
    nextSeed = drill.deal().seed();
    changed();
  }

  /** Replaces click plan and tempo; what was dealt is to be dealt anew. */
  void replan(List<Stage> stages, double beats) {
    Drill drill = draft;
    if (drill != null && canChoose() && !(stages.equals(drill.stages()) && beats == tempo)) {
      new ClickPlan(stages).checkMeter(drill.meter(), drill.stepsPerBeat());
      draft = drill.withStages(stages);
      tempo = beats;
      restDealt = false;
      session.lead().plan(stages, tempo);
      changed();
    }
  }

  /** What the next deal's free choices hang on. */
  long nextSeed() {
    return nextSeed;
  }

  // ---------------------------------------------------------------- the deal

  /** What stands on the page: what is dealt, or what would be dealt now; null for nothing. */
  public @Nullable Hand page() {
    Drill drill = draft;
    if (drill == null) {
      return null;
    }
    Hand last = dealt;
    return last != null && pageIsDealt() ? last : hand(drill, tempo);
  }

  /** True where what stands on the page is what was dealt last, and not what would be dealt now. */
  boolean pageIsDealt() {
    Hand last = dealt;
    return last != null
        && draft != null
        && session.state().phase() != Phase.GATHERING
        && (restDealt || (last.drill().equals(draft) && last.tempo() == tempo));
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
      boolean planned = drill.title().equals(session.state().title()) && !restDealt;
      restDealt = false;
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
      restDealt = false;
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

  /** What was dealt last; null for nothing. */
  @Nullable Hand lastDealt() {
    return dealt;
  }

  /** Deals the rest of a take; what is chosen stays the whole. */
  void dealRest(Hand rest) {
    dealt = rest;
    restDealt = true;
    session.lead().dealRest(rest);
    changed();
  }

  /** True where what is dealt is the rest of a take. */
  boolean playsRest() {
    return restDealt;
  }
}

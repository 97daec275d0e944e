package thinclick.client.window.lectern;

import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.session.HeldSoFar;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.session.Session;
import thinclick.client.window.session.TakeMoment;
import thinclick.client.window.words.Words;
import thinclick.protocol.file.Drill;
import thinclick.protocol.message.ServerMessage.Dealt;
import thinclick.protocol.message.TakeNews.Announced;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.StepGrid;
import thinclick.server.material.ThinAsHeld;
import thinclick.server.material.Thinning;
import thinclick.server.words.Speaker;
import thinclick.server.words.StageLines;

/** The click of a running take in the leader's hands: by what is held, and the rescue. */
public final class Steering {
  /** Attacks of a bar that is over may still be on their way for so long. */
  private static final long ON_THE_WAY_MICROS = 200_000;

  private final Session session;
  private final Words words;
  private final LecternModel lectern;
  private final TakeModel take;
  private final ReadOnlyStringWrapper says = new ReadOnlyStringWrapper("");

  private String takeId = "";
  private int judgedTo;
  private int decidedAt;

  Steering(Session session, Words words, LecternModel lectern, TakeModel take) {
    this.session = session;
    this.words = words;
    this.lectern = lectern;
    this.take = take;
  }

  /** What was last decided, a sentence; empty for nothing. */
  public ReadOnlyStringProperty saysProperty() {
    return says.getReadOnlyProperty();
  }

  /** Looks at the clock: decides where a period has ended. */
  public void look(TakeMoment moment, long nowMicros) {
    RoomState room = session.state();
    Dealt dealt = room.dealt();
    Announced announced = room.announced();
    StepGrid grid = room.grid();
    if (!room.inside()) {
      says.set(""); // what was decided in a room stays in it
    }
    if (!room.takeRuns() || dealt == null || announced == null || grid == null) {
      return;
    }
    if (!announced.takeId().equals(takeId)) {
      takeId = announced.takeId();
      judgedTo = 0;
      decidedAt = 0;
      says.set("");
    }
    if (!take.asHeldProperty().get()
        || !room.leader()
        || moment.part() != TakeMoment.Part.PLAYING) {
      return;
    }
    int bar = moment.bar();
    ThinAsHeld rule = new ThinAsHeld(thinning(dealt), periodBars(dealt));
    boolean due = rule.decidesAt(bar) && bar > decidedAt;
    long into = nowMicros - grid.instantOf((long) bar * grid.stepsPerBar());
    if (due && into >= ON_THE_WAY_MICROS) {
      decidedAt = bar;
      decide(rule, dealt, announced, bar);
    }
  }

  private void decide(ThinAsHeld rule, Dealt dealt, Announced announced, int bar) {
    HeldSoFar held = HeldSoFar.of(dealt, announced, session.attacksByName(), judgedTo, bar);
    ThinAsHeld.Decision made =
        rule.decide(new ClickPlan(dealt.stages()), bar, held.written(), held.placed(), bar + 1L);
    if (made.move() != ThinAsHeld.Move.NO_VERDICT) {
      judgedTo = bar;
    }
    if (made.stages() != null) {
      session.lead().replan(made.fromBar(), made.stages());
    }
    long percent = held.written() == 0 ? 0 : Math.round(100.0 * held.placed() / held.written());
    String rung =
        new StageLines(
                Speaker.of(words.language()),
                dealt.meter(),
                dealt.stepsPerBeat(),
                rule.thinning().groups())
            .name(made.rung());
    says.set(
        switch (made.move()) {
          case THINNER -> words.say("lectern.held.thinner", percent, rung, made.fromBar() + 1);
          case SAME -> words.say("lectern.held.same", percent, rung);
          case FULLER -> words.say("lectern.held.fuller", percent, rung, made.fromBar() + 1);
          case NO_VERDICT -> words.say("lectern.held.few");
        });
  }

  /** True where two clicked bars can still come. */
  public boolean canRescue(TakeMoment moment) {
    Dealt dealt = session.state().dealt();
    return session.state().leader()
        && session.state().takeRuns()
        && dealt != null
        && moment.part() == TakeMoment.Part.PLAYING
        && rescueBar(dealt, moment) < new ClickPlan(dealt.stages()).bars();
  }

  /** Why two clicked bars cannot come in this take any more, a sentence; else empty. */
  String tooLateToRescue(TakeMoment moment) {
    Dealt dealt = session.state().dealt();
    if (dealt == null
        || moment.part() != TakeMoment.Part.PLAYING
        || !session.state().leader()
        || canRescue(moment)) {
      return "";
    }
    return words.say("lectern.rescue.late", periodBars(dealt));
  }

  /** Two clicked bars at the next period. */
  public void rescue(TakeMoment moment) {
    Dealt dealt = session.state().dealt();
    if (dealt != null && canRescue(moment)) {
      int from = rescueBar(dealt, moment);
      session.lead().replan(from, thinning(dealt).rescue(new ClickPlan(dealt.stages()), from));
      says.set(words.say("lectern.rescued", from + 1));
    }
  }

  private int rescueBar(Dealt dealt, TakeMoment moment) {
    int period = periodBars(dealt);
    int earliest = moment.bar() + ThinAsHeld.BARS_AHEAD;
    return (earliest + period - 1) / period * period;
  }

  private Thinning thinning(Dealt dealt) {
    Drill drill = drillOf(dealt);
    return new Thinning(dealt.meter(), dealt.stepsPerBeat(), drill == null ? null : drill.groups());
  }

  private int periodBars(Dealt dealt) {
    Drill drill = drillOf(dealt);
    return drill == null ? 4 : drill.periodBars();
  }

  private @Nullable Drill drillOf(Dealt dealt) {
    Drill drill = lectern.chosen();
    return drill != null && drill.title().equals(dealt.title()) ? drill : null;
  }
}

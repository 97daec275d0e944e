package thinclick.client.window.stand;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Part;
import thinclick.protocol.message.ServerMessage.Dealt;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.Stage;
import thinclick.server.engraving.Articulation;
import thinclick.server.engraving.Clef;
import thinclick.server.engraving.Cut;
import thinclick.server.engraving.Head;
import thinclick.server.engraving.StaffNote;
import thinclick.server.engraving.StaffPart;
import thinclick.server.engraving.SystemPlan;
import thinclick.server.scoring.PlanWords;

/** From a dealt part to what the layout takes: a rhythm on one line, the click above it. */
final class DealtPart {
  private static final int MOST_BARS = 4;

  private DealtPart() {}

  /** The part through all stages. */
  static StaffPart staff(Dealt dealt, @Nullable Part own) {
    ClickPlan plan = new ClickPlan(dealt.stages());
    return new StaffPart(
        dealt.meter(),
        dealt.stepsPerBeat(),
        null,
        plan.bars(),
        Clef.ONE_LINE,
        0,
        own == null ? List.of() : notes(dealt, own),
        List.of(),
        List.of(),
        clicks(dealt, plan),
        Cut.HALF_BARS);
  }

  /**
   * Where no length is dealt a note is written to the next beat or the next attack, whichever comes
   * first: for taps it is the onset that counts, and so every beat stays visible without ties.
   */
  private static List<StaffNote> notes(Dealt dealt, Part own) {
    Set<Integer> accents = own.accentSteps() == null ? Set.of() : new HashSet<>(own.accentSteps());
    List<Integer> steps = own.attackSteps();
    List<StaffNote> notes = new ArrayList<>();
    for (int i = 0; i < steps.size(); i++) {
      int step = steps.get(i);
      int toBeat = dealt.stepsPerBeat() - step % dealt.stepsPerBeat();
      int length = own.lengthSteps() == null ? toBeat : own.lengthSteps().get(i);
      if (i + 1 < steps.size()) {
        length = Math.min(length, steps.get(i + 1) - step);
      }
      Set<Articulation> signs = accents.contains(step) ? Set.of(Articulation.ACCENT) : Set.of();
      notes.add(StaffNote.unpitched(step, length, 0, Head.NORMAL, signs));
    }
    return notes;
  }

  private static List<Integer> clicks(Dealt dealt, ClickPlan plan) {
    List<Integer> clicks = new ArrayList<>();
    int stepsPerBar = dealt.meter().stepsPerBar(dealt.stepsPerBeat());
    for (int i = 0; i < plan.stages().size(); i++) {
      int first = plan.fromBar(i) * stepsPerBar;
      plan.stages()
          .get(i)
          .clickedSteps(dealt.meter(), dealt.stepsPerBeat())
          .forEach(step -> clicks.add(first + step.intValue()));
    }
    return clicks;
  }

  /** Systems of at most four bars; each stage begins one, with its words above. */
  static List<SystemPlan> systems(Dealt dealt, int barsPerSystem) {
    List<SystemPlan> plans = new ArrayList<>();
    int last = new ClickPlan(dealt.stages()).bars();
    int bar = 0;
    for (Stage stage : dealt.stages()) {
      int end = bar + stage.bars();
      String clicks = PlanWords.of(stage, dealt.meter(), dealt.stepsPerBeat());
      String direction = clicks.contains("click") ? clicks : "click: " + clicks;
      while (bar < end) {
        int bars = Math.min(Math.min(MOST_BARS, barsPerSystem), end - bar);
        plans.add(new SystemPlan(bar, bars, false, 1, direction, bar + bars == last));
        direction = "";
        bar += bars;
      }
    }
    return plans;
  }
}

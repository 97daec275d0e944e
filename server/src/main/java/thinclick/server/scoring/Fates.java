package thinclick.server.scoring;

import java.util.ArrayList;
import java.util.List;

/** What became of each written and each played attack of a player, as a list to hand out. */
final class Fates {
  private final Judged judged;
  private final Reading reading;
  private final Sheet sheet;

  Fates(Judged judged, Sheet sheet) {
    this.judged = judged;
    this.sheet = sheet;
    reading = judged.reading;
  }

  /** The list. */
  Analysis.PlayerAnalysis analysis() {
    List<Analysis.Written> written = new ArrayList<>();
    Chair chair = reading.chair;
    int k = 0;
    for (int w = 0; w < chair.part.attackSteps().size(); w++) {
      int step = chair.part.attackSteps().get(w);
      if (k < chair.writtenIndex.length && chair.writtenIndex[k] == w) {
        int partner = reading.partner[k];
        written.add(
            new Analysis.Written(
                step,
                judged.fate(k),
                reading.shift[k],
                partner == Matcher.NONE ? null : (Integer) chair.takeIndex[partner]));
        k++;
      } else {
        Analysis.Fate fate =
            step > sheet.lastCountedStep ? Analysis.Fate.AFTER_THE_STOP : Analysis.Fate.AWAY;
        written.add(new Analysis.Written(step, fate, 0, null));
      }
    }
    return new Analysis.PlayerAnalysis(
        chair.part.player(), List.copyOf(written), played(), judged.removedLean());
  }

  private List<Analysis.Played> played() {
    Chair chair = reading.chair;
    List<Analysis.Played> played = new ArrayList<>();
    for (int j = 0; j < chair.attacks.length; j++) {
      int k = judged.answeredBy(j);
      if (k == Matcher.NONE) {
        played.add(bare(chair.takeIndex[j], judged.unanswering(j)));
      } else {
        played.add(
            new Analysis.Played(
                chair.takeIndex[j],
                Analysis.Kind.MATCHED,
                chair.steps[k],
                reading.shift[k],
                judged.asynchronyAt(k),
                judged.pulseAt(k)));
      }
    }
    for (int index : chair.setAside) {
      played.add(bare(index, Analysis.Kind.SET_ASIDE));
    }
    for (int index : chair.freely) {
      played.add(bare(index, Analysis.Kind.FREE));
    }
    for (int index : chair.whileAway) {
      played.add(bare(index, Analysis.Kind.AWAY));
    }
    played.sort(
        (a, b) ->
            Sheet.inOrder(
                sheet.take.attacks().get(a.attack()), sheet.take.attacks().get(b.attack())));
    return List.copyOf(played);
  }

  private static Analysis.Played bare(int index, Analysis.Kind kind) {
    return new Analysis.Played(index, kind, null, 0, null, null);
  }
}

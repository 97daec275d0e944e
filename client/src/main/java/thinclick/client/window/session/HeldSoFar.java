package thinclick.client.window.session;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import thinclick.protocol.file.Part;
import thinclick.protocol.message.ServerMessage.Dealt;
import thinclick.protocol.message.TakeNews.Announced;
import thinclick.server.scoring.LiveScorer;
import thinclick.server.scoring.LiveScorer.Judgement;

/**
 * What of some bars was placed, as far as it has been heard while the take runs. The review judges
 * with all attacks before it and may say otherwise.
 *
 * @param written written attacks of the bars
 * @param placed those of them that were placed
 */
public record HeldSoFar(int written, int placed) {

  /**
   * Counts over all players who are people; over the stand-ins where nobody else plays.
   *
   * @param attacksMicros attacks by the player's name, room time
   * @param fromBar the first bar, from 0
   * @param toBar the first bar after them
   */
  public static HeldSoFar of(
      Dealt dealt,
      Announced announced,
      Map<String, List<Long>> attacksMicros,
      int fromBar,
      int toBar) {
    int perBar = dealt.meter().stepsPerBar(dealt.stepsPerBeat());
    List<Part> counted = dealt.parts().stream().filter(part -> !part.standIn()).toList();
    if (counted.isEmpty()) {
      counted = dealt.parts();
    }
    Map<String, Map<Long, Judgement>> judged = judged(dealt, announced, attacksMicros);
    int written = 0;
    int placed = 0;
    for (Part part : counted) {
      List<Integer> steps =
          part.attackSteps().stream()
              .filter(step -> step >= fromBar * perBar && step < toBar * perBar)
              .toList();
      written += steps.size();
      placed +=
          (int)
              judged.getOrDefault(part.player(), Map.of()).values().stream()
                  .filter(one -> one.kind() == LiveScorer.Kind.TOGETHER)
                  .map(Judgement::writtenStep)
                  .filter(steps::contains)
                  .distinct()
                  .count();
    }
    return new HeldSoFar(written, placed);
  }

  private static Map<String, Map<Long, Judgement>> judged(
      Dealt dealt, Announced announced, Map<String, List<Long>> attacksMicros) {
    LiveScorer scorer = new LiveScorer(dealt.takeFrom(announced.startMicros()));
    record Played(String player, long micros) {}
    List<Played> all = new ArrayList<>();
    for (Part part : dealt.parts()) {
      attacksMicros
          .getOrDefault(part.player(), List.of())
          .forEach(micros -> all.add(new Played(part.player(), micros)));
    }
    all.sort(Comparator.comparingLong(Played::micros));
    Map<String, Map<Long, Judgement>> judged = new HashMap<>();
    for (Played one : all) {
      for (Judgement judgement : scorer.judge(one.player(), one.micros())) {
        judged
            .computeIfAbsent(judgement.player(), name -> new HashMap<>())
            .put(judgement.micros(), judgement);
      }
    }
    return judged;
  }
}

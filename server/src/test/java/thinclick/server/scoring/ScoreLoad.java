package thinclick.server.scoring;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.Set;
import org.jgrapht.alg.matching.KuhnMunkresMinimalWeightBipartitePerfectMatching;
import org.jgrapht.graph.DefaultWeightedEdge;
import org.jgrapht.graph.SimpleWeightedGraph;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.Take;
import thinclick.protocol.music.Stage;

/**
 * A load program: a review of 2,000 attacks against a dense optimal assignment of the same take,
 * one problem a player, by a general library; and how the cost grows to 20,000 attacks. Run by
 * {@code server/src/bench/score.sh}.
 */
final class ScoreLoad {
  private ScoreLoad() {}

  public static void main(String[] args) {
    Take small = take(2_000);
    Take large = take(20_000);
    for (int i = 0; i < 30; i++) {
      Scorer.review(small);
    }
    for (int i = 0; i < 3; i++) {
      Scorer.review(large);
    }
    double smallMillis = best(small, 15);
    double largeMillis = best(large, 5);
    long before = System.nanoTime();
    for (int player = 0; player < small.parts().size(); player++) {
      assign(small, player);
    }
    double assigned = (System.nanoTime() - before) / 1e6;
    double ratio = assigned / smallMillis;
    double growth = largeMillis / large.attacks().size() / (smallMillis / small.attacks().size());
    System.out.printf(
        Locale.ROOT,
        "review of %d attacks: %.1f ms; dense assignment: %.1f ms%n",
        small.attacks().size(),
        smallMillis,
        assigned);
    System.out.printf(
        Locale.ROOT, "review of %d attacks: %.1f ms%n", large.attacks().size(), largeMillis);
    System.out.printf(Locale.ROOT, "score: ratio %.1f growth %.2f%n", ratio, growth);
  }

  private static double best(Take take, int runs) {
    double best = Double.POSITIVE_INFINITY;
    for (int i = 0; i < runs; i++) {
      long before = System.nanoTime();
      Scorer.review(take);
      best = Math.min(best, (System.nanoTime() - before) / 1e6);
    }
    return best;
  }

  /**
   * Four players over a thinning click, two of them displaced for a while, about so many attacks.
   */
  private static Take take(int attacks) {
    Random random = new Random(attacks);
    Band band = new Band();
    int unit = Math.max(4, attacks / 16 / 4);
    band.stages =
        List.of(
            Stage.ofBeats(unit, 1, 1, 2, 3, 4),
            Stage.ofBeats(unit, 1, 1),
            Stage.ofBeats(unit, 2, 1),
            Stage.ofBeats(unit, 1));
    int[][] cells = {{8, 0, 2, 4, 6}, {8, 1, 3, 5, 7}, {8, 0, 3, 6}, {16, 0, 3, 6, 9, 12, 15}};
    Ensembles.course(band, 0.1, random);
    for (int i = 0; i < cells.length; i++) {
      Band.Member member = new Band.Member();
      member.name = "P" + i;
      member.steps = Ensembles.part(cells[i], band, new Random(2));
      member.noise = 9;
      member.lean = 8 * random.nextGaussian();
      member.drop = 0.03;
      member.add = 0.03;
      member.shiftByBar = new int[band.bars()];
      if (i < 2) {
        java.util.Arrays.fill(member.shiftByBar, unit + 2, unit + 8, 1);
      }
      band.members.add(member);
    }
    return band.play(random).take();
  }

  private static void assign(Take take, int player) {
    String name = take.parts().get(player).player();
    List<Integer> written = take.parts().get(player).attackSteps();
    List<Attack> played =
        take.attacks().stream().filter(attack -> attack.player().equals(name)).toList();
    int size = Math.max(written.size(), played.size());
    SimpleWeightedGraph<Integer, DefaultWeightedEdge> graph =
        new SimpleWeightedGraph<>(DefaultWeightedEdge.class);
    Set<Integer> left = new LinkedHashSet<>();
    Set<Integer> right = new LinkedHashSet<>();
    for (int i = 0; i < size; i++) {
      left.add(i);
      right.add(size + i);
      graph.addVertex(i);
      graph.addVertex(size + i);
    }
    for (int i = 0; i < size; i++) {
      for (int j = 0; j < size; j++) {
        double cost = 1e6;
        if (i < written.size() && j < played.size()) {
          double off = (played.get(j).micros() - take.grid().microsAt(written.get(i))) / 1_000.0;
          cost = Math.min(1e6, Math.abs(off));
        }
        graph.setEdgeWeight(graph.addEdge(i, size + j), cost);
      }
    }
    new KuhnMunkresMinimalWeightBipartitePerfectMatching<>(graph, left, right).getMatching();
  }
}

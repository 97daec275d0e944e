package thinclick.server.scoring;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.Random;
import java.util.Set;
import org.jgrapht.alg.matching.KuhnMunkresMinimalWeightBipartitePerfectMatching;
import org.jgrapht.graph.DefaultWeightedEdge;
import org.jgrapht.graph.SimpleWeightedGraph;
import org.junit.jupiter.api.Test;

/** One-to-one matching against a naive quadratic referee and a general assignment solver. */
class MatcherTest {
  @Test
  void asManyAsPossibleAreMatchedAndOfThoseWaysTheNearestIsTaken() {
    double[] expected = {0, 100};
    double[] attacks = {60};
    assertThat(Matcher.match(expected, new double[] {50, 50}, attacks)).containsExactly(-1, 0);
    assertThat(Matcher.match(new double[] {0, 10}, new double[] {50, 50}, new double[] {8, 12}))
        .containsExactly(0, 1);
  }

  @Test
  void theNaiveQuadraticRefereeAgrees() {
    for (int seed = 0; seed < 2_000; seed++) {
      Case drawn = new Case(seed, 9);
      int[] found = Matcher.match(drawn.expected, drawn.window, drawn.attacks);
      assertThat(cost(drawn, found)).as("seed " + seed).isEqualTo(naive(drawn));
    }
  }

  @Test
  void aGeneralAssignmentSolverAgrees() {
    for (int seed = 0; seed < 60; seed++) {
      Case drawn = new Case(seed, 14);
      int[] found = Matcher.match(drawn.expected, drawn.window, drawn.attacks);
      assertThat(cost(drawn, found)).as("seed " + seed).isEqualTo(solver(drawn));
    }
  }

  /** Whole milliseconds, so that sums compare exactly. */
  private static final class Case {
    final double[] expected;
    final double[] window;
    final double[] attacks;

    Case(long seed, int most) {
      Random random = new Random(seed);
      expected =
          random
              .ints(1 + random.nextInt(most), 0, 400)
              .distinct()
              .sorted()
              .asDoubleStream()
              .toArray();
      attacks =
          random.ints(random.nextInt(most), 0, 400).distinct().sorted().asDoubleStream().toArray();
      double one = 5 + random.nextInt(60);
      window = new double[expected.length];
      Arrays.fill(window, one);
    }
  }

  private static final double DROP = 1_000_000;

  private static double cost(Case drawn, int[] partner) {
    double cost = 0;
    Set<Integer> used = new HashSet<>();
    int last = -1;
    for (int k = 0; k < partner.length; k++) {
      if (partner[k] == Matcher.NONE) {
        cost += DROP;
        continue;
      }
      double off = Math.abs(drawn.attacks[partner[k]] - drawn.expected[k]);
      assertThat(off).isLessThanOrEqualTo(drawn.window[k]);
      assertThat(used.add(partner[k])).isTrue();
      assertThat(partner[k]).isGreaterThan(last);
      last = partner[k];
      cost += off;
    }
    return cost;
  }

  private static double naive(Case drawn) {
    int n = drawn.expected.length;
    int m = drawn.attacks.length;
    double[][] best = new double[n + 1][m + 1];
    for (int k = 1; k <= n; k++) {
      for (int j = 0; j <= m; j++) {
        best[k][j] = best[k - 1][j] + DROP;
        if (j > 0) {
          best[k][j] = Math.min(best[k][j], best[k][j - 1]);
          double off = Math.abs(drawn.attacks[j - 1] - drawn.expected[k - 1]);
          if (off <= drawn.window[k - 1]) {
            best[k][j] = Math.min(best[k][j], best[k - 1][j - 1] + off);
          }
        }
      }
    }
    return best[n][m];
  }

  private static double solver(Case drawn) {
    int n = drawn.expected.length;
    int m = drawn.attacks.length;
    SimpleWeightedGraph<String, DefaultWeightedEdge> graph =
        new SimpleWeightedGraph<>(DefaultWeightedEdge.class);
    Set<String> left = new LinkedHashSet<>();
    Set<String> right = new LinkedHashSet<>();
    for (int i = 0; i < n + m; i++) {
      left.add("w" + i);
      right.add("a" + i);
    }
    left.forEach(graph::addVertex);
    right.forEach(graph::addVertex);
    for (int k = 0; k < n + m; k++) {
      for (int j = 0; j < n + m; j++) {
        double weight = 0; // an attack nobody wrote costs nothing here
        if (k < n && j < m) {
          double off = Math.abs(drawn.attacks[j] - drawn.expected[k]);
          weight = off <= drawn.window[k] ? off : 3 * DROP;
        } else if (k < n) {
          weight = DROP;
        }
        graph.setEdgeWeight(graph.addEdge("w" + k, "a" + j), weight);
      }
    }
    return new KuhnMunkresMinimalWeightBipartitePerfectMatching<>(graph, left, right)
        .getMatching()
        .getWeight();
  }
}

package thinclick.server.scoring;

import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import org.jgrapht.Graph;
import org.jgrapht.alg.matching.KuhnMunkresMinimalWeightBipartitePerfectMatching;
import org.jgrapht.graph.DefaultWeightedEdge;
import org.jgrapht.graph.SimpleWeightedGraph;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Level;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.Take;

/**
 * What scoring costs: reviews of 2,000 and 20,000 attacks by four players, a dense optimal
 * assignment of the smaller take (one problem a player, by a general library), and judgements
 * during a take of 24 players.
 */
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(1)
public class ScoreBenchmark {
  static final int SMALL = 2_000;
  static final int LARGE = 20_000;
  static final int PLAYERS = 24;
  static final int LIVE = 4_800;

  /** The takes. */
  @State(Scope.Benchmark)
  public static class Takes {
    final Take small = LoadTakes.of(4, SMALL);
    final Take large = LoadTakes.of(4, LARGE);
    final Take many = LoadTakes.of(PLAYERS, LIVE);
    final List<Attack> inOrder =
        many.attacks().stream().sorted(Comparator.comparingLong(Attack::micros)).toList();
  }

  /** The small take's assignment problems, a graph a player, laid out before time is taken. */
  @State(Scope.Benchmark)
  public static class Problems {
    List<Problem> all = List.of();

    @Setup(Level.Trial)
    public void lay(Takes takes) {
      all =
          takes.small.parts().stream()
              .map(part -> Problem.of(takes.small, part.player(), part.attackSteps()))
              .toList();
    }
  }

  /** Written attacks on one side, played ones on the other, the shorter side filled up. */
  record Problem(
      Graph<Integer, DefaultWeightedEdge> graph, Set<Integer> written, Set<Integer> played) {
    static Problem of(Take take, String player, List<Integer> steps) {
      List<Attack> attacks =
          take.attacks().stream().filter(attack -> attack.player().equals(player)).toList();
      int size = Math.max(steps.size(), attacks.size());
      Graph<Integer, DefaultWeightedEdge> graph =
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
          if (i < steps.size() && j < attacks.size()) {
            double off = attacks.get(j).micros() - take.grid().microsAt(steps.get(i));
            cost = Math.min(1e6, Math.abs(off) / 1_000);
          }
          graph.setEdgeWeight(graph.addEdge(i, size + j), cost);
        }
      }
      return new Problem(graph, left, right);
    }
  }

  @Benchmark
  @BenchmarkMode(Mode.SampleTime)
  @Warmup(iterations = 4, time = 2)
  @Measurement(iterations = 5, time = 2)
  public Object reviewOfTwoThousand(Takes takes) {
    return Scorer.review(takes.small);
  }

  @Benchmark
  @BenchmarkMode(Mode.SampleTime)
  @Warmup(iterations = 3, time = 3)
  @Measurement(iterations = 5, time = 3)
  public Object reviewOfTwentyThousand(Takes takes) {
    return Scorer.review(takes.large);
  }

  @Benchmark
  @BenchmarkMode(Mode.SingleShotTime)
  @Warmup(iterations = 1)
  @Measurement(iterations = 2)
  public double denseAssignmentOfTwoThousand(Problems problems) {
    double weight = 0;
    for (Problem one : problems.all) {
      weight +=
          new KuhnMunkresMinimalWeightBipartitePerfectMatching<>(
                  one.graph(), one.written(), one.played())
              .getMatching()
              .getWeight();
    }
    return weight;
  }

  @Benchmark
  @BenchmarkMode(Mode.AverageTime)
  @OperationsPerInvocation(LIVE)
  @Warmup(iterations = 3, time = 1)
  @Measurement(iterations = 5, time = 1)
  public int judgementDuringATake(Takes takes) {
    LiveScorer live = new LiveScorer(takes.many);
    int told = 0;
    for (Attack attack : takes.inOrder) {
      told += live.judge(attack.player(), attack.micros()).size();
    }
    return told;
  }
}

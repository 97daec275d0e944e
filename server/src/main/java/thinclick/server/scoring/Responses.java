package thinclick.server.scoring;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Answer;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.protocol.music.StepGrid;

/** Judges the answers that a take's parts mark. */
final class Responses {
  private final Take take;
  private final StepGrid grid;
  private final List<Analysis.PlayerAnalysis> players;
  private final List<@Nullable Double> pulseMillis;
  private final double toleranceMillis;

  Responses(
      Take take,
      List<Analysis.PlayerAnalysis> players,
      List<@Nullable Double> pulseMillis,
      double toleranceMillis) {
    this.take = take;
    this.grid = take.grid();
    this.players = players;
    this.pulseMillis = pulseMillis;
    this.toleranceMillis = toleranceMillis;
  }

  /** All answers, part by part in the order of time. */
  List<Response> all() {
    List<Response> all = new ArrayList<>();
    for (int i = 0; i < take.parts().size(); i++) {
      for (Answer answer : take.parts().get(i).answers()) {
        all.add(response(i, answer));
      }
    }
    return all;
  }

  private Response response(int player, Answer answer) {
    Part part = take.parts().get(player);
    List<Double> call =
        played(
            answer.of(),
            answer.fromStep() - answer.laterSteps(),
            answer.toStep() - answer.laterSteps());
    List<Double> reply = played(player, answer.fromStep(), answer.toStep());
    List<Double> later = new ArrayList<>();
    int next = 0;
    for (double at : call) {
      while (next < reply.size() && reply.get(next) < at - toleranceMillis) {
        next++;
      }
      if (next < reply.size() && reply.get(next) <= at + toleranceMillis) {
        later.add(reply.get(next) - at);
        next++;
      }
    }
    int perBar = grid.stepsPerBar();
    return new Response(
        part.player(),
        take.parts().get(answer.of()).player(),
        answer.fromStep() / perBar,
        (answer.toStep() + perBar - 1) / perBar,
        call.size(),
        later.size(),
        reply.size() - later.size(),
        later.isEmpty() ? null : (Double) mean(later),
        later.size() < 2 ? null : (Double) deviation(later));
  }

  /**
   * What a player played between two steps, ms from the pulse of the first, in order; half a step
   * before a bar still belongs to it.
   */
  private List<Double> played(int player, int fromStep, int toStep) {
    double from = pulse(fromStep);
    double half = grid.stepMicros() / 2000;
    List<Double> at = new ArrayList<>();
    for (Analysis.Played one : players.get(player).played()) {
      if (one.kind() == Analysis.Kind.MATCHED || one.kind() == Analysis.Kind.ADDED) {
        double millis = (take.attacks().get(one.attack()).micros() - take.startMicros()) / 1000.0;
        if (millis >= from - half && millis < pulse(toStep) - half) {
          at.add(millis - from);
        }
      }
    }
    return at.stream().sorted().toList();
  }

  /** Where the pulse put a step, or the written grid where no pulse is known. */
  private double pulse(int step) {
    @Nullable Double known = step < pulseMillis.size() ? pulseMillis.get(step) : null;
    if (known != null) {
      return known;
    }
    double nominal = (grid.microsAt(step) - take.startMicros()) / 1000;
    @Nullable Double last = pulseMillis.isEmpty() ? null : pulseMillis.get(pulseMillis.size() - 1);
    if (step < pulseMillis.size() || last == null) {
      return nominal;
    }
    double lastNominal = (grid.microsAt(pulseMillis.size() - 1) - take.startMicros()) / 1000;
    return nominal + last - lastNominal;
  }

  private static double mean(List<Double> values) {
    return values.stream().mapToDouble(Double::doubleValue).average().orElse(0);
  }

  private static double deviation(List<Double> values) {
    double mean = mean(values);
    double sum = values.stream().mapToDouble(value -> (value - mean) * (value - mean)).sum();
    return Math.sqrt(sum / (values.size() - 1));
  }
}

package thinclick.server.scoring;

import java.util.Map;
import java.util.function.LongFunction;

/** Prints the figures of takes as people play them, kind by kind. */
final class HumanBoard {
  private HumanBoard() {}

  public static void main(String[] args) {
    int seeds = Integer.parseInt(args[0]);
    String only = args.length > 1 ? args[1] : "";
    for (Map.Entry<String, LongFunction<Truth>> kind : Humans.all().entrySet()) {
      if (!kind.getKey().contains(only)) {
        continue;
      }
      Scoreboard board = new Scoreboard();
      for (int seed = 0; seed < seeds; seed++) {
        board.add(kind.getValue().apply(seed));
      }
      System.out.println(kind.getKey() + ": " + board.summary());
      if (args.length > 2) {
        board.worst.stream().limit(6).forEach(System.out::println);
      }
    }
  }
}

package thinclick.server.load;

import java.io.File;
import java.io.IOException;
import java.nio.channels.Selector;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import thinclick.server.room.RoomFuzz;

/** The room under a million texts, and what honest rooms notice while their host is attacked. */
final class AttackBench {
  private static final int ROOMS = 20;
  private static final int PLAYERS = 4;
  private static final double SECONDS = 6;

  private static final double WARM_UP_SECONDS = 12;
  private static final double CALMING_SECONDS = 2;

  private AttackBench() {}

  public static void main(String[] arguments) throws IOException {
    long messages = arguments.length > 0 ? Long.parseLong(arguments[0]) : 1_000_000;
    int pairs = arguments.length > 1 ? Integer.parseInt(arguments[1]) : 5;
    RoomFuzz.Outcome outcome = RoomFuzz.run(1, messages);
    outcome.faults().stream().limit(20).forEach(System.out::println);
    System.out.println(
        outcome.refusedByTheReader() + " refused by the reader, heard in " + outcome.heardIn());
    Path folder = Files.createTempDirectory(Path.of("server/target"), "attack");
    List<Double> ratios = new ArrayList<>();
    try (ServerProcess host =
            ServerProcess.thinclick(
                folder.resolve("room.db"),
                List.of("-Xmx256m", "@server/host.options"), // as server/README starts it
                List.of());
        ServerProcess attacker =
            ServerProcess.elsewhere(
                Attacker.class.getName(),
                List.of(String.valueOf(host.port())),
                new File(folder + "/attacker.log"))) {
      Selector selector = Selector.open();
      Load load = new Load(selector);
      List<LoadLine> lines = new ArrayList<>();
      for (int room = 0; room < ROOMS; room++) {
        for (Orchestra.Seat seat : Orchestra.play(host.port(), PLAYERS)) {
          lines.add(new LoadLine(seat.line(), seat.takeId(), selector));
        }
      }
      double perSecond = ROOMS * PLAYERS * 8.0;
      // Both ways of life once before anything is measured, so that the compiler is through.
      load.play(lines, perSecond, WARM_UP_SECONDS);
      attacked(load, lines, perSecond, WARM_UP_SECONDS, attacker);
      for (int pair = 0; pair < pairs; pair++) {
        double before = Cpu.secondsOf(host.pid());
        double calm = load.play(lines, perSecond, SECONDS).deliveryMillis(99);
        double between = Cpu.secondsOf(host.pid());
        double attacked = attacked(load, lines, perSecond, SECONDS, attacker);
        ratios.add(attacked / calm);
        System.out.println(
            String.format(
                Locale.ROOT,
                "p99 calm %.1f ms, attacked %.1f ms; processor %.0f %%, attacked %.0f %%; resident %d MB",
                calm,
                attacked,
                100 * (between - before) / SECONDS,
                100 * (Cpu.secondsOf(host.pid()) - between) / SECONDS,
                Cpu.residentBytes(host.pid()) >> 20));
      }
    }
    ratios.sort(null);
    System.out.println(
        String.format(
            Locale.ROOT,
            "fuzz: %d messages, %d faults, p99-ratio %.2f",
            messages,
            outcome.faults().size(),
            ratios.get(ratios.size() / 2)));
  }

  private static double attacked(
      Load load, List<LoadLine> lines, double perSecond, double seconds, ServerProcess attacker) {
    attacker.say(String.valueOf(Math.round(seconds * 1e3)));
    double millis = load.play(lines, perSecond, seconds).deliveryMillis(99);
    load.listen(CALMING_SECONDS); // until the host has closed what was left to it
    if (!attacker.alive()) {
      throw new AssertionError("the attacker gave up, see its log");
    }
    return millis;
  }
}

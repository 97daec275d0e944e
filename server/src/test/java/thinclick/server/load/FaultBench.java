package thinclick.server.load;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.read.ListAppender;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.slf4j.LoggerFactory;

/** Seeded runs with a fault in each, every kind in turn. */
final class FaultBench {
  private FaultBench() {}

  public static void main(String[] arguments) throws IOException {
    int runs = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 300;
    long seed = arguments.length > 1 ? Long.parseLong(arguments[1]) : 1;
    Path library = Path.of(System.getProperty("faults.disk", "/nothing/to/load"));
    ListAppender<ILoggingEvent> leaks = new ListAppender<>();
    leaks.start();
    ((Logger) LoggerFactory.getLogger("io.netty.util.ResourceLeakDetector")).addAppender(leaks);
    ((Logger) LoggerFactory.getLogger("ROOT")).setLevel(Level.ERROR);
    Path folder = Files.createTempDirectory(Path.of("server/target").toAbsolutePath(), "faults");
    Map<Fault, Integer> held = new EnumMap<>(Fault.class);
    int failed = 0;
    for (int run = 0; run < runs; run++) {
      Fault fault =
          Fault.values()[(int) Math.floorMod(seed + run - 1, (long) Fault.values().length)];
      List<String> broken = one(fault, seed + run, folder.resolve(String.valueOf(run)), library);
      System.gc(); // what was leaked is found by then
      if (!leaks.list.isEmpty()) {
        broken.add("leaked: " + leaks.list.get(0).getFormattedMessage().lines().findFirst());
        leaks.list.clear();
      }
      if (broken.isEmpty()) {
        held.merge(fault, 1, Integer::sum);
      } else {
        failed++;
        System.out.println("seed " + (seed + run) + " " + fault + ": " + broken);
      }
    }
    System.out.println("held: " + held);
    if (Files.exists(library)) {
      System.out.println(PowerCut.compare(folder.resolve("power"), library));
    }
    System.out.println("faults: " + runs + " runs, " + failed + " failed");
    System.exit(failed == 0 ? 0 : 1);
  }

  private static List<String> one(Fault fault, long seed, Path folder, Path library) {
    try {
      Files.createDirectories(folder);
      List<String> broken = new ArrayList<>(FaultRun.of(fault, seed, folder, library));
      if (broken.isEmpty()) {
        remove(folder);
      }
      return broken;
    } catch (RuntimeException | AssertionError | IOException problem) {
      return new ArrayList<>(List.of(String.valueOf(problem)));
    }
  }

  private static void remove(Path folder) throws IOException {
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
        Files.delete(file);
      }
    }
  }
}

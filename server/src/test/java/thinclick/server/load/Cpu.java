package thinclick.server.load;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;

/** Processor time and memory, as the kernel counts them (proc(5)). */
final class Cpu {
  private static final double TICKS_PER_SECOND = 100;

  private Cpu() {}

  static long ofThisThreadNanos() {
    return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
  }

  /** Seconds that a process has used in user and kernel mode. */
  static double secondsOf(long pid) {
    return seconds(read(Path.of("/proc/" + pid + "/stat")));
  }

  /** Nanoseconds that the threads which it still has were on a processor, see sched-stats. */
  static long nanosOf(long pid) {
    try (Stream<Path> threads = Files.list(Path.of("/proc/" + pid + "/task"))) {
      return threads
          .mapToLong(thread -> Long.parseLong(read(thread.resolve("schedstat")).split(" ")[0]))
          .sum();
    } catch (IOException problem) {
      throw new UncheckedIOException(problem);
    }
  }

  /** Processor seconds by what threads are for: loops, store, compiler, collector, other. */
  static Map<String, Double> secondsByThread(long pid) {
    Map<String, Double> seconds = new TreeMap<>();
    try (Stream<Path> threads = Files.list(Path.of("/proc/" + pid + "/task"))) {
      for (Path thread : threads.toList()) {
        String stat = read(thread.resolve("stat"));
        seconds.merge(kind(stat), seconds(stat), Double::sum);
      }
    } catch (IOException problem) {
      throw new UncheckedIOException(problem);
    }
    return seconds;
  }

  private static String kind(String stat) {
    if (stat.contains("multiThread")) {
      return "loops";
    }
    if (stat.contains("thinclick-store")) {
      return "store";
    }
    if (stat.contains("CompilerThre")) {
      return "compiler";
    }
    return stat.contains("VM Thread") || stat.contains("GC") ? "collector" : "other";
  }

  private static double seconds(String stat) {
    String[] fields = stat.substring(stat.lastIndexOf(')') + 2).split(" ");
    return (Long.parseLong(fields[11]) + Long.parseLong(fields[12])) / TICKS_PER_SECOND;
  }

  /** What a process holds in memory now, bytes. */
  static long residentBytes(long pid) {
    return read(Path.of("/proc/" + pid + "/status"))
        .lines()
        .filter(line -> line.startsWith("VmRSS:"))
        .mapToLong(line -> Long.parseLong(line.replaceAll("\\D", "")) * 1_024)
        .sum();
  }

  private static String read(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException problem) {
      throw new UncheckedIOException(problem);
    }
  }
}

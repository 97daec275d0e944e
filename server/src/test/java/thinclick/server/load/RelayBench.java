package thinclick.server.load;

import java.io.File;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.Selector;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.HdrHistogram.Histogram;

/**
 * 100 rooms of 8 players who play 8 attacks a second, each heard by the 7 others, against a bare
 * relay of the same frames; then the rate rises until either cannot follow.
 *
 * <p>fixed: the relay's processor time an attack over ours at the same rate. saturated: the copies
 * a second we deliver over those that the relay delivers, each at the highest rate at which 99 of
 * 100 come within {@link #EQUAL_P99_MILLIS}.
 */
final class RelayBench {
  private static final int ROOMS = 100;
  private static final int PLAYERS = 8;
  private static final double ATTACKS_PER_SECOND = ROOMS * PLAYERS * 8.0;
  private static final double EQUAL_P99_MILLIS = 50;
  private static final double STEP_SECONDS = 2;
  private static final double STEP_FACTOR = 1.12;
  private static final int FAILING_STEPS = 3;
  private static final double BUSY_LIMIT = .8;
  private static final List<String> JVM = List.of("-Xmx384m", "-Xms384m", "-XX:+UseSerialGC");

  /** When the baseline's frames go out: as ours do, or each for itself. */
  private static final String FLUSH = System.getProperty("bare.flush", "turn");

  private final Load load;
  private final ServerProcess ours;
  private final ServerProcess bare;
  private final List<LoadLine> ourLines;
  private final List<LoadLine> bareLines;
  private boolean generatorTooBusy;

  private RelayBench(ServerProcess ours, ServerProcess bare) throws IOException {
    this.ours = ours;
    this.bare = bare;
    Selector selector = Selector.open();
    load = new Load(selector);
    ourLines = new ArrayList<>();
    bareLines = new ArrayList<>();
    for (int room = 0; room < ROOMS; room++) {
      for (Orchestra.Seat seat : Orchestra.play(ours.port(), PLAYERS)) {
        ourLines.add(new LoadLine(seat.line(), seat.takeId(), selector));
      }
      for (int player = 0; player < PLAYERS; player++) {
        RawLine line = RawLine.connect(bare.port(), "/" + room);
        bareLines.add(new LoadLine(line, "abcdefghijklm-t1", selector));
      }
      load.listen(.01);
    }
  }

  public static void main(String[] arguments) throws IOException, SQLException {
    int pairs = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 3;
    double seconds = arguments.length > 1 ? Double.parseDouble(arguments[1]) : 10;
    double warmUp = arguments.length > 2 ? Double.parseDouble(arguments[2]) : 10;
    Path folder = Files.createTempDirectory(Path.of("server/target"), "relay");
    Path database = folder.resolve("room.db");
    double syncMillis = syncMillis(folder.resolve("sync"));
    try (ServerProcess ours = ServerProcess.thinclick(database, JVM, List.of());
        ServerProcess bare =
            ServerProcess.start(
                BareRelay.class.getName(),
                Stream.concat(JVM.stream(), Stream.of("-Dflush=" + FLUSH)).toList(),
                List.of(),
                new File(folder + "/bare.log"),
                Map.of())) {
      new RelayBench(ours, bare).measure(pairs, seconds, warmUp, syncMillis, database);
    }
  }

  private void measure(int pairs, double seconds, double warmUp, double syncMillis, Path database)
      throws SQLException {
    load.play(ourLines, ATTACKS_PER_SECOND, warmUp);
    load.play(bareLines, ATTACKS_PER_SECOND, warmUp);
    List<Double> fixed = new ArrayList<>();
    List<Double> saturated = new ArrayList<>();
    Histogram delivery = new Histogram(3);
    Histogram acknowledgement = new Histogram(3);
    for (int pair = 1; pair <= pairs; pair++) {
      double ourMicros = fixed("thinclick", ours, ourLines, seconds, delivery, acknowledgement);
      double bareMicros = fixed("bare", bare, bareLines, seconds, null, null);
      fixed.add(bareMicros / ourMicros);
    }
    for (int pair = 1; pair <= pairs; pair++) {
      double ourMost = most("thinclick", ourLines);
      double bareMost = most("bare", bareLines);
      saturated.add(ourMost / bareMost);
    }
    long sent = ourLines.stream().mapToLong(LoadLine::sent).sum();
    load.listen(1);
    long rows = rows(database);
    say("attacks sent %d, on the disk %d", sent, rows);
    say(
        "fsync p99 %.1f ms; acknowledgement p99 is to stay within %.0f ms",
        syncMillis, 50 + 3 * syncMillis);
    say("fixed by pairs %s; saturated by pairs %s", shown(fixed), shown(saturated));
    if (generatorTooBusy) {
      say("VOID in part: the generator took over %.0f %% of its core", 100 * BUSY_LIMIT);
    }
    if (rows != sent) {
      say("LOST: %d attacks", sent - rows);
    }
    say(
        "relay: fixed %.2f saturated %.2f delivery-p99-ms %.1f ack-p99-ms %.1f",
        median(fixed),
        median(saturated),
        delivery.getValueAtPercentile(99) / 1e3,
        acknowledgement.getValueAtPercentile(99) / 1e3);
  }

  /** Processor time an attack, microseconds. */
  private double fixed(
      String name,
      ServerProcess server,
      List<LoadLine> lines,
      double seconds,
      Histogram delivery,
      Histogram acknowledgement) {
    double before = Cpu.secondsOf(server.pid());
    Map<String, Double> threadsBefore = Cpu.secondsByThread(server.pid());
    Load.Stretch stretch = load.play(lines, ATTACKS_PER_SECOND, seconds);
    double micros = (Cpu.secondsOf(server.pid()) - before) * 1e6 / stretch.offered();
    if (delivery != null) {
      delivery.add(stretch.delivery());
      acknowledgement.add(stretch.acknowledgement());
    }
    note(stretch);
    StringBuilder threads = new StringBuilder();
    Cpu.secondsByThread(server.pid())
        .forEach(
            (kind, after) ->
                threads.append(
                    String.format(
                        Locale.ROOT,
                        " %s %.1f",
                        kind,
                        (after - threadsBefore.getOrDefault(kind, 0.0))
                            * 1e6
                            / stretch.offered())));
    say(
        "%-9s fixed %.0f/s: %.1f us an attack (%s), delivered %.4f, p99 %.1f ms, ack p99 %.1f ms, generator %.0f %%",
        name,
        ATTACKS_PER_SECOND,
        micros,
        threads.substring(1),
        stretch.delivery().getTotalCount() / (7.0 * stretch.offered()),
        stretch.deliveryMillis(99),
        stretch.acknowledgementMillis(99),
        100 * stretch.busy());
    return micros;
  }

  /** The most copies delivered a second within the p99 that both are held to. */
  private double most(String name, List<LoadLine> lines) {
    double best = 0;
    double p99 = 0;
    double busy = 0;
    int failing = 0;
    for (double rate = ATTACKS_PER_SECOND * .7; failing < FAILING_STEPS; rate *= STEP_FACTOR) {
      Load.Stretch stretch = load.play(lines, rate, STEP_SECONDS);
      if (stretch.deliveryMillis(99) <= EQUAL_P99_MILLIS
          && stretch.deliveredPerSecond() > best
          && stretch.delivery().getTotalCount() >= .99 * 7 * stretch.offered()) {
        best = stretch.deliveredPerSecond();
        p99 = stretch.deliveryMillis(99);
        busy = stretch.busy();
        failing = 0;
      } else {
        failing++;
      }
      if (!load.settle(lines)) {
        throw new AssertionError(name + " is still behind " + Load.SETTLING_SECONDS + " s later");
      }
    }
    if (busy > BUSY_LIMIT) {
      generatorTooBusy = true;
    }
    say(
        "%-9s saturated: %.0f copies a second, p99 %.1f ms, generator %.0f %%",
        name, best, p99, 100 * busy);
    return best;
  }

  private void note(Load.Stretch stretch) {
    if (stretch.busy() > BUSY_LIMIT) {
      generatorTooBusy = true;
    }
  }

  private static long rows(Path database) throws SQLException {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + database);
        Statement statement = connection.createStatement();
        ResultSet rows = statement.executeQuery("SELECT count(*) FROM attack")) {
      return rows.getLong(1);
    }
  }

  /** What a write of 4 KiB that is forced to the disk takes here at the 99th percentile. */
  private static double syncMillis(Path file) throws IOException {
    Histogram took = new Histogram(3);
    try (FileChannel channel =
        FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE)) {
      for (int i = 0; i < 300; i++) {
        long before = System.nanoTime();
        channel.write(ByteBuffer.allocate(4_096));
        channel.force(false);
        took.recordValue((System.nanoTime() - before) / 1_000);
      }
    }
    return took.getValueAtPercentile(99) / 1e3;
  }

  private static double median(List<Double> values) {
    List<Double> sorted = values.stream().sorted().toList();
    int half = sorted.size() / 2;
    return sorted.size() % 2 == 1
        ? sorted.get(half)
        : (sorted.get(half - 1) + sorted.get(half)) / 2;
  }

  private static String shown(List<Double> values) {
    return String.join(
        " ", values.stream().map(v -> String.format(Locale.ROOT, "%.2f", v)).toList());
  }

  private static void say(String format, Object... values) {
    System.out.println(String.format(Locale.ROOT, format, values));
  }
}

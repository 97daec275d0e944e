package thinclick.client.rehearse;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.function.BooleanSupplier;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import thinclick.client.link.LatestTold;
import thinclick.client.link.LinkLoop;
import thinclick.client.link.LinkOptions;
import thinclick.client.link.RoomAddress;
import thinclick.client.link.RoomLink;
import thinclick.client.sound.CueSheet;
import thinclick.client.sound.RoomSpeakers;
import thinclick.client.sound.RoomTimes;
import thinclick.client.standin.Timing;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.FileCodec;
import thinclick.protocol.file.Take;
import thinclick.protocol.message.LeaderCommand;
import thinclick.protocol.message.ServerMessage;
import thinclick.protocol.message.TakeNews;
import thinclick.protocol.music.Click;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.StepGrid;
import thinclick.server.command.ServerMain;
import thinclick.server.material.Stock;

/** A class in real time: what the head of src/bench/class.sh says. */
final class ClassBench extends LatestTold {
  private static final double TEMPO = 120;
  private static final double BAR_SECONDS = 2;
  private static final double LATE_MILLIS = 2;
  private static final double NEAR_MILLIS = 100;
  private static final String DRILL = "Charleston";

  /** A player whose computer sounds the click as a window would. */
  private static final class Seat extends Pupil {
    private final RoomSpeakers.Speaker speaker;
    private ServerMessage.Dealt part;
    private TakeNews.Announced take;
    private StepGrid grid;
    private ClickPlan plan;

    /** Room times of the clicks that this computer knew of too late. */
    private int knownLate;

    Seat(
        LinkLoop loop,
        RoomAddress address,
        String word,
        String name,
        int number,
        RoomSpeakers.Speaker speaker) {
      super(loop, address, word, name, Timing.PRACTISED.leaning(number % 9 - 4), number);
      this.speaker = speaker;
    }

    @Override
    public void dealt(ServerMessage.Dealt hand) {
      super.dealt(hand);
      part = hand;
    }

    @Override
    public void announced(TakeNews.Announced now) {
      super.announced(now);
      take = now;
      grid =
          new StepGrid(
              part.meter(), part.stepsPerBeat(), part.tempo(), part.swing(), now.startMicros());
      sounds(new ClickPlan(part.stages()));
      knownFrom(now.countInMicros(), 0, plan.bars());
    }

    @Override
    public void replanned(TakeNews.Replanned now) {
      sounds(new ClickPlan(now.stages()));
      knownFrom(
          grid.instantOf((long) now.fromBar() * grid.stepsPerBar()), now.fromBar(), plan.bars());
    }

    @Override
    public void stageNear(TakeNews.StageNear near) {
      int stage = near.stage();
      int to = stage + 1 < plan.stages().size() ? plan.fromBar(stage + 1) : plan.bars();
      knownFrom(near.atMicros(), near.bar(), to);
    }

    private void sounds(ClickPlan now) {
      plan = now;
      speaker.play(
          CueSheet.ofTake(grid, take.countInBars(), now),
          RoomTimes.of(link::nanosOf, link::roomMicros));
    }

    /** Clicks that are said later than a bar before the first of them are late, all of them. */
    private void knownFrom(long atMicros, int fromBar, int toBar) {
      double aheadSeconds = (atMicros - link.roomMicros(System.nanoTime())) / 1e6;
      if (aheadSeconds < BAR_SECONDS) {
        long from = (long) fromBar * grid.stepsPerBar();
        long to = (long) toBar * grid.stepsPerBar();
        knownLate +=
            (int)
                plan.clicks(grid).stream()
                    .filter(click -> click.step() >= from && click.step() < to)
                    .count();
        System.out.printf(
            Locale.ROOT,
            "%s heard of bar %d only %.3f s ahead%n",
            name(),
            fromBar + 1,
            aheadSeconds);
      }
    }

    /** The clicks of the take that its speaker began too late, or not at all. */
    private int soundedLate() {
      List<Long> heard = speaker.begun();
      int late = 0;
      for (Click click : plan.clicks(grid)) {
        long belongs = grid.instantOf(click.step());
        Long nearest = null;
        for (Long one : heard) {
          if (nearest == null || Math.abs(one - belongs) < Math.abs(nearest - belongs)) {
            nearest = one;
          }
        }
        double off = nearest == null ? Double.MAX_VALUE : (nearest - belongs) / 1e3;
        if (off > LATE_MILLIS || off < -NEAR_MILLIS) {
          late++;
          System.out.printf(
              Locale.ROOT,
              "%s: the click of bar %d began %.1f ms late%n",
              name(),
              grid.barOf(click.step()) + 1,
              off);
        }
      }
      return late;
    }
  }

  public static void main(String[] args) throws IOException, InterruptedException {
    double seconds = Double.parseDouble(args[0]);
    new ClassBench().run(seconds, Integer.parseInt(args[1]));
    System.exit(0);
  }

  private void run(double seconds, int players) throws IOException, InterruptedException {
    Path folder = Files.createTempDirectory("thinclick-class");
    Path database = folder.resolve("class.db");
    Process host =
        new ProcessBuilder(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-cp",
                System.getProperty("java.class.path"),
                ServerMain.class.getName(),
                "serve",
                "--port",
                "0",
                "--db",
                database.toString())
            .redirectErrorStream(true)
            .start();
    try {
      measure(seconds, players, host, database, folder);
    } finally {
      host.destroy();
      host.waitFor(10, TimeUnit.SECONDS);
    }
  }

  private void measure(double seconds, int players, Process host, Path database, Path folder)
      throws IOException {
    RoomAddress address = address(host);
    LinkLoop loop = LinkLoop.start();
    RoomLink leader = RoomLink.open(LinkOptions.on(loop), address, "Leader", this);
    until("a room", 20, () -> leader.word() != null);
    List<Seat> seats = new ArrayList<>();
    RoomSpeakers speakers = new RoomSpeakers(players);
    for (String name : Band.of(players)) {
      int number = seats.size();
      seats.add(new Seat(loop, address, leader.word(), name, number, speakers.of(number)));
    }
    until("all clocks", 60, () -> known() == players);
    int bars = Math.max(8, (int) Math.round(seconds / BAR_SECONDS));
    Drill drill = Stock.find(DRILL);
    done(leader.lead().material(DRILL));
    done(leader.lead().plan(StageFit.over(drill.stages(), bars), TEMPO));
    done(leader.lead().deal(1, List.of()));
    until("everybody ready", 20, () -> dealt != null && allReady());
    double before = host.toHandle().info().totalCpuDuration().orElseThrow().toMillis() / 1e3;
    done(leader.lead().start(dealt.dealId(), 5_000, 1));
    until("the count-in", 10, () -> announced != null);
    long begun = System.nanoTime();
    until("the middle", bars * BAR_SECONDS, () -> System.nanoTime() - begun > bars * 1e9);
    int from = bars / 2 + 4;
    done(
        leader
            .lead()
            .ask(
                (id, seen) ->
                    new LeaderCommand.Replan(
                        id,
                        seen,
                        announced.takeId(),
                        from,
                        List.of(Stage.ofBeats(bars - from, 1, 1)))));
    until("the end", bars * BAR_SECONDS + 30, () -> stopped != null);
    double used = host.toHandle().info().totalCpuDuration().orElseThrow().toMillis() / 1e3 - before;
    double wall = (System.nanoTime() - begun) / 1e9;
    until("the final review", 130, () -> review != null && !review.provisional());
    seats.forEach(seat -> seat.speaker.stop());
    long resident = resident(host.pid());
    Take take = export(database, announced.takeId(), folder);
    tell(take, seats, used, wall, resident);
  }

  private void tell(Take take, List<Seat> seats, double used, double wall, long resident) {
    int lost = 0;
    int doubled = 0;
    int late = 0;
    int clicks = 0;
    int sent = 0;
    for (Seat seat : seats) {
      List<Long> stored =
          take.attacks().stream()
              .filter(attack -> attack.player().equals(seat.name()))
              .map(Attack::micros)
              .toList();
      List<Long> played = seat.played.get(announced.takeId());
      HashSet<Long> missing = new HashSet<>(played);
      stored.forEach(missing::remove);
      lost += missing.size();
      doubled += stored.size() - new HashSet<>(stored).size();
      late += Math.max(seat.knownLate, seat.soundedLate());
      clicks += seat.plan.clicks(seat.grid).size();
      sent += played.size();
    }
    System.out.printf(
        Locale.ROOT,
        "a take of %.0f s, %d attacks, %d clicks at %d computers; the host took %.1f s of processor"
            + " time, %.0f %% of a core, and holds %d MB%n",
        wall,
        sent,
        clicks,
        seats.size(),
        used,
        100 * used / wall,
        resident / 1_000_000);
    System.out.printf(
        Locale.ROOT,
        "class: players %d lost %d doubled %d late-clicks %d%n",
        seats.size(),
        lost,
        doubled,
        late);
  }

  private static RoomAddress address(Process host) throws IOException {
    BufferedReader said =
        new BufferedReader(new InputStreamReader(host.getInputStream(), StandardCharsets.UTF_8));
    Pattern pattern = Pattern.compile("(ws://[0-9.]+:\\d+)");
    for (String line = said.readLine(); line != null; line = said.readLine()) {
      Matcher matcher = pattern.matcher(line);
      if (matcher.find()) {
        Thread rest = new Thread(() -> drain(said), "host-says");
        rest.setDaemon(true);
        rest.start();
        return RoomAddress.parse(matcher.group(1));
      }
    }
    throw new IOException("the host did not say where it listens");
  }

  private static void drain(BufferedReader said) {
    try {
      while (said.readLine() != null) {
        Thread.onSpinWait();
      }
    } catch (IOException over) {
      // the host has ended
    }
  }

  private static Take export(Path database, String takeId, Path folder) throws IOException {
    Path file = folder.resolve("take.json");
    int exit =
        ServerMain.commandLine()
            .execute("take", "export", takeId, file.toString(), "--db", database.toString());
    if (exit != 0) {
      throw new IOException("the take cannot be exported");
    }
    return FileCodec.readTake(Files.readAllBytes(file));
  }

  private static long resident(long pid) throws IOException {
    return Files.readAllLines(Path.of("/proc/" + pid + "/status")).stream()
        .filter(line -> line.startsWith("VmRSS:"))
        .mapToLong(line -> Long.parseLong(line.replaceAll("\\D", "")) * 1_024)
        .findFirst()
        .orElse(0);
  }

  private long known() {
    return roster.players().stream()
        .filter(one -> !one.name().equals("Leader") && one.uncertaintyMicros() != null)
        .count();
  }

  private boolean allReady() {
    return roster.players().stream().allMatch(one -> one.name().equals("Leader") || one.ready());
  }

  private static void done(CompletableFuture<Long> answer) {
    answer.orTimeout(20, TimeUnit.SECONDS).join();
  }

  private static void until(String what, double seconds, BooleanSupplier holds) {
    long end = System.nanoTime() + Math.round(seconds * 1e9);
    while (!holds.getAsBoolean()) {
      if (System.nanoTime() > end) {
        throw new IllegalStateException("waited for " + what + " in vain");
      }
      LockSupport.parkNanos(20_000_000);
    }
  }
}

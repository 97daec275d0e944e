package thinclick.client.rehearse;

import static thinclick.client.rehearse.Awaited.await;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import thinclick.client.link.LinkLoop;
import thinclick.client.link.LinkOptions;
import thinclick.client.link.RoomAddress;
import thinclick.client.link.RoomLink;
import thinclick.client.standin.Manner;
import thinclick.client.standin.Slip;
import thinclick.client.standin.StandIn;
import thinclick.client.standin.Timing;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.Take;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.json.Check;
import thinclick.protocol.message.ServerMessage;
import thinclick.protocol.message.TakeNews;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.StepGrid;
import thinclick.server.host.HostOptions;
import thinclick.server.host.RehearsalHost;
import thinclick.server.words.BarWords;
import thinclick.server.words.ClickWords;
import thinclick.server.words.ReviewPage;
import thinclick.server.words.Speaker;
import thinclick.server.words.Spoken;

/**
 * Runs one rehearsal in real time: starts a host on a free port, opens a room, seats stand-ins who
 * each come in over a socket of their own, deals, counts in, tells bar by bar what clicks, and ends
 * with the review.
 */
public final class Rehearsal {
  /** A run without {@code --bars} takes about this long from count-in to the last bar, seconds. */
  private static final double USUAL_SECONDS = 26;

  private static final int LEAD_MILLIS = 2_000;

  private final Drill drill;
  private final List<String> players;
  private final double tempo;
  private final List<Stage> stages;
  private final long seed;
  private final PrintWriter out;

  private final LinkLoop loop = LinkLoop.start();
  private final Awaited room;
  private final Speaker speaker = Speaker.english();
  private @Nullable RoomLink link;

  private Rehearsal(
      Drill drill,
      List<String> players,
      double tempo,
      List<Stage> stages,
      long seed,
      PrintWriter out) {
    this.drill = drill;
    this.players = players;
    this.room = new Awaited(players);
    this.tempo = tempo;
    this.stages = stages;
    this.seed = seed;
    this.out = out;
  }

  /**
   * Prepares a rehearsal.
   *
   * @param playerCount 1 to 24
   * @param tempo beats a minute within the drill's range; null: where the drill starts
   * @param bars null: as many of the drill's as fit into about half a minute
   * @param seed fixes the deal and the noise of the stand-ins
   */
  public static Rehearsal of(
      Drill drill,
      int playerCount,
      @Nullable Double tempo,
      @Nullable Integer bars,
      long seed,
      PrintWriter out) {
    double beats = tempo == null ? drill.tempo().start() : tempo;
    Check.range("--tempo", beats, drill.tempo().from(), drill.tempo().to());
    Check.range("--seed", seed, 0L, Check.MAX_SAFE);
    List<Stage> stages = drill.stages();
    int written = new ClickPlan(stages).bars();
    int wanted = written;
    if (bars != null) {
      Check.range("--bars", bars.longValue(), 1L, 1_000);
      wanted = bars;
    } else {
      double barSeconds = drill.meter().beatsPerBar() * 60 / beats;
      int fitting = (int) (USUAL_SECONDS / barSeconds) / stages.size() * stages.size();
      wanted = Math.min(written, Math.max(stages.size(), fitting));
    }
    return new Rehearsal(
        drill, Band.of(playerCount), beats, StageFit.over(stages, wanted), seed, out);
  }

  /**
   * Runs it to the end.
   *
   * @return the take
   * @throws BadInput where something does not come about, saying what was waited for
   */
  public Take run() {
    Path folder = temporaryFolder();
    try (RehearsalHost host =
        RehearsalHost.start(HostOptions.local(folder.resolve("rehearsal.db")))) {
      String takeId = play(RoomAddress.local(host.port()), LinkOptions.on(loop));
      return host.take(takeId)
          .orElseThrow(() -> new BadInput("", "the host has not kept the take " + takeId));
    } finally {
      remove(folder);
    }
  }

  /**
   * Runs it to the end in a room of its own at a host elsewhere, which keeps the take.
   *
   * @param hostKey what that host asks for before it opens a room; null for nothing
   * @return the take's id there
   * @throws BadInput where something does not come about, saying what was waited for
   */
  public String runAt(RoomAddress address, @Nullable String hostKey) {
    LinkOptions options = LinkOptions.on(loop);
    return play(address, hostKey == null ? options : options.withHostKey(hostKey));
  }

  private String play(RoomAddress address, LinkOptions leaders) {
    List<StandIn> band = new ArrayList<>();
    try {
      RoomLink leader = RoomLink.open(leaders, address, "Leader", room);
      link = leader;
      String word = await("a room", room.word);
      Random luck = new Random(seed);
      int slipping = players.size() > 1 ? luck.nextInt(players.size()) : -1;
      for (int i = 0; i < players.size(); i++) {
        boolean slips = i == slipping;
        Timing timing = Timing.PRACTISED.leaning(luck.nextInt(21) - 10);
        band.add(
            StandIn.join(
                loop,
                address,
                word,
                players.get(i),
                timing,
                hand -> slips ? Manner.LOST.slip(hand) : Slip.NONE,
                seed * 100 + i));
      }
      List<String> chairs = await("all players", room.seated);
      await("the material", leader.lead().material(drill.title()));
      await("the click plan", leader.lead().plan(stages, tempo));
      await("the deal", leader.lead().deal(seed, chairs));
      ServerMessage.Dealt hand = await("the parts", room.dealt);
      await("everybody ready", room.ready);
      introduce(hand);
      await("the start", leader.lead().start(hand.dealId(), LEAD_MILLIS, 1));
      TakeNews.Announced take = await("the count-in", room.announced);
      long lasts = tellBars(hand, take);
      TakeNews.ReviewReady review =
          await("the review", room.reviewed, lasts + Awaited.PATIENCE_SECONDS);
      out.println();
      out.println(ReviewPage.of(Spoken.fromJson(review.review()), speaker).stripTrailing());
      out.flush();
      return review.takeId();
    } finally {
      band.forEach(StandIn::close);
      RoomLink open = link;
      if (open != null) {
        open.close();
      }
      loop.close();
    }
  }

  private void introduce(ServerMessage.Dealt hand) {
    out.printf(
        Locale.ROOT,
        "\"%s\" in %s at %s, %d stand-in%s, seed %d.%n",
        hand.title(),
        hand.meter(),
        Check.number(hand.tempo()),
        players.size(),
        players.size() == 1 ? "" : "s",
        seed);
    hand.says().forEach(sentence -> out.println("  " + sentence));
    out.println();
    out.flush();
  }

  /** Says each bar as it begins, on the leader's own estimate of room time; answers seconds. */
  private long tellBars(ServerMessage.Dealt hand, TakeNews.Announced take) {
    RoomLink leader = Check.present("link", link);
    StepGrid grid = hand.gridFrom(take.startMicros());
    ClickPlan plan = new ClickPlan(hand.stages());
    BarWords words = new BarWords(plan, hand.meter(), hand.stepsPerBeat(), speaker);
    say(leader, take.countInMicros(), "count-in: " + words.counted());
    for (int bar = 0; bar < plan.bars(); bar++) {
      String what = words.of(bar);
      int stage = plan.stageAt(bar);
      String heading =
          plan.fromBar(stage) == bar
              ? "   <- "
                  + speaker.say(
                      ClickWords.of(plan.stages().get(stage), hand.meter(), hand.stepsPerBeat()))
              : "";
      say(
          leader,
          grid.instantOf((long) bar * grid.stepsPerBar()),
          String.format(Locale.ROOT, "bar %3d: %s%s", bar + 1, what, heading).stripTrailing());
    }
    return Math.round(
            (grid.microsAt((long) plan.bars() * grid.stepsPerBar()) - take.countInMicros()) / 1e6)
        + LEAD_MILLIS / 1_000;
  }

  private void say(RoomLink leader, long atMicros, String line) {
    loop.at(
        leader.nanosOf(atMicros),
        () -> {
          out.println(line);
          out.flush();
        });
  }

  private static Path temporaryFolder() {
    try {
      return Files.createTempDirectory("thinclick");
    } catch (IOException problem) {
      throw new UncheckedIOException(problem);
    }
  }

  private static void remove(Path folder) {
    try (Stream<Path> inside = Files.walk(folder)) {
      for (Path path : inside.sorted(Comparator.reverseOrder()).toList()) {
        Files.deleteIfExists(path);
      }
    } catch (IOException problem) {
      throw new UncheckedIOException(problem);
    }
  }
}

package thinclick.client.window;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thinclick.client.command.ClientMain;
import thinclick.client.link.LinkLoop;
import thinclick.client.link.LinkOptions;
import thinclick.client.link.RoomAddress;
import thinclick.client.link.RoomLink;
import thinclick.client.link.RoomListener;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.FileCodec;
import thinclick.protocol.file.Take;
import thinclick.protocol.message.ServerMessage;
import thinclick.protocol.message.ServerMessage.Dealt;
import thinclick.protocol.message.ServerMessage.Person;
import thinclick.protocol.message.TakeNews.Announced;
import thinclick.protocol.message.TakeNews.ReviewReady;
import thinclick.protocol.message.TakeNews.Stopped;
import thinclick.protocol.music.Stage;
import thinclick.server.command.ServerMain;

/**
 * A host in one process, two windows in two more, each on a display of its own, real keys pressed
 * in both: what each player tapped is in the take once, and the review names both.
 */
@Tag("window")
class TwoWindowsTest {
  private static final Duration PATIENCE = Duration.ofSeconds(60);
  private static final double TEMPO = 120;
  private static final int TAPS_OF_ANA = 9;
  private static final int TAPS_OF_BEN = 6;

  @TempDir Path folder;

  private final List<Process> processes = new ArrayList<>();
  private final List<AutoCloseable> open = new ArrayList<>();
  private final Leader leader = new Leader();

  @AfterEach
  void end() throws Exception {
    for (AutoCloseable one : open) {
      one.close();
    }
    for (Process process : processes) {
      process.destroy();
      process.waitFor(10, TimeUnit.SECONDS);
    }
  }

  @Test
  void bothPlayersKeysAreInTheTakeOnceAndTheReviewNamesBoth() throws Exception {
    assumeTrue(
        VirtualDisplay.canBeHad(),
        "Not tried: real windows need Xvfb and xdotool, and this computer lacks one of them.");
    Path database = folder.resolve("rooms.db");
    RoomAddress address = serve(database);
    LinkLoop loop = LinkLoop.start();
    open.add(loop);
    RoomLink link = RoomLink.open(LinkOptions.on(loop), address, "Leader", leader);
    open.add(0, link);
    await().atMost(PATIENCE).until(() -> link.word() != null);
    VirtualDisplay anas = window(address, link.word(), "Ana");
    VirtualDisplay bens = window(address, link.word(), "Ben");
    await().atMost(PATIENCE).until(() -> ready("Ana") && ready("Ben"));

    link.lead().material("Even eighths").join();
    link.lead().plan(List.of(Stage.ofBeats(2, 1, 1, 2, 3, 4), Stage.ofBeats(1, 1)), TEMPO).join();
    link.lead().deal(1, List.of(person("Ana").playerId(), person("Ben").playerId())).join();
    await().atMost(PATIENCE).until(() -> leader.dealt != null);
    link.lead().start(leader.dealt.dealId(), 2_000, 1).join();
    await().atMost(PATIENCE).until(() -> leader.announced != null);
    long startNanos = link.nanosOf(leader.announced.startMicros());
    CompletableFuture<Void> ana = taps(anas, "f", startNanos, TAPS_OF_ANA);
    CompletableFuture<Void> ben = taps(bens, "j", startNanos, TAPS_OF_BEN);
    CompletableFuture.allOf(ana, ben).get(60, TimeUnit.SECONDS);
    assertThat(leader.stopped).as("keys are pressed while the take runs").isNull();
    anas.picture(pictures().resolve("stand-ana.png"));
    await().atMost(PATIENCE).until(() -> leader.review != null && !leader.review.provisional());
    await().atMost(PATIENCE).until(() -> anas.shows("Review") && bens.shows("Review"));

    Take take = export(database, leader.announced.takeId());
    assertThat(count(take, "Ana")).isEqualTo(TAPS_OF_ANA);
    assertThat(count(take, "Ben")).isEqualTo(TAPS_OF_BEN);
    assertThat(take.attacks()).doesNotHaveDuplicates();
    assertThat(
            StreamSupport.stream(leader.review.review().get("players").spliterator(), false)
                .map(player -> player.get("player").stringValue()))
        .containsExactlyInAnyOrder("Ana", "Ben");
    bens.picture(pictures().resolve("review-ben.png"));
    for (String name : List.of("Ana", "Ben")) {
      String log = Files.readString(home(name).resolve("thinclick/log/thinclick.log"));
      assertThat(log).contains("sound output").doesNotContain("Ana", "Ben", link.word());
    }
  }

  /** Where a window keeps what it writes; its log may say where, but not whose it is. */
  private Path home(String name) {
    return folder.resolve(name.equals("Ana") ? "one" : "other");
  }

  private RoomAddress serve(Path database) throws IOException {
    Process server =
        start(java(ServerMain.class, "serve", "--port", "0", "--db", database.toString()));
    BufferedReader said =
        new BufferedReader(new InputStreamReader(server.getInputStream(), StandardCharsets.UTF_8));
    Pattern address = Pattern.compile("(ws://[0-9.]+:\\d+)");
    for (String line = said.readLine(); line != null; line = said.readLine()) {
      Matcher matcher = address.matcher(line);
      if (matcher.find()) {
        return RoomAddress.parse(matcher.group(1));
      }
    }
    throw new IOException("the host did not say where it listens");
  }

  private VirtualDisplay window(RoomAddress address, String word, String name) throws IOException {
    VirtualDisplay display = VirtualDisplay.start();
    open.add(display);
    ProcessBuilder builder =
        java(ClientMain.class, "--server", address.toString(), "--room", word, "--name", name);
    builder.environment().put("XDG_DATA_HOME", Files.createDirectory(home(name)).toString());
    builder.environment().put("XDG_CONFIG_HOME", home(name).toString());
    builder.redirectOutput(folder.resolve(name + ".log").toFile());
    display.show(builder);
    start(builder);
    return display;
  }

  private static ProcessBuilder java(Class<?> main, String... arguments) {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(List.of("-XX:TieredStopAtLevel=1", "-Dprism.order=sw", "-cp"));
    command.add(System.getProperty("java.class.path"));
    command.add(main.getName());
    command.addAll(Arrays.asList(arguments));
    return new ProcessBuilder(command).redirectErrorStream(true);
  }

  private Process start(ProcessBuilder builder) throws IOException {
    Process process = builder.start();
    processes.add(process);
    return process;
  }

  /** Presses a key on each beat of the take, as well as another process can. */
  private static CompletableFuture<Void> taps(
      VirtualDisplay display, String key, long startNanos, int taps) {
    return CompletableFuture.runAsync(
        () -> {
          for (int tap = 0; tap < taps; tap++) {
            long atNanos = startNanos + Math.round(tap * 60e9 / TEMPO);
            long waitNanos = atNanos - System.nanoTime();
            CompletableFuture<Void> due =
                CompletableFuture.runAsync(
                    () -> display.press(key),
                    CompletableFuture.delayedExecutor(
                        Math.max(0, waitNanos), TimeUnit.NANOSECONDS));
            due.join();
          }
        },
        task -> new Thread(task, "taps-" + key).start());
  }

  private boolean ready(String name) {
    return leader.people.stream()
        .anyMatch(one -> one.name().equals(name) && one.uncertaintyMicros() != null);
  }

  private Person person(String name) {
    return leader.people.stream().filter(one -> one.name().equals(name)).findFirst().orElseThrow();
  }

  private static long count(Take take, String player) {
    return take.attacks().stream().map(Attack::player).filter(player::equals).count();
  }

  private Take export(Path database, String takeId) throws IOException {
    Path file = folder.resolve("take.json");
    int exit =
        ServerMain.commandLine()
            .execute("take", "export", takeId, file.toString(), "--db", database.toString());
    assertThat(exit).isZero();
    return FileCodec.readTake(Files.readAllBytes(file));
  }

  private static Path pictures() throws IOException {
    return Files.createDirectories(Path.of("target", "pictures"));
  }

  /** Runs the rehearsal without playing. */
  private static final class Leader implements RoomListener {
    volatile List<Person> people = List.of();
    volatile Dealt dealt;
    volatile Announced announced;
    volatile Stopped stopped;
    volatile ReviewReady review;

    @Override
    public void roster(ServerMessage.Roster roster) {
      people = roster.players();
    }

    @Override
    public void dealt(Dealt now) {
      dealt = now;
    }

    @Override
    public void announced(Announced now) {
      announced = now;
    }

    @Override
    public void stopped(Stopped now) {
      stopped = now;
    }

    @Override
    public void reviewReady(ReviewReady now) {
      review = now;
    }
  }
}

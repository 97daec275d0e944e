package thinclick.client.rehearse;

import static org.awaitility.Awaitility.await;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import java.util.stream.Stream;
import thinclick.client.link.LinkLoop;
import thinclick.client.link.LinkState;
import thinclick.client.link.RoomAddress;
import thinclick.client.standin.Timing;
import thinclick.protocol.file.Take;
import thinclick.protocol.message.ServerMessage.Person;
import thinclick.protocol.message.ServerMessage.Phase;
import thinclick.protocol.message.TakeNews.ReviewReady;
import thinclick.protocol.time.VirtualTime;
import thinclick.server.host.HostOptions;
import thinclick.server.host.RehearsalHost;

/** A host with drills and a lesson of its own, a class and its teacher, on one virtual clock. */
final class ClassRoom implements AutoCloseable {
  static final String LESSON = "Evening class";

  /** A drill for everybody alike: title, steps of the bar, bars, and how they click. */
  private static final String[][] DRILLS = {
    {"All four", "0,2,6", "3;1,2,3,4", "3;1,3"},
    {"And the ands", "0,3,4,7", "2;1,2,3,4", "2;2,4"},
    {"Late starters", "2,3,6", "2;1,3", "2;1"},
    {"As held", "0,3,4", "7;1,2,3,4"},
    {"Push", "0,3,6", "2;1,2,3,4", "4;2,4"},
  };

  final VirtualTime time = new VirtualTime(1_000_000_000L);
  final Path folder;
  final RehearsalHost host;
  final LockStep step;
  final Map<String, Pupil> pupils = new LinkedHashMap<>();
  private final LinkLoop loop = LinkLoop.start(time);
  private Path inMemory;
  private CountDownLatch asleep = new CountDownLatch(0);

  ClassRoom(Path folder) throws IOException {
    this.folder = folder;
    Path material = Files.createDirectory(folder.resolve("material"));
    StringBuilder lesson = new StringBuilder();
    for (String[] drill : DRILLS) {
      Files.writeString(material.resolve(drill[0].replace(' ', '-') + ".drill.json"), json(drill));
      lesson.append(lesson.isEmpty() ? "" : ",");
      lesson.append("{\"drill\":\"").append(drill[0]).append("\",\"takes\":1,\"say\":\"Softly.\"}");
    }
    Files.writeString(
        material.resolve("class.lesson.json"),
        String.format(
            Locale.ROOT,
            "{\"format\":\"thinclick.lesson\",\"version\":1,\"title\":\"%s\",\"minutes\":45,"
                + "\"drills\":[%s]}",
            LESSON,
            lesson));
    host =
        RehearsalHost.start(
            HostOptions.local(disk().resolve("class.db")).on(time, time).withMaterial(material));
    step = new LockStep(time, host, loop);
  }

  private static String json(String[] drill) {
    StringBuilder stages = new StringBuilder();
    for (int i = 2; i < drill.length; i++) {
      String[] stage = drill[i].split(";");
      stages.append(stages.isEmpty() ? "" : ",");
      stages.append("{\"bars\":").append(stage[0]).append(",\"everyBars\":1,\"beats\":[");
      stages.append(stage[1]).append("]}");
    }
    return String.format(
        Locale.ROOT,
        "{\"format\":\"thinclick.drill\",\"version\":1,\"title\":\"%s\",\"level\":2,"
            + "\"meter\":\"4/4\",\"stepsPerBeat\":2,\"swing\":1.0,"
            + "\"tempo\":{\"from\":60,\"to\":240,\"start\":200},\"toleranceMillis\":null,"
            + "\"periodBars\":1,\"deal\":{\"kind\":\"unison\",\"seed\":7},"
            + "\"chairs\":[{\"chair\":\"1\",\"entryStep\":0,"
            + "\"cell\":{\"steps\":8,\"attackSteps\":[%s]}}],\"stages\":[%s]}",
        drill[0],
        drill[1],
        stages);
  }

  /**
   * Where the database lies: each attack waits for the disk, which is a long time beside a clock
   * that stands still meanwhile; a disk in memory says sooner that it is done.
   */
  private Path disk() throws IOException {
    Path memory = Path.of("/dev/shm");
    inMemory =
        Files.isWritable(memory) ? Files.createTempDirectory(memory, "thinclick-class") : null;
    return inMemory == null ? folder : inMemory;
  }

  RoomAddress address() {
    return RoomAddress.local(host.port());
  }

  // ---------------------------------------------------------------- who comes and goes

  /** A computer with a window comes; its folder is its disk. */
  LessonDesk computer(String disk) throws IOException {
    Path data = folder.resolve(disk);
    if (!Files.isDirectory(data)) {
      Files.createDirectory(data);
    }
    LessonDesk made = new LessonDesk(time, data);
    step.with(made.loop);
    return made;
  }

  void comes(String name, Timing timing, String word) {
    comes(loop, name, timing, word);
  }

  private void comes(LinkLoop at, String name, Timing timing, String word) {
    Pupil pupil = new Pupil(at, address(), word, name, timing, name.hashCode());
    await().until(() -> pupil.state == LinkState.ONLINE);
    pupils.put(name, pupil);
    step.settle();
  }

  /** The same at a computer of its own, which can sleep. */
  LinkLoop comesAlone(String name, Timing timing, String word) {
    LinkLoop own = LinkLoop.start(time);
    step.with(own);
    comes(own, name, timing, word);
    return own;
  }

  /** Nothing runs on that computer any more, and its line stays as it is. */
  void sleeps(LinkLoop computer) {
    step.settle();
    step.without(computer);
    CountDownLatch until = new CountDownLatch(1);
    CountDownLatch begun = new CountDownLatch(1);
    asleep = until;
    computer.run(
        () -> {
          begun.countDown();
          try {
            until.await();
          } catch (InterruptedException woken) {
            Thread.currentThread().interrupt();
          }
        });
    await().until(() -> begun.getCount() == 0);
  }

  void wakes(LinkLoop computer) {
    asleep.countDown();
    step.with(computer);
    step.settle();
  }

  /** What lay on a disk the moment its computer died. */
  void copyDisk(String from, String to) throws IOException {
    Path made = Files.createDirectory(folder.resolve(to));
    try (Stream<Path> files = Files.list(folder.resolve(from))) {
      for (Path file : files.toList()) {
        Files.copy(file, made.resolve(file.getFileName()));
      }
    } catch (UncheckedIOException unreadable) {
      throw unreadable.getCause();
    }
  }

  // ---------------------------------------------------------------- one take

  /** The names that are in the room and know its time. */
  static List<String> ready(LessonDesk leader) {
    return leader.state().people().stream()
        .filter(person -> person.connected() && person.uncertaintyMicros() != null)
        .map(Person::name)
        .toList();
  }

  /** Whatever deals; answers once everybody has their part. */
  void deals(LessonDesk leader, Runnable does) {
    String before = dealId(leader);
    leader.run(does);
    step.until(
        "a deal", 2, () -> leader.state().phase() == Phase.DEALT && !dealId(leader).equals(before));
  }

  private static String dealId(LessonDesk leader) {
    return leader.state().dealt() == null ? "" : leader.state().dealt().dealId();
  }

  /** The one button counts in; answers the take's id. */
  String begins(LessonDesk leader) {
    leader.run(() -> leader.desk.lesson().goOn());
    step.until("a take", 1, () -> leader.state().takeRuns());
    return leader.state().announced().takeId();
  }

  /** Moves the clock to a bar of the running take, from 0. */
  void toBar(LessonDesk anybody, int bar) {
    long micros = anybody.state().grid().instantOf((long) bar * 8);
    step.pass((anybody.session.link().nanosOf(micros) - time.nanos()) / 1e9);
  }

  /** The take runs out; answers it as the host has it, once its review is final. */
  Take ends(LessonDesk leader) {
    step.until("the end", 60, () -> !leader.state().takeRuns());
    step.until("the final review", 8, () -> reviewed(leader));
    return host.take(leader.state().announced().takeId()).orElseThrow();
  }

  private static boolean reviewed(LessonDesk leader) {
    ReviewReady review = leader.state().review();
    return review != null && !review.provisional();
  }

  @Override
  public void close() {
    asleep.countDown();
    loop.close();
    host.close();
    if (inMemory != null) {
      try (Stream<Path> files = Files.list(inMemory)) {
        for (Path file : files.toList()) {
          Files.delete(file);
        }
        Files.delete(inMemory);
      } catch (IOException left) {
        throw new UncheckedIOException(left);
      }
    }
  }
}

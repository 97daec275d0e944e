package thinclick.client.rehearse;

import static org.awaitility.Awaitility.await;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import thinclick.client.link.LinkLoop;
import thinclick.client.link.LinkState;
import thinclick.client.link.PlayedAttack;
import thinclick.client.standin.Slip;
import thinclick.client.standin.Timing;
import thinclick.client.window.lectern.LecternDesk;
import thinclick.client.window.season.ClassDesk;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.session.Session;
import thinclick.client.window.session.TakeMoment;
import thinclick.client.window.words.Words;
import thinclick.protocol.message.ServerMessage.Person;
import thinclick.protocol.message.TakeNews.Announced;
import thinclick.protocol.time.VirtualTime;

/**
 * A computer with the window's own models on it, without a window: what a teacher runs a lesson
 * from, or a pupil plays at. Its window's thread is that of its links.
 */
final class LessonDesk implements AutoCloseable {
  private static final long LOOK_NANOS = 100_000_000;

  final LinkLoop loop;
  final Session session;
  final LecternDesk desk;

  /** What was played here, room time, by take. */
  final Map<String, List<Long>> played = new LinkedHashMap<>();

  private final VirtualTime time;
  private Hands hands;
  private String playing = "";

  LessonDesk(VirtualTime time, Path data) {
    this.time = time;
    loop = LinkLoop.start(time);
    session = new Session(loop::run, time, data, Locale.ENGLISH, loop);
    desk =
        LecternDesk.of(
            session,
            Words.in(Locale.ENGLISH),
            time,
            new ClassDesk(session, loop::run, Words.in(Locale.ENGLISH)));
  }

  /** Waits until it is in its room. */
  LessonDesk inside() {
    await().until(() -> on(() -> session.state().inside()));
    return this;
  }

  RoomState state() {
    return session.state();
  }

  LinkState link() {
    return session.state().link();
  }

  void run(Runnable task) {
    on(
        () -> {
          task.run();
          return true;
        });
  }

  <T> T on(Callable<T> asked) {
    CompletableFuture<T> answer = new CompletableFuture<>();
    loop.run(
        () -> {
          try {
            answer.complete(asked.call());
          } catch (Exception failed) {
            answer.completeExceptionally(failed);
          }
        });
    try {
      return answer.get(20, TimeUnit.SECONDS);
    } catch (InterruptedException | ExecutionException | TimeoutException failed) {
      throw new AssertionError(failed);
    }
  }

  /** Looks at the running take as a window does, ten times a second. */
  void looks() {
    loop.at(
        time.nanos() + LOOK_NANOS,
        () -> {
          RoomState room = session.state();
          if (room.takeRuns() && session.link() != null && room.grid() != null) {
            long micros = session.link().roomMicros(time.nanos());
            TakeMoment now = TakeMoment.at(room.grid(), room.plan(), room.announced(), micros);
            desk.steering().look(now, micros);
          }
          looks();
        });
  }

  /** Somebody sits here and plays by a model of timing. */
  void plays(Timing timing, long seed) {
    run(
        () -> {
          session.onPlayed(micros -> played.get(playing).add(micros));
          session.onHeard(
              heard -> {
                if (hands != null) {
                  heard.items().forEach(one -> hands.hears(name(one.playerId()), one));
                }
              });
          session.stateProperty().addListener((any, old, now) -> follow(now, timing, seed));
        });
  }

  private void follow(RoomState now, Timing timing, long seed) {
    Announced take = now.announced();
    if (!now.takeRuns() && hands != null) {
      hands.rest();
      hands = null;
    } else if (now.takeRuns() && take != null && !take.takeId().equals(playing)) {
      playing = take.takeId();
      played.put(playing, new ArrayList<>());
      if (now.dealt() != null && now.dealt().own() != null) {
        hands =
            new Hands(
                loop,
                micros -> session.link().nanosOf(micros),
                nanos -> session.link().roomMicros(nanos),
                nanos -> session.play(PlayedAttack.tap(nanos)),
                now.dealt(),
                take,
                timing,
                Slip.NONE,
                seed);
      }
    }
  }

  private String name(String playerId) {
    return session.state().people().stream()
        .filter(person -> person.playerId().equals(playerId))
        .map(Person::name)
        .findFirst()
        .orElse("");
  }

  /** The computer dies: nothing here runs any more, and nobody was told. */
  void dies() {
    loop.close();
  }

  @Override
  public void close() {
    run(session::close);
  }
}

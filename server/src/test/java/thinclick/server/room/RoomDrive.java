package thinclick.server.room;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.FileCodec;
import thinclick.protocol.file.Lesson;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.message.AnswerMessage.DrillLine;
import thinclick.protocol.message.AnswerMessage.LibraryList;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.CloseCode;
import thinclick.protocol.message.ErrorCode;
import thinclick.protocol.message.LeaderCommand;
import thinclick.protocol.message.ServerMessage;
import thinclick.protocol.message.TakeMessage;
import thinclick.protocol.message.TakeMessage.WireAttack;
import thinclick.protocol.message.TakeNews;
import thinclick.server.dealing.Dealer;
import thinclick.server.dealing.Dealing;
import thinclick.server.words.Speaker;

/**
 * A room with people in it, driven by hand: who says what at which millisecond, and what each was
 * told. The journal answers about attacks only when it is told to.
 */
public final class RoomDrive {
  public static final Drill DRILL =
      FileCodec.readDrill(
          """
          {"format": "thinclick.drill", "version": 1, "title": "Beats and ands", "level": 3,
           "meter": "4/4", "stepsPerBeat": 2, "swing": 1.0,
           "tempo": {"from": 60, "to": 180, "start": 120}, "toleranceMillis": null,
           "periodBars": 1, "deal": {"kind": "asWritten", "seed": 1},
           "chairs": [
             {"chair": "1", "cell": {"steps": 8, "attackSteps": [0, 2, 4, 6]}, "entryStep": 0},
             {"chair": "2", "cell": {"steps": 8, "attackSteps": [1, 3, 5, 7]}, "entryStep": 0}],
           "stages": [{"bars": 2, "everyBars": 1, "beats": [1, 2, 3, 4]},
                      {"bars": 2, "everyBars": 1, "beats": [1]}]}
          """
              .getBytes(StandardCharsets.UTF_8));

  static final Lesson LESSON =
      new Lesson(
          Lesson.FORMAT,
          Lesson.VERSION,
          "One drill",
          20,
          List.of(new Lesson.Item(DRILL.title(), 2, "Softly.")));

  private static final LibraryList LIST =
      new LibraryList(List.of(DrillLine.of(DRILL, true)), List.of(LESSON));

  public static final Shelf DRILLS =
      new Shelf() {
        @Override
        public Drill drill(String title) {
          if (!title.equalsIgnoreCase(DRILL.title())) {
            throw new BadInput("drill", "expected a title of the stock, found \"" + title + "\"");
          }
          return DRILL;
        }

        @Override
        public LibraryList list() {
          return LIST;
        }
      };

  public static final DealMaker DEALER =
      (drill, players, seed, tempo, stages, levels) -> {
        Dealing dealing = Dealer.dealFitted(drill, players, seed, tempo, stages, levels);
        return new DealMaker.Hand(
            dealing.parts(),
            dealing.sentences(),
            dealing.toEach(Speaker.english()),
            dealing.toleranceMillis(),
            dealing.dealt());
      };

  /** An event and its instant, as they came. */
  record Entry(RoomEvent event, long micros) {}

  final Room room;
  final List<Entry> queue = new ArrayList<>();
  final List<Effect> effects = new ArrayList<>();
  final List<JournalEntry> journal = new ArrayList<>();
  final List<JournalEntry.Played> unstored = new ArrayList<>();
  final List<String> reviewsAsked = new ArrayList<>();
  private final Map<Long, List<ServerMessage>> told = new HashMap<>();
  private final Map<Long, CloseCode> closed = new LinkedHashMap<>();
  private final Map<Long, String> tokens = new HashMap<>();
  private long nowMicros;
  private long request;

  RoomDrive() {
    this(Room.fresh("room", "balumidore", 1, DRILLS, DEALER));
  }

  RoomDrive(Room room) {
    this.room = room;
  }

  void event(RoomEvent event) {
    queue.add(new Entry(event, nowMicros));
    take(room.handle(event, nowMicros));
  }

  private void take(List<Effect> done) {
    effects.addAll(done);
    for (Effect effect : done) {
      if (effect instanceof Effect.Send send) {
        for (long connection : send.connections()) {
          told.computeIfAbsent(connection, c -> new ArrayList<>()).add(send.message());
        }
      } else if (effect instanceof Effect.Close close) {
        closed.put(close.connection(), close.code());
      } else if (effect instanceof Effect.Append append) {
        journal.add(append.entry());
        if (append.entry() instanceof JournalEntry.Played played) {
          unstored.add(played);
        }
      } else if (effect instanceof Effect.MakeReview review) {
        reviewsAsked.add(review.takeId());
      }
    }
    for (Effect effect : done) {
      if (effect instanceof Effect.Append append
          && append.entry() instanceof JournalEntry.State state) {
        event(new RoomEvent.Journaled(state, new RoomJournal.Outcome.Stored())); // at once
      }
    }
  }

  /** What was to be done of that kind. */
  <T extends Effect> List<T> effects(Class<T> kind) {
    return effects.stream().filter(kind::isInstance).map(kind::cast).toList();
  }

  /** Moves the clock, waking the room whenever it wants to be woken. */
  void pass(long millis) {
    long end = nowMicros + millis * 1_000;
    while (room.wakeMicros() <= end) {
      nowMicros = Math.max(nowMicros, room.wakeMicros());
      event(new RoomEvent.Woken());
    }
    nowMicros = end;
  }

  long micros() {
    return nowMicros;
  }

  ServerMessage.Welcome open(long connection, String name) {
    event(
        new RoomEvent.Came(
            connection,
            new ClientMessage.OpenRoom(1, 1, null, name),
            "token" + connection,
            "lead"));
    return last(connection, ServerMessage.Welcome.class);
  }

  void join(long connection, String name) {
    join(connection, name, Role.PLAYER, null);
  }

  void join(long connection, String name, Role role, String token) {
    event(
        new RoomEvent.Came(
            connection,
            new ClientMessage.Join(1, 1, "balumidore", name, role, token, null, false),
            "token" + connection,
            "unused"));
  }

  void say(long connection, ClientMessage message) {
    event(new RoomEvent.Said(connection, message));
  }

  void gone(long connection) {
    event(new RoomEvent.Gone(connection, 0));
  }

  /** The leader chooses the drill, deals to all players and starts with a count-in of one bar. */
  TakeNews.Announced start(long leader) {
    material(leader);
    ServerMessage.Dealt dealt = deal(leader);
    say(leader, new LeaderCommand.Start(++request, revision(), dealt.dealId(), 2_000, 1));
    return last(leader, TakeNews.Announced.class);
  }

  void material(long leader) {
    say(leader, new LeaderCommand.Material(++request, revision(), null, "beats and ands"));
  }

  ServerMessage.Dealt deal(long leader) {
    say(leader, new LeaderCommand.Deal(++request, revision(), 7, List.of()));
    return last(leader, ServerMessage.Dealt.class);
  }

  void stop(long leader, String takeId) {
    say(leader, new LeaderCommand.Stop(++request, revision(), takeId));
  }

  long revision() {
    return room.state().revision();
  }

  void play(long connection, TakeNews.Announced announced, long firstSeq, long... micros) {
    List<WireAttack> attacks = new ArrayList<>();
    for (long at : micros) {
      attacks.add(WireAttack.tap(at));
    }
    say(
        connection,
        new TakeMessage.Attacks(announced.takeId(), announced.epoch(), firstSeq, attacks));
  }

  /** The disk has taken everything that was appended. */
  void storeAll() {
    List<JournalEntry.Played> all = List.copyOf(unstored);
    unstored.clear();
    all.forEach(played -> event(new RoomEvent.Journaled(played, new RoomJournal.Outcome.Stored())));
  }

  <T extends ServerMessage> List<T> all(long connection, Class<T> kind) {
    return told(connection).filter(kind::isInstance).map(kind::cast).toList();
  }

  <T extends ServerMessage> T last(long connection, Class<T> kind) {
    List<T> all = all(connection, kind);
    if (all.isEmpty()) {
      throw new AssertionError(
          "expected " + kind.getSimpleName() + ", found " + told.get(connection));
    }
    return all.get(all.size() - 1);
  }

  ErrorCode lastError(long connection) {
    return last(connection, ServerMessage.Problem.class).code();
  }

  CloseCode closed(long connection) {
    return closed.get(connection);
  }

  private Stream<ServerMessage> told(long connection) {
    return told.getOrDefault(connection, List.of()).stream();
  }
}

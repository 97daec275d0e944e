package thinclick.client.window.session;

import java.util.ArrayList;
import java.util.List;
import thinclick.client.link.LinkState;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.ServerMessage;
import thinclick.protocol.message.ServerMessage.Person;
import thinclick.protocol.message.ServerMessage.Phase;
import thinclick.protocol.message.TakeNews;
import thinclick.protocol.message.TakeNews.StopReason;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.Swing;
import thinclick.server.scoring.Scorer;
import thinclick.server.words.Speaker;
import thinclick.server.words.Spoken;

/** Rooms as a leader sees them, put together from messages; for tests of view models. */
public final class Rooms {
  /** Who plays in them. */
  public static final String[] NAMES = {"Mina", "Jonas"};

  private static final long START = 10_000_000;

  private Rooms() {}

  /** A take of two players on all steps and on the beats, without attacks. */
  public static Take take(Meter meter, int stepsPerBeat, List<Stage> stages) {
    int perBar = meter.stepsPerBar(stepsPerBeat);
    int bars = stages.stream().mapToInt(Stage::bars).sum();
    List<Integer> all = new ArrayList<>();
    List<Integer> beats = new ArrayList<>();
    for (int step = 0; step < bars * perBar; step++) {
      all.add(step);
      if (step % stepsPerBeat == 0) {
        beats.add(step);
      }
    }
    return new Take(
        Take.FORMAT,
        Take.VERSION,
        "Even steps",
        meter,
        100,
        stepsPerBeat,
        Swing.STRAIGHT,
        START,
        50.0,
        stages,
        List.of(Part.of(NAMES[0], 0, all), Part.of(NAMES[1], 0, beats)),
        List.of(),
        null,
        List.of());
  }

  /** One attack. */
  public static Attack attack(String player, long micros) {
    return Attack.tap(player, micros);
  }

  /** Nothing is chosen yet. */
  public static RoomState gathering() {
    return RoomState.OUTSIDE
        .calling("192.168.1.20:7420")
        .linkChanged(LinkState.ONLINE, "", 0)
        .welcome(
            new ServerMessage.Welcome(
                1,
                "p1",
                "token",
                "lead",
                "zanotulu",
                1,
                1,
                Phase.GATHERING,
                0,
                new ServerMessage.RoomLimits(24, 16_384, 50, 256)))
        .roster(
            new ServerMessage.Roster(
                2,
                List.of(
                    new Person(
                        "p1",
                        NAMES[0],
                        Role.LEADER,
                        "1",
                        true,
                        900L,
                        null,
                        null,
                        false,
                        false,
                        false),
                    new Person(
                        "p2",
                        NAMES[1],
                        Role.PLAYER,
                        "2",
                        true,
                        900L,
                        null,
                        null,
                        false,
                        false,
                        false))));
  }

  /** The parts are dealt. */
  public static RoomState dealt(Take take) {
    return gathering()
        .dealt(
            new ServerMessage.Dealt(
                3,
                "d1",
                take.title(),
                take.parts(),
                NAMES[0],
                take.meter(),
                take.stepsPerBeat(),
                take.tempo(),
                take.swing(),
                50,
                take.stages(),
                List.of(),
                null));
  }

  /** The same after the lead was passed to the other. */
  public static RoomState notLed(RoomState room) {
    List<Person> turned =
        room.people().stream()
            .map(
                one ->
                    new Person(
                        one.playerId(),
                        one.name(),
                        one.role() == Role.LEADER ? Role.PLAYER : Role.LEADER,
                        one.chair(),
                        one.connected(),
                        900L,
                        null,
                        null,
                        false,
                        false,
                        false))
            .toList();
    return room.roster(new ServerMessage.Roster(3, turned));
  }

  /** A take is announced. */
  public static RoomState playing(Take take) {
    return dealt(take)
        .announced(new TakeNews.Announced("t1", "d1", 1, START - 2_400_000, START, 1));
  }

  /** The take was ended so long after its first step. */
  public static RoomState stopped(Take take, long afterMicros, StopReason reason) {
    return playing(take).stopped(new TakeNews.Stopped("t1", START + afterMicros, reason));
  }

  /** The take is over and reviewed. */
  public static RoomState reviewed(Take take) {
    Spoken spoken = Spoken.of(Scorer.analyse(take), Speaker.english());
    return playing(take)
        .stopped(new TakeNews.Stopped("t1", START + 60_000_000, StopReason.FINISHED))
        .reviewed(new TakeNews.ReviewReady("t1", false, spoken.toJson()));
  }
}

package thinclick.server.room;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.MessageCodec;
import thinclick.protocol.message.ServerMessage.Phase;
import thinclick.server.load.Fuzz;

/**
 * Texts from strangers and members to a room in every phase: each is refused by the reader as
 * documented, or followed or refused by the room; nothing else happens. Rooms are used up and made
 * anew; each one's queue of events is replayed at its end.
 */
public final class RoomFuzz {
  private static final int A_ROOM = 400;
  private static final long LEADER = 1;
  private static final long PLAYER = 2;
  private static final long OTHER = 3;
  private static final long LISTENER = 4;

  private final Random random;
  private final long seed;
  private final List<String> faults = new ArrayList<>();
  private final Map<Phase, Long> heardIn = new EnumMap<>(Phase.class);
  private final Map<Phase, Set<String>> kindsHeardIn = new EnumMap<>(Phase.class);
  private long refusedByTheReader;

  private RoomFuzz(long seed) {
    this.seed = seed;
    this.random = new Random(seed);
  }

  /**
   * What came of it.
   *
   * @param faults what should not have happened, with its seed
   * @param heardIn how many messages reached a room, by its phase
   * @param kindsHeardIn which kinds of message those were
   */
  public record Outcome(
      long messages,
      long refusedByTheReader,
      Map<Phase, Long> heardIn,
      Map<Phase, Set<String>> kindsHeardIn,
      List<String> faults) {}

  /** So many messages from that seed. */
  public static Outcome run(long seed, long messages) {
    RoomFuzz fuzz = new RoomFuzz(seed);
    for (long done = 0; done < messages; done += A_ROOM) {
      fuzz.oneRoom(seed + done, (int) Math.min(A_ROOM, messages - done));
    }
    return new Outcome(
        messages, fuzz.refusedByTheReader, fuzz.heardIn, fuzz.kindsHeardIn, fuzz.faults);
  }

  private void oneRoom(long roomSeed, int messages) {
    RoomDrive drive = new RoomDrive();
    drive.open(LEADER, "Frau Ott");
    drive.join(PLAYER, "Mina");
    drive.join(OTHER, "Jonas");
    drive.join(LISTENER, "Ida", Role.LISTENER, null);
    Phase aim = Phase.values()[random.nextInt(Phase.values().length)];
    bring(drive, aim);
    Fuzz texts = new Fuzz(roomSeed, "room-t1", "room-d1", "room-p2");
    for (int i = 0; i < messages; i++) {
      String text = texts.next();
      try {
        hear(drive, text);
      } catch (RuntimeException fault) {
        faults.add("seed " + seed + ", room " + roomSeed + ", message " + i + ": " + fault + text);
        return;
      }
    }
    replay(drive, roomSeed);
  }

  private static void bring(RoomDrive drive, Phase aim) {
    if (aim == Phase.GATHERING) {
      return;
    }
    drive.material(LEADER);
    drive.deal(LEADER);
    if (aim == Phase.DEALT) {
      return;
    }
    drive.start(LEADER);
    if (aim != Phase.COUNT_IN) {
      drive.pass(aim == Phase.TAKE ? 4_500 : 40_000);
    }
  }

  private void hear(RoomDrive drive, String text) {
    ClientMessage message;
    try {
      message = MessageCodec.readClient(text);
    } catch (MessageCodec.Malformed | MessageCodec.UnknownType | BadInput documented) {
      refusedByTheReader++;
      MessageCodec.requestIdIn(text);
      return;
    }
    heardIn.merge(drive.room.phase(), 1L, Long::sum);
    kindsHeardIn
        .computeIfAbsent(drive.room.phase(), phase -> new TreeSet<>())
        .add(message.getClass().getSimpleName());
    long from = 1 + random.nextInt(5); // 5 is nobody yet
    if (random.nextInt(20) == 0) {
      drive.event(new RoomEvent.Came(from + 10, message, "token" + from, "lead"));
    } else {
      drive.say(from, message);
    }
    if (random.nextInt(10) == 0) {
      drive.pass(random.nextInt(50));
    }
    if (random.nextInt(10) == 0) {
      drive.storeAll();
    }
    if (random.nextInt(50) == 0) {
      drive.gone(from);
      drive.join(from, "Back", Role.PLAYER, "token" + from);
    }
  }

  /** The same events give the same room. */
  private void replay(RoomDrive drive, long roomSeed) {
    Room again = Room.fresh("room", "balumidore", 1, RoomDrive.DRILLS, RoomDrive.DEALER);
    List<Effect> effects = new ArrayList<>();
    for (RoomDrive.Entry entry : drive.queue) {
      effects.addAll(again.handle(entry.event(), entry.micros()));
    }
    if (!again.state().equals(drive.room.state()) || !effects.equals(drive.effects)) {
      faults.add("seed " + seed + ", room " + roomSeed + ": the replay differs");
    }
  }
}

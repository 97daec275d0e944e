package thinclick.server.store;

import java.util.List;
import java.util.Map;
import thinclick.protocol.file.Take;
import thinclick.protocol.message.ServerMessage.Phase;
import thinclick.protocol.message.TakeNews.Announced;
import thinclick.server.room.RoomState;

/** Room states for tests of the store, which does not look into them. */
final class Rooms {
  private Rooms() {}

  static RoomState empty() {
    return state(List.of());
  }

  static RoomState withTake(Take written) {
    return state(
        List.of(
            new RoomState.TakeState(
                new Announced("t1", "d1", 1, 0, written.startMicros(), 1),
                written,
                Map.of("p1", "Mina", "p2", "Jonas"),
                null,
                null,
                Map.of())));
  }

  private static RoomState state(List<RoomState.TakeState> takes) {
    return new RoomState(
        "room",
        "balumidore",
        3,
        2,
        Phase.TAKE,
        "p1",
        "hash",
        "p1",
        new RoomState.Counted(2, 1, 1),
        List.of(),
        null,
        null,
        null,
        null,
        Map.of(),
        takes,
        false,
        null,
        null);
  }
}

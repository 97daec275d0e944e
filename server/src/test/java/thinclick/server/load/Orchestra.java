package thinclick.server.load;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.FileCodec;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.LeaderCommand;
import thinclick.protocol.message.MessageCodec;
import thinclick.protocol.message.ServerMessage;
import thinclick.protocol.message.TakeNews;
import thinclick.protocol.music.Stage;

/** A room with a take that runs for a quarter of an hour, and its players, ready to be loaded. */
final class Orchestra {
  private static final int BARS = 120;
  private static final double SLOWEST = 30;

  private Orchestra() {}

  /** A player's line, with what it needs to come back, and the take it plays in. */
  record Seat(
      RawLine line,
      String word,
      String playerId,
      String name,
      String token,
      String takeId,
      long startMicros) {}

  /** Opens a room, fills it and starts; whoever led it is gone by then, and the take goes on. */
  static List<Seat> play(int port, int players) {
    try (RawLine leader = RawLine.connect(port)) {
      say(leader, new ClientMessage.OpenRoom(1, 1, null, "Frau Ott"));
      ServerMessage.Welcome opened = hear(leader, "welcome", ServerMessage.Welcome.class);
      List<RawLine> lines = new ArrayList<>();
      List<ServerMessage.Welcome> welcomes = new ArrayList<>();
      for (int i = 1; i <= players; i++) {
        RawLine line = RawLine.connect(port);
        say(
            line,
            new ClientMessage.Join(
                1, 1, opened.room(), "Player " + i, Role.PLAYER, null, null, false));
        welcomes.add(hear(line, "welcome", ServerMessage.Welcome.class));
        lines.add(line);
      }
      say(leader, new LeaderCommand.Material(1, opened.revision(), drill(players), null));
      long revision = hear(leader, "done", ServerMessage.Done.class).revision();
      say(leader, new LeaderCommand.Plan(2, revision, List.of(Stage.ofBeats(BARS, 1, 1)), SLOWEST));
      revision = hear(leader, "done", ServerMessage.Done.class).revision();
      say(leader, new LeaderCommand.Deal(3, revision, 1, List.of()));
      String dealId = hear(leader, "dealt", ServerMessage.Dealt.class).dealId();
      revision = hear(leader, "done", ServerMessage.Done.class).revision();
      say(leader, new LeaderCommand.Start(4, revision, dealId, 2_000, 1));
      TakeNews.Announced announced = hear(leader, "announced", TakeNews.Announced.class);
      List<Seat> seats = new ArrayList<>();
      for (int i = 0; i < players; i++) {
        ServerMessage.Welcome welcome = welcomes.get(i);
        seats.add(
            new Seat(
                lines.get(i),
                welcome.room(),
                welcome.playerId(),
                "Player " + (i + 1),
                welcome.token(),
                announced.takeId(),
                announced.startMicros()));
      }
      return seats;
    }
  }

  static void say(RawLine line, ClientMessage message) {
    line.sendText(MessageCodec.write(message));
  }

  static <T extends ServerMessage> T hear(RawLine line, String type, Class<T> kind) {
    return kind.cast(MessageCodec.readServer(line.expect(type)));
  }

  /** One attack a bar for everybody. */
  private static Drill drill(int chairs) {
    String all =
        IntStream.rangeClosed(1, chairs)
            .mapToObj(
                chair ->
                    "{\"chair\": \""
                        + chair
                        + "\", \"cell\": {\"steps\": 8, \"attackSteps\": [0]}, \"entryStep\": 0}")
            .collect(Collectors.joining(", "));
    return FileCodec.readDrill(
        ("""
         {"format": "thinclick.drill", "version": 1, "title": "Load", "level": 1,
          "meter": "4/4", "stepsPerBeat": 2, "swing": 1.0,
          "tempo": {"from": 30, "to": 180, "start": 30}, "toleranceMillis": null,
          "periodBars": 1, "deal": {"kind": "asWritten", "seed": 1}, "chairs": ["""
                + all
                + """
                ], "stages": [{"bars": 1, "everyBars": 1, "beats": [1]}]}""")
            .getBytes(StandardCharsets.UTF_8));
  }
}

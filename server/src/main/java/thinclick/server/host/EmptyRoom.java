package thinclick.server.host;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.Hearing;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.LeaderCommand;
import thinclick.protocol.message.MessageCodec;
import thinclick.protocol.message.PreparingMessage;
import thinclick.protocol.message.QuestionMessage;
import thinclick.protocol.message.ServerMessage;
import thinclick.protocol.message.TakeMessage;
import thinclick.protocol.message.TakeMessage.WireAttack;
import thinclick.protocol.message.TakeNews;
import thinclick.protocol.music.Stage;
import thinclick.server.room.DealMaker;
import thinclick.server.room.Effect;
import thinclick.server.room.JournalEntry;
import thinclick.server.room.Room;
import thinclick.server.room.RoomEvent;
import thinclick.server.room.RoomJournal;
import thinclick.server.room.Shelf;

/**
 * A take in a room that nobody is in, from its opening to its end, with every message there is and
 * with what is refused. Nothing is written down and nobody is told.
 */
final class EmptyRoom {
  private static final String WORD = "balumi";
  private static final long LEADER = 1;
  private static final List<Long> PLAYERS = List.of(2L, 3L, 4L);

  private final Room room;
  private final boolean refusals;
  private final Set<Class<?>> said = new HashSet<>();
  private final String title;
  private final int seed;
  private long micros;
  private long requests;
  private ServerMessage.@Nullable Welcome last;
  private ServerMessage.@Nullable Dealt dealt;
  private TakeNews.@Nullable Announced announced;

  /**
   * @param title a drill of the shelf
   * @param seed of the deal
   * @param refusals true where every message is to come cut and with a wrong value before it comes
   *     whole
   */
  EmptyRoom(Shelf shelf, DealMaker dealer, String title, int seed, boolean refusals) {
    this.room = Room.fresh("warmup", WORD, 1, shelf, dealer);
    this.title = title;
    this.seed = seed;
    this.refusals = refusals;
  }

  /** Plays it; what kinds of message were said and told. */
  Set<Class<?>> play() {
    come(LEADER, new ClientMessage.OpenRoom(1, 1, null, "Leader"));
    PLAYERS.forEach(player -> come(player, join("Player " + player, null)));
    come(9, join("Player 2", null)); // a name that is taken
    gather();
    deal();
    TakeNews.Announced take = announced;
    if (take != null) {
      take(take);
    }
    lead("somebody");
    command((id, at) -> new LeaderCommand.CloseRoom(id, at));
    return said;
  }

  private void gather() {
    for (long player : PLAYERS) {
      say(player, new PreparingMessage.Clock(requests, micros));
      say(
          player,
          new PreparingMessage.ClockReport(
              1, PreparingMessage.ClockState.STEADY, 900, 5, 400, 900L, 90L));
      say(player, new PreparingMessage.SoundCheck(PreparingMessage.InputKind.KEYS, 80, 9, 36));
      say(player, new TakeMessage.HearsOthers(Hearing.Mode.IN_TIME, 40));
      say(player, new ClientMessage.Resync(0));
    }
    say(LEADER, new QuestionMessage.Browse(++requests, null));
    say(LEADER, new QuestionMessage.Browse(++requests, "none of this title"));
    say(PLAYERS.get(0), new QuestionMessage.Browse(++requests, title));
    command((id, at) -> new LeaderCommand.Material(id, at, null, "none of this title"));
    command((id, at) -> new LeaderCommand.Material(id, at, null, title));
    command((id, at) -> new LeaderCommand.Plan(id, at, List.of(Stage.ofBeats(2, 1, 1)), null));
    command((id, at) -> new LeaderCommand.Note(id, at, "from the top", null));
    pass(1_000);
  }

  private void deal() {
    command((id, at) -> new LeaderCommand.Deal(id, at, seed, List.of("nobody")));
    command((id, at) -> new LeaderCommand.Deal(id, at, seed, List.of()));
    ServerMessage.Dealt parts = dealt;
    if (parts != null) {
      PLAYERS.forEach(player -> say(player, new PreparingMessage.Ready(parts.dealId(), true)));
      command((id, at) -> new LeaderCommand.Start(id, at, "d0", 2_000, 1));
      command((id, at) -> new LeaderCommand.Start(id, at, parts.dealId(), 2_000, 1));
    }
  }

  private void take(TakeNews.Announced take) {
    pass(4_000);
    for (int first = 1; first <= 8; first++) {
      pass(250);
      for (long player : PLAYERS) {
        say(player, attacks(take.takeId(), take.epoch(), first));
        say(player, attacks("t0", take.epoch() + 1, first));
      }
    }
    String id = take.takeId();
    long epoch = take.epoch();
    for (long player : PLAYERS) {
      say(player, new TakeMessage.Lengths(id, epoch, List.of(new TakeMessage.AttackLength(1, 80))));
      say(player, new TakeMessage.ClickInterrupted(id, epoch, micros - 1_000, micros));
      say(player, new TakeMessage.Asleep(id, epoch, micros - 1_000, micros));
      say(player, new ClientMessage.ClaimLead(++requests));
    }
    command((r, at) -> new LeaderCommand.Replan(r, at, id, 3, List.of(Stage.ofBeats(1, 1))));
    ServerMessage.Welcome back = last;
    event(new RoomEvent.Gone(PLAYERS.get(2), 0));
    if (back != null) {
      come(5, join("Player 4", back.token()));
    }
    command((r, at) -> new LeaderCommand.Stop(r, at, id));
    PLAYERS.forEach(player -> say(player, new TakeMessage.PlayedThrough(id, 8)));
    pass(1_000);
    say(5, new QuestionMessage.KeepTake(++requests, id, null));
    say(5, new QuestionMessage.AskCourse(++requests, id));
    say(5, new QuestionMessage.AskFewest(++requests, title, 96));
  }

  private void lead(String who) {
    command((id, at) -> new LeaderCommand.Seat(id, at, who, 1));
    command((id, at) -> new LeaderCommand.StandIn(id, at, who));
    command((id, at) -> new LeaderCommand.PassLead(id, at, who));
    command((id, at) -> new LeaderCommand.Remove(id, at, who));
    command((id, at) -> new LeaderCommand.Lock(id, at, true));
    command((id, at) -> new LeaderCommand.Share(id, at, true));
    command((id, at) -> new LeaderCommand.NewWord(id, at));
    say(PLAYERS.get(0), new LeaderCommand.Lock(++requests, 0, true)); // leads nobody
    say(PLAYERS.get(1), new ClientMessage.Leave(++requests));
  }

  private TakeMessage.Attacks attacks(String takeId, long epoch, int first) {
    return new TakeMessage.Attacks(takeId, epoch, first, List.of(WireAttack.tap(micros)));
  }

  private static ClientMessage.Join join(String name, @Nullable String token) {
    return new ClientMessage.Join(1, 1, WORD, name, Role.PLAYER, token, null, false);
  }

  private interface Command {
    LeaderCommand of(long requestId, long revision);
  }

  private void command(Command command) {
    say(LEADER, command.of(++requests, room.state().revision()));
  }

  private void come(long connection, ClientMessage message) {
    heard(message, read -> new RoomEvent.Came(connection, read, "token" + connection, "leads"));
  }

  private void say(long connection, ClientMessage message) {
    heard(message, read -> new RoomEvent.Said(connection, read));
  }

  private void heard(ClientMessage message, Function<ClientMessage, RoomEvent> event) {
    said.add(message.getClass());
    String text = MessageCodec.write(message);
    if (refusals) {
      refused(text.substring(0, text.length() - 1));
      refused(text.replaceFirst(":[^:,]*}$", ":[[]]}"));
    }
    event(event.apply(MessageCodec.readClient(text)));
  }

  private static void refused(String text) {
    try {
      MessageCodec.readClient(text);
    } catch (BadInput | MessageCodec.Malformed | MessageCodec.UnknownType expected) {
      MessageCodec.requestIdIn(text);
    }
  }

  private void pass(long millis) {
    long end = micros + millis * 1_000;
    while (room.wakeMicros() <= end) {
      micros = Math.max(micros, room.wakeMicros());
      event(new RoomEvent.Woken());
    }
    micros = end;
  }

  private void event(RoomEvent event) {
    List<JournalEntry> written = new ArrayList<>();
    for (Effect effect : room.handle(event, micros)) {
      if (effect instanceof Effect.Send send) {
        said.add(send.message().getClass());
        MessageCodec.writeBytes(send.message());
        remember(send.message());
      } else if (effect instanceof Effect.Append append) {
        written.add(append.entry());
      }
    }
    for (JournalEntry entry : written) {
      event(new RoomEvent.Journaled(entry, new RoomJournal.Outcome.Stored()));
    }
  }

  private void remember(ServerMessage message) {
    if (message instanceof ServerMessage.Welcome welcome) {
      last = welcome;
    } else if (message instanceof ServerMessage.Dealt parts) {
      dealt = parts;
    } else if (message instanceof TakeNews.Announced take) {
      announced = take;
    }
  }
}

package thinclick.server.net;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.InstantSource;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import thinclick.protocol.message.AnswerMessage;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.CloseCode;
import thinclick.protocol.message.LeaderCommand;
import thinclick.protocol.message.MessageCodec;
import thinclick.protocol.message.PreparingMessage;
import thinclick.protocol.message.ServerMessage;
import thinclick.protocol.time.MonotonicClock;
import thinclick.server.load.RawLine;
import thinclick.server.store.Store;
import thinclick.server.watch.HostMeters;

/** A fault of the host's own costs whoever met it the connection, and nobody else anything. */
class FaultTest {
  @TempDir Path folder;
  private Store store;
  private Listener listener;
  private RawLine leader;
  private RawLine mina;
  private long revision;

  /** Told of a room's first word only. */
  private static final class Forgetful implements RoomNews {
    private boolean told;

    @Override
    public void called(String roomId, String word) {
      if (told) {
        throw new IllegalStateException("there is no room left on the list");
      }
      told = true;
    }

    @Override
    public void over(String roomId) {}
  }

  @BeforeEach
  void aLeaderAndAPlayerAreInARoom() {
    store = Store.open(folder.resolve("room.db"), InstantSource.system(), available -> {});
    HostParts parts =
        BareHost.parts(MonotonicClock.SYSTEM, null, store, new HostMeters(), new Forgetful());
    listener = Listener.open(Port.bind("127.0.0.1", 0), Lines.PLAIN, parts);
    leader = RawLine.connect(listener.port());
    say(leader, new ClientMessage.OpenRoom(1, 1, null, "Frau Ott"));
    String word = welcomed(leader).room();
    mina = RawLine.connect(listener.port());
    say(mina, new ClientMessage.Join(1, 1, word, "Mina", Role.PLAYER, null, null, false));
    revision = welcomed(mina).revision();
  }

  @AfterEach
  void close() {
    leader.close();
    mina.close();
    listener.close();
    store.close();
  }

  private static void say(RawLine line, ClientMessage message) {
    line.sendText(MessageCodec.write(message));
  }

  private static ServerMessage.Welcome welcomed(RawLine line) {
    return (ServerMessage.Welcome) MessageCodec.readServer(line.expect("welcome"));
  }

  @Test
  void whatCannotBeCarriedOutClosesTheAskersLineAndTheRoomGoesOn() {
    say(leader, new LeaderCommand.NewWord(1, revision));

    assertThat(leader.closeCode()).isEqualTo(CloseCode.FAULT.number());
    say(mina, new PreparingMessage.Clock(7, 5));
    AnswerMessage answer = (AnswerMessage) MessageCodec.readServer(mina.expect("clockAnswer"));
    assertThat(answer).isInstanceOf(AnswerMessage.ClockAnswer.class);
    say(mina, new ClientMessage.Leave(2));
    assertThat(mina.expect("done")).contains("\"requestId\":2");
  }
}

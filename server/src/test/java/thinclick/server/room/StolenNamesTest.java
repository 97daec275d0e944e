package thinclick.server.room;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.CloseCode;
import thinclick.protocol.message.ErrorCode;
import thinclick.protocol.message.LeaderCommand;
import thinclick.protocol.message.ServerMessage;

/** Somebody who wants to be taken for somebody else. */
class StolenNamesTest {
  private static final long LEADER = 1;
  private static final long MINA = 2;
  private static final long THIEF = 9;

  private final RoomDrive drive = new RoomDrive();

  @BeforeEach
  void minaIsHere() {
    drive.open(LEADER, "Frau Ott");
    drive.join(MINA, "Mina");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Mina",
        "MINA",
        " mina ",
        "\uff2dina", // a wide letter
        "M\u0069na",
        "\u2133ina", // a script letter
        "frau  ott",
        "Frau\u00a0Ott"
      })
  void nameIsKeptForItsTokenWhileItsOwnerIsAway(String name) {
    drive.gone(MINA);
    drive.gone(LEADER);
    drive.join(THIEF, name);

    assertThat(drive.lastError(THIEF)).isEqualTo(ErrorCode.NAME_TAKEN);
    assertThat(drive.all(THIEF, ServerMessage.Welcome.class)).isEmpty();
    drive.join(MINA, "Mina", Role.PLAYER, "token2");
    assertThat(drive.last(MINA, ServerMessage.Welcome.class).playerId()).isEqualTo("room-p2");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"token1", "token3", "Token2", "token2 ", "lead", "0", "null", "' OR 1=1 --"})
  void tokensOfOthersAndGuessesGetNobodyIn(String token) {
    RoomState before = drive.room.state();
    drive.join(THIEF, "Mina", Role.PLAYER, token);

    boolean owners = token.equals("token1") || token.equals("lead");
    if (owners) {
      // The leader's own tokens bring back the leader, whatever name is said with them.
      assertThat(drive.last(THIEF, ServerMessage.Welcome.class).playerId()).isEqualTo("room-p1");
    } else {
      assertThat(drive.closed(THIEF)).isEqualTo(CloseCode.TOKEN);
      assertThat(drive.room.state()).isEqualTo(before);
    }
    assertThat(drive.closed(MINA)).isNull();
    assertThat(drive.room.state().members())
        .as("nobody has another name or token")
        .extracting(RoomState.MemberState::name, RoomState.MemberState::tokenHash)
        .containsExactlyElementsOf(
            before.members().stream().map(m -> tuple(m.name(), m.tokenHash())).toList());
  }

  @Test
  void nameSaidWithATokenDoesNotChangeWhoThatIs() {
    drive.join(THIEF, "Frau Ott", Role.PLAYER, "token2");

    assertThat(drive.last(THIEF, ServerMessage.Welcome.class).playerId()).isEqualTo("room-p2");
    assertThat(drive.room.state().members())
        .extracting(RoomState.MemberState::name)
        .containsExactly("Frau Ott", "Mina");
    assertThat(drive.room.state().leaderId()).isEqualTo("room-p1");
  }

  @Test
  void commandsWithoutTheLeadersTokenChangeNothing() {
    for (String token : List.of("token2", "guess")) {
      drive.join(THIEF, "Frau Ott", Role.LEADER, token);
    }
    drive.join(MINA, "Mina", Role.PLAYER, "token2");
    RoomState before = drive.room.state();
    for (ClientMessage forged :
        List.of(
            new LeaderCommand.CloseRoom(1, drive.revision()),
            new LeaderCommand.Remove(2, drive.revision(), "room-p1"),
            new LeaderCommand.PassLead(3, drive.revision(), "room-p2"),
            new ClientMessage.ClaimLead(4),
            new LeaderCommand.NewWord(5, drive.revision()))) {
      drive.say(MINA, forged);
      assertThat(drive.lastError(MINA)).as("%s", forged).isEqualTo(ErrorCode.NOT_ALLOWED);
    }

    assertThat(drive.room.state()).isEqualTo(before);
    assertThat(drive.closed(LEADER)).isNull();
  }
}

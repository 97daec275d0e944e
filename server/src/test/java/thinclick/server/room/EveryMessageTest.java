package thinclick.server.room;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import thinclick.protocol.file.Hearing;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.ErrorCode;
import thinclick.protocol.message.LeaderCommand;
import thinclick.protocol.message.MessageCodec;
import thinclick.protocol.message.PreparingMessage;
import thinclick.protocol.message.QuestionMessage;
import thinclick.protocol.message.ServerMessage;
import thinclick.protocol.message.ServerMessage.Phase;
import thinclick.protocol.message.TakeMessage;
import thinclick.protocol.message.TakeMessage.WireAttack;
import thinclick.protocol.music.Stage;

/**
 * Every message in every phase by every role: followed exactly where the tables of {@code
 * protocol/README.md} say so, else refused with a code that fits, and then nothing in the room has
 * changed.
 */
class EveryMessageTest {
  private static final long LEADER = 1;
  private static final long MINA = 2;
  private static final long JONAS = 3;
  private static final long IDA = 4;
  private static final long ROBOT = 5;
  private static final String MINA_ID = "room-p2";
  private static final String JONAS_ID = "room-p3";

  /** A role, and who has it here. */
  private enum Who {
    L(LEADER),
    P(MINA),
    W(IDA);

    private final long connection;

    Who(long connection) {
      this.connection = connection;
    }
  }

  /** In which phases, by whom. */
  private record Rule(Set<Phase> phases, Set<Who> who) {}

  /** All there is, each as it could be right in that room. */
  private static List<ClientMessage> all(long seen) {
    List<Stage> four = List.of(Stage.ofBeats(4, 1, 1));
    return List.of(
        new ClientMessage.OpenRoom(1, 1, null, "Frau Ott"),
        new ClientMessage.Join(1, 1, "balumidore", "Mina", Role.PLAYER, "token2", null, false),
        new PreparingMessage.Clock(1, 5),
        new PreparingMessage.ClockReport(
            1, PreparingMessage.ClockState.STEADY, 900, 100, 1.5, 400L, 90L),
        new PreparingMessage.SoundCheck(PreparingMessage.InputKind.KEYS, 30, 5, 16),
        new PreparingMessage.Ready("room-d1", true),
        new TakeMessage.Attacks("room-t1", 1, 1, List.of(WireAttack.tap(4_000_000))),
        new TakeMessage.Lengths("room-t1", 1, List.of(new TakeMessage.AttackLength(1, 90))),
        new TakeMessage.PlayedThrough("room-t1", 1),
        new TakeMessage.HearsOthers(Hearing.Mode.AS_IT_ARRIVES, 30),
        new TakeMessage.ClickInterrupted("room-t1", 1, 4_000_000, 4_100_000),
        new TakeMessage.Asleep("room-t1", 1, 4_000_000, 4_100_000),
        new ClientMessage.Leave(9),
        new QuestionMessage.Browse(9, null),
        new QuestionMessage.KeepTake(9, "room-t1", null),
        new QuestionMessage.AskCourse(9, "room-t1"),
        new QuestionMessage.AskFewest(9, RoomDrive.DRILL.title(), 120),
        new LeaderCommand.Material(9, seen, RoomDrive.DRILL, null),
        new LeaderCommand.Plan(9, seen, four, 100.0),
        new LeaderCommand.Deal(9, seen, 1, List.of()),
        new LeaderCommand.Start(9, seen, "room-d1", 3_000, 1),
        new LeaderCommand.Stop(9, seen, "room-t1"),
        new ClientMessage.Resync(seen),
        new ClientMessage.ClaimLead(9),
        new LeaderCommand.Replan(9, seen, "room-t1", 3, List.of(Stage.ofBeats(1, 1, 1))),
        new LeaderCommand.Seat(9, seen, MINA_ID, 1),
        new LeaderCommand.StandIn(9, seen, JONAS_ID),
        new LeaderCommand.PassLead(9, seen, MINA_ID),
        new LeaderCommand.Remove(9, seen, JONAS_ID),
        new LeaderCommand.Lock(9, seen, true),
        new LeaderCommand.Share(9, seen, true),
        new LeaderCommand.NewWord(9, seen),
        new LeaderCommand.Note(9, seen, "Softly.", null),
        new LeaderCommand.CloseRoom(9, seen));
  }

  /** What each is called on the wire, in their order. */
  private static final List<String> NAMES = all(0).stream().map(EveryMessageTest::name).toList();

  private static String name(ClientMessage message) {
    Matcher type = Pattern.compile("\"type\":\"(\\w+)\"").matcher(MessageCodec.write(message));
    assertThat(type.find()).isTrue();
    return type.group(1);
  }

  /** A leader, a player with a part, one who has a chair and is away, a listener, a stand-in. */
  private static RoomDrive roomIn(Phase phase) {
    RoomDrive drive = new RoomDrive();
    drive.open(LEADER, "Frau Ott");
    drive.join(MINA, "Mina");
    drive.join(JONAS, "Jonas");
    drive.join(IDA, "Ida", Role.LISTENER, null);
    drive.event(
        new RoomEvent.Came(
            ROBOT,
            new ClientMessage.Join(1, 1, "balumidore", "Robot", Role.PLAYER, null, null, true),
            "token5",
            ""));
    drive.say(LEADER, new LeaderCommand.Seat(1, drive.revision(), JONAS_ID, 2));
    drive.say(
        MINA,
        new PreparingMessage.ClockReport(
            1, PreparingMessage.ClockState.STEADY, 900, 100, 0, null, null));
    drive.material(LEADER);
    if (phase != Phase.GATHERING) {
      drive.say(LEADER, new LeaderCommand.Deal(2, drive.revision(), 7, List.of(MINA_ID, JONAS_ID)));
    }
    drive.gone(JONAS);
    if (phase != Phase.GATHERING && phase != Phase.DEALT) {
      drive.say(LEADER, new LeaderCommand.Start(3, drive.revision(), "room-d1", 2_000, 1));
      drive.pass(
          switch (phase) {
            case COUNT_IN -> 2_500;
            case TAKE -> 4_500;
            default -> 40_000;
          });
      drive.say(MINA, new TakeMessage.Attacks("room-t1", 1, 1, List.of(WireAttack.tap(4_000_000))));
      drive.storeAll();
    }
    assertThat(drive.room.phase()).isEqualTo(phase);
    assertThat(drive.all(LEADER, ServerMessage.Problem.class)).isEmpty();
    return drive;
  }

  private static @Nullable Map<String, Rule> documented;

  private static Map<String, Rule> documented() throws IOException {
    if (documented != null) {
      return documented;
    }
    Map<String, Rule> rules = new LinkedHashMap<>();
    boolean commands = false;
    boolean here = false;
    for (String line : Files.readAllLines(Path.of("../protocol/README.md"))) {
      here = line.startsWith("## 4") || (here && !line.startsWith("## "));
      commands |= here && line.startsWith("| command ");
      Matcher row = Pattern.compile("\\| (`\\w+`(?:, `\\w+`)*) \\|.*\\| ([^|]*) \\|").matcher(line);
      if (here && row.matches()) {
        Rule rule = rule(row.group(2), commands);
        for (String name : row.group(1).split(", ")) {
          rules.put(name.replace("`", ""), rule);
        }
      }
    }
    documented = rules;
    return rules;
  }

  private static Rule rule(String when, boolean command) {
    String[] said = when.split(";");
    Set<Phase> phases = EnumSet.noneOf(Phase.class);
    if (said[0].startsWith("any")) {
      phases = EnumSet.allOf(Phase.class);
    } else if (said[0].startsWith("after `stopped`")) {
      phases = EnumSet.of(Phase.REVIEW);
    } else if (!said[0].startsWith("first message")) {
      for (String letter : said[0].split(" of ")[0].strip().split(" ")) {
        phases.add(Phase.values()["GDCTR".indexOf(letter)]);
      }
    }
    Set<Who> who = EnumSet.allOf(Who.class);
    if (command) {
      who = EnumSet.of(Who.L);
    } else if (said.length > 1 && said[1].strip().matches("[LPW]( [LPW])*( with a part)?")) {
      who = EnumSet.noneOf(Who.class);
      for (String letter : said[1].strip().replace(" with a part", "").split(" ")) {
        who.add(Who.valueOf(letter));
      }
    }
    return new Rule(phases, who);
  }

  @Test
  void theTablesAndTheseMessagesAreAllThereIs() throws IOException {
    Set<Class<?>> made = new LinkedHashSet<>();
    all(0).forEach(message -> made.add(message.getClass()));

    assertThat(made).containsExactlyInAnyOrderElementsOf(concrete(ClientMessage.class));
    assertThat(documented()).containsOnlyKeys(NAMES);
  }

  /** The kinds of message there are. */
  static List<Class<?>> concrete(Class<?> kind) {
    List<Class<?>> found = new ArrayList<>();
    for (Class<?> each : kind.getPermittedSubclasses()) {
      if (each.isSealed()) {
        found.addAll(concrete(each));
      } else {
        found.add(each);
      }
    }
    return found;
  }

  private static Stream<String> everyName() {
    return NAMES.stream();
  }

  @ParameterizedTest
  @MethodSource("everyName")
  void isFollowedWhereTheTablesSayAndElseRefusedWithoutATrace(String name) throws IOException {
    Rule rule = documented().get(name);
    int number = NAMES.indexOf(name);
    for (Phase phase : Phase.values()) {
      for (Who who : Who.values()) {
        RoomDrive drive = roomIn(phase);
        ClientMessage message = all(drive.revision()).get(number);
        long sender = who.connection;
        if (message instanceof ClientMessage.ClaimLead && who != Who.L) {
          drive.gone(LEADER);
          drive.pass(30_000);
          if (drive.room.phase() != phase) {
            continue; // half a minute later a take is over: RoomCommandsTest claims in one
          }
        }
        RoomState before = drive.room.state();
        int journaled = drive.journal.size();
        drive.say(sender, message);

        List<ServerMessage.Problem> problems = drive.all(sender, ServerMessage.Problem.class);
        String as = name + " in " + phase + " by " + who;
        boolean wrongPhase = !rule.phases().contains(phase);
        boolean wrongRole = !rule.who().contains(who);
        if (!wrongPhase && !wrongRole) {
          assertThat(problems).as(as).isEmpty();
        } else {
          assertThat(problems).as(as).hasSize(1);
          assertThat(problems.get(0).code()).as(as).isIn(codes(message, wrongPhase, wrongRole));
          assertThat(problems.get(0).says()).as(as).isNotBlank();
          assertThat(drive.room.state()).as(as).isEqualTo(before);
          assertThat(drive.journal).as(as).hasSize(journaled);
        }
      }
    }
  }

  private static List<ErrorCode> codes(ClientMessage message, boolean phase, boolean role) {
    if (phase && role) {
      return Arrays.asList(ErrorCode.WRONG_PHASE, ErrorCode.NOT_ALLOWED);
    }
    // What names a take is not allowed where there is no such take yet.
    boolean ofATake =
        message instanceof TakeMessage.Attacks
            || message instanceof TakeMessage.Lengths
            || message instanceof TakeMessage.ClickInterrupted
            || message instanceof TakeMessage.Asleep
            || message instanceof TakeMessage.PlayedThrough;
    return role || ofATake
        ? List.of(ErrorCode.NOT_ALLOWED, ErrorCode.WRONG_PHASE).subList(0, ofATake ? 2 : 1)
        : List.of(ErrorCode.WRONG_PHASE);
  }

  @Test
  void strangersAreNotHeardAtAll() {
    for (Phase phase : Phase.values()) {
      RoomDrive drive = roomIn(phase);
      RoomState before = drive.room.state();
      int said = drive.effects.size();
      all(drive.revision()).forEach(message -> drive.say(99, message));

      assertThat(drive.room.state()).isEqualTo(before);
      assertThat(drive.effects).hasSize(said);
    }
  }
}

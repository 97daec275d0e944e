package thinclick.server.load;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import thinclick.protocol.file.Hearing;
import thinclick.protocol.message.ClientMessage;
import thinclick.protocol.message.ClientMessage.Role;
import thinclick.protocol.message.LeaderCommand;
import thinclick.protocol.message.MessageCodec;
import thinclick.protocol.message.PreparingMessage;
import thinclick.protocol.message.QuestionMessage;
import thinclick.protocol.message.TakeMessage;
import thinclick.protocol.message.TakeMessage.WireAttack;
import thinclick.protocol.music.Stage;

/** Seeded texts that a client might send who means ill, or whose program is broken. */
public final class Fuzz {
  private static final String[] NASTY = {
    "null",
    "true",
    "-1",
    "1.9",
    "1e400",
    "99999999999999999999999",
    "9007199254740992",
    "\"1\"",
    "[]",
    "{}",
    "[null]",
    "\"\"",
    "\"\\u0000\\u001b[31m\"",
    "\"\\u202egnp.exe\"",
    "\"../../etc/x\"",
    "\"<script>\"",
    "\"'; DROP TABLE take; --\"",
    "[[[[[[[[[[[[[[[[[[[[1]]]]]]]]]]]]]]]]]]]]"
  };

  private final Random random;
  private final String takeId;
  private final String dealId;
  private final String playerId;

  /** The ids are real ones of the room, so that forged commands come as far as they can. */
  public Fuzz(long seed, String takeId, String dealId, String playerId) {
    this.random = new Random(seed);
    this.takeId = takeId;
    this.dealId = dealId;
    this.playerId = playerId;
  }

  /** The next text. */
  public String next() {
    return switch (random.nextInt(8)) {
      case 0 -> noise();
      case 1 -> cut(MessageCodec.write(message()));
      case 2 -> deep();
      case 3 -> swapped(MessageCodec.write(message()));
      case 4 -> twice(MessageCodec.write(message()));
      case 5 -> flipped(MessageCodec.write(message()));
      default -> MessageCodec.write(message());
    };
  }

  private String noise() {
    StringBuilder text = new StringBuilder();
    for (int i = random.nextInt(200); i > 0; i--) {
      text.appendCodePoint(
          random.nextBoolean()
              ? "{}[]\":,\\e1 ".charAt(random.nextInt(11))
              : random.nextInt(0xd800));
    }
    return text.toString();
  }

  private String cut(String text) {
    return text.substring(0, random.nextInt(text.length()));
  }

  private String deep() {
    int depth = 1 + random.nextInt(2_000);
    return "{\"type\":\"clock\",\"id\":"
        + "[".repeat(depth)
        + (random.nextBoolean() ? "]".repeat(depth) + "}" : "");
  }

  /** One value is exchanged for a nasty one. */
  private String swapped(String text) {
    int colon = text.indexOf(':', random.nextInt(text.length()));
    if (colon < 0) {
      return text;
    }
    int end = colon + 1;
    while (end < text.length() && ",}]".indexOf(text.charAt(end)) < 0) {
      end++;
    }
    return text.substring(0, colon + 1) + NASTY[random.nextInt(NASTY.length)] + text.substring(end);
  }

  private String twice(String text) {
    return random.nextBoolean() ? text + text : text.replaceFirst("\\{", "{\"type\":\"leave\",");
  }

  private String flipped(String text) {
    char[] characters = text.toCharArray();
    for (int i = 1 + random.nextInt(4); i > 0; i--) {
      characters[random.nextInt(characters.length)] = (char) random.nextInt(0x250);
    }
    return new String(characters);
  }

  /** Any message there is, most with ids that exist, whoever may send it. */
  private ClientMessage message() {
    long request = random.nextInt(1_000);
    long revision = random.nextInt(3) == 0 ? random.nextInt(1_000_000) : random.nextInt(12);
    String who = random.nextBoolean() ? playerId : "x".repeat(1 + random.nextInt(32));
    String take = random.nextBoolean() ? takeId : "../../" + random.nextInt(99);
    return switch (random.nextInt(36)) {
      case 0 -> new ClientMessage.OpenRoom(1, 1, null, "Fuzz " + random.nextInt(9));
      case 1 ->
          new ClientMessage.Join(
              1, 1, "balumidore", "Player 1", Role.LEADER, "0".repeat(32), null, false);
      case 2 -> new PreparingMessage.Clock(random.nextInt(100), Math.abs(random.nextLong() >> 12));
      case 3 ->
          new PreparingMessage.ClockReport(
              random.nextInt(3),
              PreparingMessage.ClockState.STEADY,
              random.nextInt(9_000),
              5,
              400,
              900L,
              90L);
      case 4 ->
          new PreparingMessage.SoundCheck(
              PreparingMessage.InputKind.KEYS, random.nextInt(400), random.nextInt(200), 16);
      case 5 -> new PreparingMessage.Ready(dealId, random.nextBoolean());
      case 6, 7, 8 ->
          new TakeMessage.Attacks(take, random.nextInt(3), 1 + random.nextInt(3_000), attacks());
      case 9 -> new TakeMessage.PlayedThrough(take, random.nextInt(5_000));
      case 10 -> new ClientMessage.Resync(revision);
      case 11 -> new ClientMessage.ClaimLead(request);
      case 12 -> new LeaderCommand.Material(request, revision, null, "../stock/" + request);
      case 13 -> new LeaderCommand.Plan(request, revision, List.of(Stage.ofBeats(9, 1, 1)), 300.0);
      case 14 -> new LeaderCommand.Deal(request, revision, 1, List.of(who));
      case 15 -> new LeaderCommand.Start(request, revision, dealId, 2_000, 1);
      case 16 -> new LeaderCommand.Stop(request, revision, take);
      case 17 -> new LeaderCommand.Seat(request, revision, who, 1 + random.nextInt(24));
      case 18 -> new LeaderCommand.PassLead(request, revision, who);
      case 19 -> new LeaderCommand.Remove(request, revision, who);
      case 20 -> new LeaderCommand.Lock(request, revision, random.nextBoolean());
      case 21 -> new LeaderCommand.NewWord(request, revision);
      case 22 ->
          new LeaderCommand.Note(request, revision, "\u0000\u001b[2J\n\u202e" + request, null);
      case 23 -> new LeaderCommand.CloseRoom(request, revision);
      case 24 -> new LeaderCommand.Replan(request, revision, take, 3, List.of(Stage.ofBeats(1, 1)));
      case 25 -> new LeaderCommand.Share(request, revision, random.nextBoolean());
      case 26 -> new ClientMessage.Leave(request);
      case 27 -> new QuestionMessage.Browse(request, random.nextBoolean() ? null : "../" + request);
      case 28 -> new TakeMessage.HearsOthers(Hearing.Mode.IN_TIME, random.nextInt(900));
      case 29 ->
          new TakeMessage.ClickInterrupted(
              take, random.nextInt(3), random.nextInt(9_000_000), 9_000_000L + request);
      case 30 ->
          new TakeMessage.Lengths(
              take,
              random.nextInt(3),
              List.of(new TakeMessage.AttackLength(1 + random.nextInt(3_000), request)));
      case 31 ->
          new TakeMessage.Asleep(
              take, random.nextInt(3), random.nextInt(9_000_000), 9_000_000L + request);
      case 32 ->
          new QuestionMessage.KeepTake(
              request, take, random.nextBoolean() ? null : 1 + random.nextInt(9));
      case 33 -> new QuestionMessage.AskCourse(request, take);
      case 34 -> new QuestionMessage.AskFewest(request, "../" + request, 30 + random.nextInt(290));
      default -> new LeaderCommand.StandIn(request, revision, who);
    };
  }

  private List<WireAttack> attacks() {
    List<WireAttack> attacks = new ArrayList<>();
    for (int i = 1 + random.nextInt(64); i > 0; i--) {
      attacks.add(WireAttack.tap(Math.abs(random.nextLong() >> 11)));
    }
    return attacks;
  }
}

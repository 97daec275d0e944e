package thinclick.server.room;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.Part;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.message.AnswerMessage;
import thinclick.protocol.message.ErrorCode;
import thinclick.protocol.message.LeaderCommand;
import thinclick.protocol.message.MessageCodec;
import thinclick.protocol.message.QuestionMessage;
import thinclick.protocol.message.ServerMessage.Dealt;
import thinclick.protocol.message.ServerMessage.Phase;
import thinclick.protocol.music.ClickPlan;
import thinclick.protocol.music.Stage;

/** The material, its click plan, and who is dealt which part. */
final class DealTable {
  private final Standing room;
  private final Telling telling;
  private final Shelf shelf;
  private final DealMaker dealer;

  DealTable(Standing room, Telling telling, Shelf shelf, DealMaker dealer) {
    this.room = room;
    this.telling = telling;
    this.shelf = shelf;
    this.dealer = dealer;
  }

  void material(LeaderCommand.Material message) {
    Drill given = message.drill();
    room.drill = given != null ? given : titled(Objects.requireNonNull(message.title()));
    room.stages = null;
    room.tempo = null;
    undeal("new material");
  }

  private Drill titled(String title) {
    try {
      return shelf.drill(title);
    } catch (BadInput unknown) {
      throw new BadInput("title", unknown.says());
    }
  }

  /** Tells somebody what there is to rehearse, or one drill whole. */
  void browse(Member asking, QuestionMessage.Browse message) {
    String title = message.title();
    if (title != null) {
      room.out.send(asking, new AnswerMessage.WholeDrill(titled(title)));
      return;
    }
    AnswerMessage.LibraryList list = shelf.list();
    int bytes = MessageCodec.writeBytes(list).length;
    if (bytes > MessageCodec.MAX_SERVER_FRAME) {
      throw new Refusal(
          ErrorCode.BAD_FIELD,
          null,
          "expected a list of at most "
              + MessageCodec.MAX_SERVER_FRAME
              + " bytes, found "
              + bytes
              + "; drills can still be chosen by title");
    }
    room.out.send(asking, list);
  }

  void plan(LeaderCommand.Plan message) {
    Drill chosen = chosenDrill();
    new ClickPlan(message.stages()).checkMeter(chosen.meter(), chosen.stepsPerBeat());
    room.stages = message.stages();
    room.tempo = message.tempo() == null ? room.tempo : message.tempo();
    undeal("a new click plan");
  }

  private Drill chosenDrill() {
    Drill chosen = room.drill;
    if (chosen == null) {
      throw new Refusal(ErrorCode.WRONG_PHASE, null, "expected material to be chosen first");
    }
    return chosen;
  }

  private void undeal(String why) {
    room.dealt = null;
    room.seats = new LinkedHashMap<>();
    room.decide();
    room.enter(Phase.GATHERING, why);
    telling.wholeRoom();
  }

  void deal(LeaderCommand.Deal command) {
    Drill chosen = chosenDrill();
    List<Member> players =
        command.chairs().isEmpty() ? room.members.playersHere() : chairs(command.chairs());
    if (players.isEmpty()) {
      throw new Refusal(ErrorCode.WRONG_PHASE, null, "expected a player in the room, found none");
    }
    List<Stage> plan = room.stages == null ? chosen.stages() : room.stages;
    double beats = room.tempo == null ? chosen.tempo().start() : room.tempo;
    List<String> names = players.stream().map(player -> player.name.shown()).toList();
    DealMaker.Hand hand =
        dealer.deal(chosen, names, command.seed(), beats, plan, levels(command.levels(), players));
    Map<String, String> seated = new LinkedHashMap<>();
    for (Member player : players) {
      seated.put(player.id, player.name.shown());
    }
    String dealId = room.id + "-d" + (room.dealCount + 1);
    Dealt made =
        new Dealt(
            room.revision + 1,
            dealId,
            chosen.title(),
            marked(hand.parts(), players),
            null,
            chosen.meter(),
            chosen.stepsPerBeat(),
            beats,
            chosen.swing(),
            hand.toleranceMillis(),
            plan,
            hand.says(),
            hand.dealt(),
            hand.saysToEach());
    checkSize(made);
    room.dealCount++;
    room.dealt = made;
    room.seats = seated;
    room.decide();
    room.enter(Phase.DEALT, "dealt by the leader");
    telling.dealt(made);
  }

  private List<Member> chairs(List<String> playerIds) {
    List<Member> players = new ArrayList<>();
    for (int i = 0; i < playerIds.size(); i++) {
      Member player = room.members.get(playerIds.get(i));
      if (player == null || players.contains(player)) {
        throw new BadInput(
            "chairs[" + i + "]",
            "expected the playerId of somebody here, each once, found \""
                + playerIds.get(i)
                + "\"");
      }
      players.add(player);
    }
    return players;
  }

  /** Levels by name; whose is said must be among the players. */
  private static Map<String, Integer> levels(Map<String, Integer> byId, List<Member> players) {
    Map<String, Integer> byName = new LinkedHashMap<>();
    for (Member player : players) {
      Integer level = byId.get(player.id);
      if (level != null) {
        byName.put(player.name.shown(), level);
      }
    }
    if (byName.size() < byId.size()) {
      throw new BadInput("levels", "expected playerIds of those who are dealt to, found others");
    }
    return byName;
  }

  /** Stand-ins are marked in their parts, whoever dealt. */
  private static List<Part> marked(List<Part> parts, List<Member> players) {
    List<Part> marked = new ArrayList<>();
    for (Part part : parts) {
      boolean standIn =
          players.stream()
              .anyMatch(player -> player.standIn && player.name.shown().equals(part.player()));
      marked.add(part.edited().standIn(part.standIn() || standIn).part());
    }
    return marked;
  }

  private static void checkSize(Dealt made) {
    int bytes = MessageCodec.write(made).length();
    int most = MessageCodec.MAX_SERVER_FRAME - 8_192; // the room's own words around it
    if (bytes > most) {
      throw new Refusal(
          ErrorCode.BAD_FIELD,
          "stages",
          "expected parts of at most " + most + " bytes in all, found " + bytes);
    }
  }

  void checkDeal(String dealId) {
    Dealt made = room.dealt;
    if (made == null || !made.dealId().equals(dealId)) {
      throw new Refusal(
          ErrorCode.NOT_ALLOWED, "dealId", "expected the last deal's, found \"" + dealId + "\"");
    }
  }
}

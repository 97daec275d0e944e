package thinclick.server.host;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.protocol.music.ClickPlan;
import thinclick.server.room.DealMaker;
import thinclick.server.room.Drills;
import thinclick.server.scoring.Scorer;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** What rooms deal from and are judged by: the stock, the dealer, the score. */
final class HostMaterial {
  private static final JsonMapper JSON = JsonMapper.builder().build();

  private HostMaterial() {}

  static Drills drills() {
    return new Drills() {
      @Override
      public Optional<Drill> find(String title) {
        return Optional.empty();
      }

      @Override
      public List<String> near(String title) {
        return List.of();
      }
    };
  }

  /** Each player plays a chair as written, the chairs taken round where players outnumber them. */
  static DealMaker dealer() {
    return (drill, players, seed, tempo, stages) -> {
      int end = new ClickPlan(stages).bars() * drill.meter().stepsPerBar(drill.stepsPerBeat());
      List<Part> parts = new ArrayList<>();
      List<String> says = new ArrayList<>();
      for (int i = 0; i < players.size(); i++) {
        Drill.Chair chair = drill.chairs().get(i % drill.chairs().size());
        parts.add(Part.of(players.get(i), chair.entryStep(), steps(chair, end)));
        says.add(players.get(i) + " comes in at step " + chair.entryStep() + ".");
      }
      Double tolerance = drill.toleranceMillis();
      return new DealMaker.Hand(parts, says, tolerance == null ? 50 : tolerance);
    };
  }

  private static List<Integer> steps(Drill.Chair chair, int end) {
    List<Integer> steps = new ArrayList<>();
    for (int start = chair.entryStep(); start < end; start += chair.cell().steps()) {
      for (int step : chair.cell().attackSteps()) {
        if (start + step < end) {
          steps.add(start + step);
        }
      }
    }
    return steps;
  }

  static JsonNode review(Take take) {
    return JSON.valueToTree(Scorer.review(take));
  }
}

package thinclick.client.rehearse;

import java.util.ArrayList;
import java.util.List;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.music.Stage;

/** A click plan made shorter or longer, each stage keeping its share. */
final class StageFit {
  private StageFit() {}

  /**
   * The same stages over {@code bars} bars in all; every stage keeps at least one bar.
   *
   * @throws BadInput where there are fewer bars than stages
   */
  static List<Stage> over(List<Stage> stages, int bars) {
    if (bars < stages.size()) {
      throw new BadInput(
          "--bars",
          "expected at least "
              + stages.size()
              + ", a bar for each stage of the click plan, found "
              + bars);
    }
    int written = stages.stream().mapToInt(Stage::bars).sum();
    List<Stage> fitted = new ArrayList<>();
    int used = 0;
    int before = 0;
    for (int i = 0; i < stages.size(); i++) {
      Stage stage = stages.get(i);
      before += stage.bars();
      int left = stages.size() - 1 - i;
      int end = (int) Math.round((double) bars * before / written);
      end = Math.max(used + 1, Math.min(end, bars - left));
      fitted.add(new Stage(end - used, stage.everyBars(), stage.beats(), stage.steps()));
      used = end;
    }
    return List.copyOf(fitted);
  }
}

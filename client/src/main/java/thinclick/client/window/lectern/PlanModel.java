package thinclick.client.window.lectern;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.words.Words;
import thinclick.protocol.file.Drill;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.music.Stage;
import thinclick.server.words.Speaker;
import thinclick.server.words.StageLines;

/** Tempo and click plan of what is chosen, as they are written: a number, and a line a stage. */
public final class PlanModel {
  private final LecternModel lectern;
  private final Words words;

  PlanModel(LecternModel lectern, Words words) {
    this.lectern = lectern;
    this.words = words;
  }

  /** Sets the tempo, beats a minute; answers what is wrong with it, empty where nothing is. */
  public String tempo(String written) {
    Drill drill = drill();
    if (drill == null) {
      return "";
    }
    try {
      double wanted = Double.parseDouble(written.strip());
      if (wanted >= drill.tempo().from() && wanted <= drill.tempo().to()) {
        lectern.replan(drill.stages(), wanted);
        return "";
      }
    } catch (NumberFormatException noNumber) {
      // Said below, as for a number outside the range.
    }
    return words.say("lectern.tempo.range", drill.tempo().from(), drill.tempo().to());
  }

  /** The click plan, a line a stage, as it is played; empty where nothing is chosen. */
  public List<String> lines() {
    Drill drill = lectern.inPlay();
    return drill == null ? List.of() : drill.stages().stream().map(lines(drill)::of).toList();
  }

  /**
   * Writes a line of the click plan anew: an empty one is taken out, one after the last added.
   *
   * @return what is wrong with it, empty where nothing is
   */
  public String line(int line, String written) {
    Drill drill = drill();
    if (drill == null) {
      return "";
    }
    List<Stage> stages = new ArrayList<>(drill.stages());
    if (line < stages.size()) {
      stages.remove(line);
    }
    try {
      if (!written.isBlank()) {
        List<Stage> read = lines(drill).parse(written, lectern.nextSeed());
        stages.addAll(Math.min(line, stages.size()), read);
      }
      if (stages.isEmpty()) {
        return words.say("lectern.plan.one");
      }
      lectern.replan(stages, lectern.tempo());
      return "";
    } catch (BadInput wrong) {
      return Words.sentence(words.say("lectern.plan.wrong", words.say(wrong)));
    }
  }

  /** What can be changed now; null for nothing. */
  private @Nullable Drill drill() {
    return lectern.canChoose() ? lectern.chosen() : null;
  }

  private StageLines lines(Drill drill) {
    return new StageLines(
        Speaker.of(words.language()), drill.meter(), drill.stepsPerBeat(), drill.groups());
  }
}

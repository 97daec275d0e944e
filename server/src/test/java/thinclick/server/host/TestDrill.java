package thinclick.server.host;

import java.nio.charset.StandardCharsets;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.FileCodec;

/** A drill for two: beats and ands, four bars at 120, clicks on all beats and then on the first. */
final class TestDrill {
  static final Drill BEATS_AND_ANDS =
      FileCodec.readDrill(
          """
          {"format": "thinclick.drill", "version": 1, "title": "Beats and ands", "level": 3,
           "meter": "4/4", "stepsPerBeat": 2, "swing": 1.0,
           "tempo": {"from": 60, "to": 180, "start": 120}, "toleranceMillis": null,
           "periodBars": 1, "deal": {"kind": "asWritten", "seed": 1},
           "chairs": [
             {"chair": "1", "cell": {"steps": 8, "attackSteps": [0, 2, 4, 6]}, "entryStep": 0},
             {"chair": "2", "cell": {"steps": 8, "attackSteps": [1, 3, 5, 7]}, "entryStep": 0}],
           "stages": [{"bars": 2, "everyBars": 1, "beats": [1, 2, 3, 4]},
                      {"bars": 2, "everyBars": 1, "beats": [1]}]}
          """
              .getBytes(StandardCharsets.UTF_8));

  private TestDrill() {}
}

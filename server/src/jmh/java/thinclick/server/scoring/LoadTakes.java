package thinclick.server.scoring;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.Take;
import thinclick.protocol.music.Stage;

/** Takes of an exact number of attacks: players over a thinning click, two of them displaced. */
final class LoadTakes {
  private static final int[][] CELLS = {
    {8, 0, 2, 4, 6}, {8, 1, 3, 5, 7}, {8, 0, 3, 6}, {16, 0, 3, 6, 9, 12, 15}
  };

  private LoadTakes() {}

  /** So many players and exactly so many attacks; longer takes have more bars of the same. */
  static Take of(int players, int attacks) {
    Random random = new Random(attacks);
    Band band = new Band();
    // the four cells hold 14 attacks a bar; a stage more than enough of them, four stages
    int unit = (int) Math.ceil(1.03 * attacks / (14 * players)) + 1;
    band.stages =
        List.of(
            Stage.ofBeats(unit, 1, 1, 2, 3, 4),
            Stage.ofBeats(unit, 1, 1),
            Stage.ofBeats(unit, 2, 1),
            Stage.ofBeats(unit, 1));
    Ensembles.course(band, 0.1, random);
    for (int i = 0; i < players; i++) {
      Band.Member member = new Band.Member();
      member.name = "P" + i;
      member.steps = Ensembles.part(CELLS[i % CELLS.length], band, new Random(2));
      member.noise = 9;
      member.lean = 8 * random.nextGaussian();
      member.drop = 0.03;
      member.add = 0.03;
      member.shiftByBar = new int[band.bars()];
      if (i < 2) {
        Arrays.fill(member.shiftByBar, unit + 2, Math.min(band.bars(), unit + 8), 1);
      }
      band.members.add(member);
    }
    Take take = band.play(random).take();
    List<Attack> played = new ArrayList<>(take.attacks());
    if (played.size() < attacks) {
      throw new IllegalStateException("expected " + attacks + " attacks, found " + played.size());
    }
    Collections.shuffle(played, random); // what is left over counts as dropped
    return take.withAttacks(played.subList(0, attacks));
  }
}

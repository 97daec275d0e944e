package thinclick.server.room;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SeqLedgerTest {
  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void throughIsTheLongestRunFromOneInWhateverOrderItCame(long seed) {
    Random random = new Random(seed);
    List<long[]> pieces = new ArrayList<>();
    for (long first = 1; first <= 300; ) {
      long last = first + random.nextInt(5);
      pieces.add(new long[] {first, last});
      if (random.nextBoolean()) {
        pieces.add(new long[] {Math.max(1, first - 3), last}); // a resend that overlaps
      }
      first = last + 1;
    }
    Collections.shuffle(pieces, random);
    SeqLedger ledger = new SeqLedger();
    Set<Long> naive = new HashSet<>();
    for (long[] piece : pieces) {
      ledger.stored(piece[0], piece[1]);
      for (long seq = piece[0]; seq <= piece[1]; seq++) {
        naive.add(seq);
      }
      long through = 0;
      while (naive.contains(through + 1)) {
        through++;
      }
      assertThat(ledger.through()).as("seed %d", seed).isEqualTo(through);
    }
  }
}

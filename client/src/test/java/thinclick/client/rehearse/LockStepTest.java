package thinclick.client.rehearse;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import thinclick.client.link.LinkState;
import thinclick.client.standin.Slip;
import thinclick.client.standin.Timing;
import thinclick.protocol.file.Attack;
import thinclick.protocol.file.FileCodec;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.protocol.message.TakeNews;
import thinclick.server.scoring.Analysis;
import thinclick.server.scoring.Scorer;
import thinclick.server.words.ReviewPage;
import thinclick.server.words.Speaker;
import thinclick.server.words.Spoken;

/** Whole rehearsals over real sockets on one virtual clock, each from the door to the review. */
class LockStepTest {
  @TempDir Path folder;
  private List<Long> heard = List.of();
  private Spoken spoken;
  private List<TakeNews.HeardAttack> judged = List.of();

  private Take rehearse(String in, int players, int bars, long seed) {
    Path own = folder.resolve(in);
    assertThat(own.toFile().mkdir()).isTrue();
    try (LockStepBand band =
        new LockStepBand(
            own,
            LockStepBand.names(players),
            seed,
            number -> Timing.PRACTISED.leaning(number * 4 - 6),
            (number, hand) -> number == 1 ? new Slip(2, 4, 1) : Slip.NONE)) {
      Take take = band.play("Four-chair canon", bars, 160.0, seed);
      heard = band.heard();
      judged = band.judged();
      spoken = Spoken.fromJson(band.review.review());
      assertThat(band.links()).as("the leader's line").containsExactly(LinkState.ONLINE);
      return take;
    }
  }

  @ParameterizedTest
  @CsvSource({"2, 9", "4, 6", "12, 3"})
  void wholeRehearsalNamesEverybodyAndHasOnlyFiniteFigures(int players, int bars) {
    long seed = 7;
    Take take = rehearse("band", players, bars, seed);

    List<String> names = LockStepBand.names(players);
    assertThat(take.parts()).extracting(Part::player).containsExactlyElementsOf(names);
    assertThat(take.parts()).allMatch(Part::standIn);
    for (String name : names) {
      long written = part(take, name).attackSteps().size();
      long played = take.attacks().stream().filter(a -> a.player().equals(name)).count();
      assertThat(played).as("%s, seed %d", name, seed).isBetween(written * 8 / 10, written);
    }
    assertThat(take.attacks()).noneMatch(Attack::unsure);
    assertThat(Set.copyOf(take.attacks())).as("each once").hasSameSizeAs(take.attacks());
    assertThat(heard).as("in the order of their instants").isSorted();
    assertThat(heard)
        .as("every attack, by who only listens")
        .isEqualTo(take.attacks().stream().map(Attack::micros).sorted().toList());
    judgementsAgreeWithTheReview(take, seed);
    Speaker english = Speaker.english();
    assertThat(spoken)
        .as("the host's review is what its take comes to")
        .isEqualTo(Spoken.of(Scorer.analyse(take), english));
    String text = ReviewPage.of(spoken, english);
    assertThat(text).contains(names).doesNotContain("NaN", "Infinity", "null");
    FileCodec.readTake(FileCodec.write(take));
  }

  /**
   * The leader is told of every attack while it goes on whether it sat; so much of it agrees with
   * the review, which knows what came later.
   */
  private void judgementsAgreeWithTheReview(Take take, long seed) {
    assertThat(judged.stream().filter(one -> !one.again())).hasSameSizeAs(take.attacks());
    assertThat(judged).extracting(TakeNews.HeardAttack::judgement).doesNotContainNull();
    Map<Long, String> last = new HashMap<>();
    judged.forEach(one -> last.put(one.micros(), one.judgement()));
    int agree = 0;
    for (Analysis.PlayerAnalysis player : Scorer.analyse(take).players()) {
      for (Analysis.Played one : player.played()) {
        String said = last.get(take.attacks().get(one.attack()).micros());
        boolean home = one.kind() == Analysis.Kind.MATCHED && one.displacement() == 0;
        agree += home == List.of("together", "early", "late").contains(said) ? 1 : 0;
      }
    }
    assertThat(agree)
        .as("of %d, seed %d", take.attacks().size(), seed)
        .isGreaterThanOrEqualTo(take.attacks().size() * 85 / 100);
  }

  @Test
  void sameSeedPlaysTheSameTakeToTheMicrosecond() {
    Take once = rehearse("once", 2, 4, 21);
    Take again = rehearse("again", 2, 4, 21);
    assertThat(again).isEqualTo(once);
  }

  private static Part part(Take take, String name) {
    return take.parts().stream().filter(p -> p.player().equals(name)).findFirst().orElseThrow();
  }
}

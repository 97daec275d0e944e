package thinclick.server.history;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import thinclick.protocol.file.Take;
import thinclick.server.engraving.Page;
import thinclick.server.engraving.Paper;
import thinclick.server.picture.SlipPages;
import thinclick.server.scoring.Analysis;
import thinclick.server.scoring.PlayerReview;
import thinclick.server.scoring.Scorer;
import thinclick.server.words.HardTakes;
import thinclick.server.words.Outcome;
import thinclick.server.words.Speaker;
import thinclick.server.words.Spoken;

/** A stand-in in an absent pupil's chair, even one of a pupil's name, counts for no pupil. */
class StandInsAreNotPupilsTest {
  private static final Take PEOPLE = HardTakes.ALL.get("noisy pad").get();

  /** Who makes the most trouble in it sits in for somebody. */
  private static final String SITS_IN = "Mina";

  private static final Take WITH_STAND_IN =
      PEOPLE.withParts(
          PEOPLE.parts().stream()
              .map(part -> part.edited().standIn(part.player().equals(SITS_IN)).part())
              .toList());

  @Test
  void theOthersFiguresAreTheSameWhoeverTheStandInIs() {
    List<PlayerReview> people = Scorer.review(PEOPLE).players();
    List<PlayerReview> beside = Scorer.review(WITH_STAND_IN).players();

    assertThat(beside.stream().filter(one -> !one.standIn()))
        .isEqualTo(people.stream().filter(one -> !one.player().equals(SITS_IN)).toList())
        .hasSize(people.size() - 1);
  }

  @Test
  void aPupilOfTheSameNameHasNotPlayed() {
    Entry entry =
        new Entry("t1", Instant.EPOCH, Entry.Key.of(WITH_STAND_IN), Scorer.review(WITH_STAND_IN));

    assertThat(entry.has(SITS_IN)).isFalse();
    assertThat(entry.has("Jonas")).isTrue();
  }

  @Test
  void nobodyIsHandedItsPageAndNoSlipOfAnotherNamesIt() {
    Analysis analysis = Scorer.analyse(WITH_STAND_IN);
    Spoken spoken = Spoken.of(analysis, Speaker.english());
    List<Page> pages = SlipPages.of(spoken, Speaker.english(), Paper.A4);

    assertThat(pages).hasSize(WITH_STAND_IN.parts().size() - 1);
    assertThat(pages).noneMatch(page -> page.title().contains(SITS_IN));
    assertThat(String.join(" ", spoken.prose(Speaker.english())))
        .contains("A stand-in sat in one chair.");
  }

  @Test
  void theNextRungHangsOnThePeople() {
    Outcome outcome = Outcome.of(Scorer.review(WITH_STAND_IN));
    int written =
        Scorer.review(WITH_STAND_IN).players().stream()
            .filter(one -> !one.standIn())
            .mapToInt(PlayerReview::written)
            .sum();

    assertThat(outcome.written()).isEqualTo(written).isPositive();
  }
}

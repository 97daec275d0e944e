package thinclick.client.rehearse;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.List;
import org.junit.jupiter.api.Test;
import thinclick.protocol.file.Part;
import thinclick.protocol.file.Take;
import thinclick.server.material.Stock;

/** A short rehearsal in real time, over real sockets and a real database. */
class RehearsalTest {
  @Test
  void aShortRehearsalRunsByItselfAndEndsWithAReviewThatNamesEverybody() {
    StringWriter said = new StringWriter();

    Take take =
        Rehearsal.of(Stock.find("Two-and four-and"), 3, 240.0, 4, 5, new PrintWriter(said)).run();

    assertThat(take.parts().stream().map(Part::player)).containsExactly("Mina", "Jonas", "Ilse");
    assertThat(take.parts()).allMatch(Part::standIn);
    for (Part part : take.parts()) {
      long played =
          take.attacks().stream().filter(attack -> attack.player().equals(part.player())).count();
      assertThat(played).as(part.player()).isBetween(part.attackSteps().size() * 8L / 10, 40L);
    }
    assertThat(said.toString())
        .contains("count-in: one two three four", "bar   1: one two three four", "Together:")
        .contains(List.of("Mina", "Jonas", "Ilse"));
  }
}

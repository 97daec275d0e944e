package thinclick.client.window.stand;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;
import thinclick.server.engraving.Engraver;
import thinclick.server.engraving.Face;
import thinclick.server.engraving.Ink;
import thinclick.server.engraving.Mark;
import thinclick.server.engraving.Place;

class TitleSizeTest {
  private static final Offset<Double> HAIR = Offset.offset(1e-6);

  @Test
  void theWordsOverTheClickAreNoLargerThanTheTitleWhereTheMusicIsLarge() {
    double title = TitleSize.pixels(1);
    Mark.Text begins = words(Face.SEMIBOLD, Engraver.DIRECTION_SIZE);
    Mark.Text drawn = (Mark.Text) TitleSize.noLarger(List.of(begins), 20, title).get(0);
    assertThat(drawn.size() * 20).isEqualTo(title, HAIR);
    assertThat(drawn.x()).isEqualTo(begins.x());
    assertThat(drawn.y()).isEqualTo(begins.y());
  }

  @Test
  void whatEndsWithTheLineStillDoes() {
    Mark.Text ends = words(Face.ITALIC, Engraver.DIRECTION_SIZE);
    Mark drawn = TitleSize.noLarger(List.of(ends), 20, TitleSize.pixels(1)).get(0);
    assertThat(drawn.box().right()).isEqualTo(ends.box().right(), HAIR);
  }

  @Test
  void allElseStaysAndSoDoesAllInSmallMusic() {
    List<Mark> other = List.of(words(Face.SEMIBOLD, 2.4));
    assertThat(TitleSize.noLarger(other, 20, TitleSize.pixels(1))).isEqualTo(other);
    List<Mark> over = List.of(words(Face.SEMIBOLD, Engraver.DIRECTION_SIZE));
    assertThat(TitleSize.noLarger(over, 9, TitleSize.pixels(1))).isEqualTo(over);
  }

  private static Mark.Text words(Face face, double size) {
    return new Mark.Text(Place.NOWHERE, Ink.FULL, "click on all beats", face, size, 4, 2);
  }
}

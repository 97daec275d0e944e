package thinclick.server.picture;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

class DrawingTest {
  @Test
  void onPaperFifteenMillimetresAreFreeOfAnA4Page() {
    Drawing.Item corner = new Drawing.Box(36, 36, 828, 428, Tint.SHEET);
    Drawing drawing = new Drawing(900, 500, "", "", List.of(corner)).onPaper(36);

    Drawing.Box box = (Drawing.Box) drawing.items().get(0);
    double millimetres = 210 / drawing.width();
    assertThat(box.x() * millimetres).isCloseTo(15, within(1e-9));
    assertThat(box.y() * millimetres).isCloseTo(15, within(1e-9));
    assertThat((drawing.width() - box.x() - box.width()) * millimetres).isCloseTo(15, within(1e-9));
  }
}

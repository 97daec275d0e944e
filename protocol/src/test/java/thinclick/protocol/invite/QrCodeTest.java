package thinclick.protocol.invite;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.LuminanceSource;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Path2D;
import java.awt.image.BufferedImage;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import thinclick.protocol.json.BadInput;

/** What is drawn must be read: the pictures themselves go to the library's reader. */
class QrCodeTest {
  private static final String LINK =
      "thinclick://192.168.1.20:7420/kodamine?pin=ungWv48Bz-pBQUDeXa4iI7ADYaOWF3qctBD_YfIAFa0";
  private static final int SCALE = 6;

  @Test
  void terminalTextIsReadBack() throws Exception {
    List<String> lines = QrCode.of(LINK).text().lines().toList();
    int side = lines.get(0).length();
    BufferedImage picture = new BufferedImage(side, 2 * lines.size(), BufferedImage.TYPE_INT_RGB);
    for (int line = 0; line < lines.size(); line++) {
      for (int column = 0; column < side; column++) {
        char half = lines.get(line).charAt(column);
        picture.setRGB(column, 2 * line, half == '█' || half == '▀' ? 0xffffff : 0);
        picture.setRGB(column, 2 * line + 1, half == '█' || half == '▄' ? 0xffffff : 0);
      }
    }

    assertThat(lines).allSatisfy(line -> assertThat(line).hasSize(side));
    assertThat(side).as("columns of a terminal").isLessThanOrEqualTo(80);
    assertThat(read(picture)).isEqualTo(LINK);
  }

  @Test
  void pictureIsReadBack() throws Exception {
    String svg = QrCode.of(LINK).svg(60);
    Matcher path = Pattern.compile(" d=\"([^\"]+)\"").matcher(svg);
    assertThat(path.find()).isTrue();
    Path2D dark = new Path2D.Double();
    Matcher run = Pattern.compile("M(\\d+) (\\d+)h(\\d+)v1h-(\\d+)z").matcher(path.group(1));
    int covered = 0;
    while (run.find()) {
      assertThat(run.start()).isEqualTo(covered);
      covered = run.end();
      assertThat(run.group(4)).isEqualTo(run.group(3));
      int x = Integer.parseInt(run.group(1));
      int y = Integer.parseInt(run.group(2));
      dark.append(new java.awt.Rectangle(x, y, Integer.parseInt(run.group(3)), 1), false);
    }
    assertThat(covered).isEqualTo(path.group(1).length());
    int side = QrCode.of(LINK).side();
    BufferedImage picture = new BufferedImage(side, side, BufferedImage.TYPE_INT_RGB);
    Graphics2D pen = picture.createGraphics();
    pen.setColor(Color.WHITE);
    pen.fillRect(0, 0, side, side);
    pen.setColor(Color.BLACK);
    pen.fill(dark);

    assertThat(svg).contains("viewBox=\"0 0 " + side + " " + side + "\"").contains("60mm");
    assertThat(read(picture)).isEqualTo(LINK);
  }

  @Test
  void textThatDoesNotFitIsRefused() {
    assertThatThrownBy(() -> QrCode.of("x".repeat(4_000))).isInstanceOf(BadInput.class);
  }

  private static String read(BufferedImage modules) throws Exception {
    int width = modules.getWidth() * SCALE;
    int height = modules.getHeight() * SCALE;
    int[] pixels = new int[width * height];
    for (int y = 0; y < height; y++) {
      for (int x = 0; x < width; x++) {
        pixels[y * width + x] = modules.getRGB(x / SCALE, y / SCALE);
      }
    }
    LuminanceSource source = new RGBLuminanceSource(width, height, pixels);
    return new QRCodeReader().decode(new BinaryBitmap(new HybridBinarizer(source))).getText();
  }
}

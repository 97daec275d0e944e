package thinclick.protocol.invite;

import com.google.zxing.BarcodeFormat;
import com.google.zxing.EncodeHintType;
import com.google.zxing.WriterException;
import com.google.zxing.common.BitMatrix;
import com.google.zxing.qrcode.QRCodeWriter;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import java.util.Map;
import thinclick.protocol.json.BadInput;

/**
 * A text as a QR code (ISO/IEC 18004), to be photographed from a terminal, a page or a projector.
 *
 * <p>The quiet zone of four light modules that the standard asks for is part of it.
 */
public final class QrCode {
  private static final int QUIET = 4;

  private final BitMatrix modules;

  private QrCode(BitMatrix modules) {
    this.modules = modules;
  }

  /** Of a text of at most about 2,000 characters. */
  public static QrCode of(String text) {
    try {
      return new QrCode(
          new QRCodeWriter()
              .encode(
                  text,
                  BarcodeFormat.QR_CODE,
                  0,
                  0,
                  Map.of(
                      EncodeHintType.ERROR_CORRECTION,
                      ErrorCorrectionLevel.M,
                      EncodeHintType.MARGIN,
                      QUIET,
                      EncodeHintType.CHARACTER_SET,
                      "UTF-8")));
    } catch (WriterException | IllegalArgumentException tooLong) {
      throw new BadInput("link", "expected a text that fits a QR code: " + tooLong.getMessage());
    }
  }

  /** Modules along a side, the quiet zone included. */
  public int side() {
    return modules.getWidth();
  }

  /** True where a module is dark; columns and rows from 0, top left. */
  public boolean dark(int column, int row) {
    return modules.get(column, row);
  }

  /**
   * For a terminal: two rows of modules a line in half blocks, dark ones left empty, so that it is
   * right on dark paper; most cameras read it on light paper as well.
   */
  public String text() {
    StringBuilder lines = new StringBuilder();
    for (int row = 0; row < side(); row += 2) {
      for (int column = 0; column < side(); column++) {
        boolean upper = !dark(column, row);
        boolean lower = row + 1 < side() && !dark(column, row + 1);
        lines.append(upper ? lower ? '█' : '▀' : lower ? '▄' : ' ');
      }
      lines.append('\n');
    }
    return lines.toString();
  }

  /** As a picture of {@code size} by {@code size} millimetres. */
  public String svg(int size) {
    StringBuilder dark = new StringBuilder();
    for (int row = 0; row < side(); row++) {
      int column = 0;
      while (column < side()) {
        int from = column;
        while (column < side() && dark(column, row)) {
          column++;
        }
        if (column > from) {
          dark.append("M%d %dh%dv1h-%dz".formatted(from, row, column - from, column - from));
        }
        column++;
      }
    }
    return """
        <svg xmlns="http://www.w3.org/2000/svg" width="%1$dmm" height="%1$dmm" viewBox="0 0 %2$d %2$d" shape-rendering="crispEdges">
        <rect width="%2$d" height="%2$d" fill="#fff"/>
        <path fill="#000" d="%3$s"/>
        </svg>
        """
        .formatted(size, side(), dark);
  }
}

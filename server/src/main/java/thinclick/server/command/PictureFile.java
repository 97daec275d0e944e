package thinclick.server.command;

import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import thinclick.protocol.disk.OutputFile;
import thinclick.protocol.json.BadInput;
import thinclick.server.engraving.Paper;
import thinclick.server.export.DrawingFiles;
import thinclick.server.export.DrawingPdf;
import thinclick.server.history.HistoryPicture;
import thinclick.server.picture.Drawing;
import thinclick.server.words.Speaker;

/** A picture that a command writes, as its name says: SVG, PNG, or PDF on pages. */
record PictureFile(Path file, String ending, boolean replace, Paper paper) {
  /** Pixels a unit: fit for a printed page. */
  private static final double SCALE = 2;

  private static final List<String> ENDINGS = List.of(".svg", ".png", ".pdf");

  /** Refuses early what {@link #write} would refuse. */
  static PictureFile of(Path file, boolean replace, Paper paper) {
    String name = file.toString().toLowerCase(Locale.ROOT);
    for (String ending : ENDINGS) {
      if (name.endsWith(ending)) {
        OutputFile.check(file, replace);
        return new PictureFile(file, ending, replace, paper);
      }
    }
    throw new BadInput("--picture", "expected a file ending in .svg, .png or .pdf, found " + file);
  }

  /** Writes a drawing with {@link HistoryPicture#MARGIN} around it, on paper as one page. */
  void write(Drawing drawing, Speaker speaker) {
    write(drawing, List.of(drawing.onPaper(HistoryPicture.MARGIN)), speaker);
  }

  /**
   * Writes a drawing.
   *
   * @param pages the same as it is laid on paper
   */
  void write(Drawing whole, List<Drawing> pages, Speaker speaker) {
    byte[] content =
        switch (ending) {
          case ".svg" -> DrawingFiles.svg(whole);
          case ".png" -> DrawingFiles.png(whole, SCALE);
          default -> DrawingPdf.pdf(pages, paper, Locale.forLanguageTag(speaker.language()));
        };
    OutputFile.write(file, content, replace);
  }
}

package thinclick.client.window.review;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import thinclick.client.window.words.Words;
import thinclick.server.engraving.Paper;
import thinclick.server.export.PdfFiles;
import thinclick.server.picture.SlipPages;
import thinclick.server.words.FigureTable;
import thinclick.server.words.Speaker;
import thinclick.server.words.Spoken;

/** What the leader keeps of a review: a page for each pupil, and the figures. */
public final class LeaderFiles {
  private final Words words;

  public LeaderFiles(Words words) {
    this.words = words;
  }

  /** A page for each pupil, as one PDF, on the paper of where the window is. */
  public byte[] pages(Spoken spoken) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try {
      PdfFiles.write(
          SlipPages.of(spoken, Speaker.of(words.locale()), Paper.usualIn(words.locale())),
          spoken.review().title(),
          words.language(),
          bytes);
    } catch (IOException unmade) {
      throw new UncheckedIOException(unmade);
    }
    return bytes.toByteArray();
  }

  /** The figures for a spreadsheet where the window is, in UTF-8. */
  public byte[] figures(Spoken spoken) {
    return FigureTable.of(spoken.review(), Speaker.of(words.locale()), words.locale())
        .getBytes(StandardCharsets.UTF_8);
  }
}

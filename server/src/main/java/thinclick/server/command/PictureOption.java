package thinclick.server.command;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import thinclick.server.engraving.Paper;

/** A picture that is drawn beside what is printed. */
final class PictureOption {
  @Option(
      names = "--picture",
      paramLabel = "FILE",
      description = "Draw it into this file too, .svg, .png or .pdf.")
  private @Nullable Path picture;

  @Option(names = "--replace", description = "Write over a picture that is there.")
  private boolean replace;

  @Option(
      names = "--paper",
      paramLabel = "A4|Letter",
      description = "What a .pdf is printed on, A4 if left out.")
  private String paper = "A4";

  /** True where one is asked for. */
  boolean wanted() {
    return picture != null;
  }

  /** The file, checked before anything is worked out; null where none is asked for. */
  @Nullable PictureFile file() {
    return picture == null ? null : PictureFile.of(picture, replace, Paper.parse(paper));
  }
}

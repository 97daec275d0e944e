package thinclick.server.command;

import java.nio.file.Path;
import java.util.Locale;
import thinclick.protocol.disk.OutputFile;
import thinclick.protocol.json.BadInput;
import thinclick.server.export.DrawingFiles;
import thinclick.server.picture.Drawing;

/** A picture that a command writes, as its name says: SVG or PNG. */
record PictureFile(Path file, boolean vector, boolean replace) {
  /** Pixels a unit: fit for a printed page. */
  private static final double SCALE = 2;

  /** Refuses early what {@link #write} would refuse. */
  static PictureFile of(Path file, boolean replace) {
    String name = file.toString().toLowerCase(Locale.ROOT);
    if (!name.endsWith(".svg") && !name.endsWith(".png")) {
      throw new BadInput("--picture", "expected a file ending in .svg or .png, found " + file);
    }
    OutputFile.check(file, replace);
    return new PictureFile(file, name.endsWith(".svg"), replace);
  }

  void write(Drawing drawing) {
    byte[] content = vector ? DrawingFiles.svg(drawing) : DrawingFiles.png(drawing, SCALE);
    OutputFile.write(file, content, replace);
  }
}

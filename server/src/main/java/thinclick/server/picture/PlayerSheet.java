package thinclick.server.picture;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import thinclick.server.engraving.Face;
import thinclick.server.engraving.Paper;
import thinclick.server.picture.Drawing.Anchor;

/**
 * A player's review as a sheet to keep or print: the sections of the screen, in their order, with
 * their headings.
 */
public final class PlayerSheet {
  static final double MARGIN = 36;
  private static final double WIDTH = PlayerPicture.WIDTH + 2 * MARGIN;
  private static final double LINE = 21;
  private static final double HEADING = 15;

  /** Lines of a table that are never parted at a page's foot or head. */
  private static final int TOGETHER = 2;

  /** Free on every side of a page of paper, some 15 mm. */
  private static final double PAGE_MARGIN = 72;

  private PlayerSheet() {}

  /**
   * A table.
   *
   * @param heads of the columns
   * @param lines a cell a column
   * @param words which columns, from 0, are words, which begin in line; figures end in line
   */
  public record Table(List<String> heads, List<List<String>> lines, Set<Integer> words) {
    public Table {
      heads = List.copyOf(heads);
      lines = List.copyOf(lines);
      words = Set.copyOf(words);
    }

    /** True where a column ends in line. */
    public boolean isFigures(int column) {
      return !words.contains(column);
    }
  }

  /**
   * One thing below the other.
   *
   * @param id what it is called in the window
   * @param head what stands above it; null for nothing
   * @param says sentences; below a table, what there is to know of it; none for a picture
   * @param picture null for none
   * @param table null for none
   */
  public record Section(
      String id,
      @Nullable String head,
      List<String> says,
      @Nullable Drawing picture,
      @Nullable Table table) {
    public Section {
      says = List.copyOf(says);
    }

    /** Sentences. */
    public static Section words(String id, @Nullable String head, List<String> says) {
      return new Section(id, head, says, null, null);
    }

    /** A picture. */
    public static Section picture(String id, @Nullable String head, Drawing picture) {
      return new Section(id, head, List.of(), picture, null);
    }

    /** A table. */
    public static Section table(String id, String head, Table table) {
      return table(id, head, table, List.of());
    }

    /** A table with notes below it. */
    public static Section table(String id, String head, Table table, List<String> notes) {
      return new Section(id, head, notes, null, table);
    }
  }

  /**
   * What stands on the sheet, from above.
   *
   * @param title the drill's
   * @param head meter, tempo and tolerance
   * @param sections below it, in their order
   */
  public record Content(String title, String head, List<Section> sections) {
    public Content {
      sections = List.copyOf(sections);
    }

    /** The section of this name, or null where there is none. */
    public @Nullable Section section(String id) {
      return sections.stream().filter(one -> one.id().equals(id)).findFirst().orElse(null);
    }

    /** All sentences, for those who cannot see the sheet. */
    String says() {
      List<String> says = new ArrayList<>();
      sections.forEach(section -> says.addAll(section.says()));
      return String.join(" ", says);
    }
  }

  /** Draws it on one sheet, as long as it takes. */
  public static Drawing of(Content content) {
    Easel easel = new Easel();
    double height = flow(content).draw(easel, MARGIN) + MARGIN;
    return sheet(content, easel, WIDTH, height);
  }

  /** Draws it on pages of a paper. */
  public static List<Drawing> pages(Content content, Paper paper) {
    double width = PlayerPicture.WIDTH + 2 * PAGE_MARGIN;
    double height = width * paper.height() / paper.width();
    return flow(content).pages(PAGE_MARGIN, height - PAGE_MARGIN).stream()
        .map(page -> sheet(content, page, width, height))
        .toList();
  }

  private static Drawing sheet(Content content, Easel easel, double width, double height) {
    Easel sheet = new Easel();
    sheet.box(0, 0, width, height, Tint.PAPER);
    double aside = (width - WIDTH) / 2;
    easel.items().forEach(item -> sheet.add(item.shifted(aside, 0)));
    return new Drawing(width, height, content.title(), content.says(), sheet.items());
  }

  private static SheetFlow flow(Content content) {
    SheetFlow flow = new SheetFlow();
    flow.addKept(
        0,
        24,
        (easel, y) -> words(easel, MARGIN, y + 22, 24, Face.SEMIBOLD, content.title(), Tint.INK));
    flow.addKept(
        0,
        LINE,
        (easel, y) ->
            words(easel, MARGIN, y + 20, Easel.BODY, Face.REGULAR, content.head(), Tint.SOFT));
    double names = names(content);
    for (Section section : content.sections()) {
      String head = section.head();
      if (head != null) {
        flow.addKept(
            22,
            HEADING + 5,
            (easel, y) ->
                words(easel, MARGIN, y + HEADING - 2, HEADING, Face.SEMIBOLD, head, Tint.INK));
      }
      Drawing picture = section.picture();
      Table table = section.table();
      if (picture != null) {
        picture(flow, picture);
      } else if (table != null) {
        table(flow, table, names, !section.says().isEmpty());
        prose(flow, section.says(), 4, Tint.SOFT);
      } else {
        prose(flow, section.says(), head == null ? 12 : 0, Tint.INK);
      }
    }
    return flow;
  }

  /** All tables begin with a column of one width, so that the second ones stand in line. */
  private static double names(Content content) {
    double widest = 0;
    for (Section section : content.sections()) {
      Table table = section.table();
      widest = Math.max(widest, table == null ? 0 : SheetTable.names(table));
    }
    return widest;
  }

  private static void prose(SheetFlow flow, List<String> sentences, double above, Tint tint) {
    double first = above;
    for (String sentence : sentences) {
      List<String> lines = Easel.wrap(sentence, Easel.BODY, PlayerPicture.WIDTH);
      for (int i = 0; i < lines.size(); i++) {
        String line = lines.get(i);
        ProseLine draw = new ProseLine(line, tint);
        if (i + 1 < lines.size()) {
          flow.addKept(first, LINE, draw::draw);
        } else {
          flow.add(first, LINE, draw::draw);
        }
        first = 0;
      }
    }
  }

  /** A line of prose. */
  private record ProseLine(String text, Tint tint) {
    void draw(Easel easel, double y) {
      words(easel, MARGIN, y + 15, Easel.BODY, Face.REGULAR, text, tint);
    }
  }

  private static void picture(SheetFlow flow, Drawing drawing) {
    flow.add(
        14,
        drawing.height(),
        (easel, y) -> drawing.items().forEach(item -> easel.add(item.shifted(MARGIN, y))));
  }

  /**
   * @param names how wide the first column is at least
   * @param noted whether a note follows, which stands on the page of the last line
   */
  private static void table(SheetFlow flow, Table table, double names, boolean noted) {
    SheetTable set = new SheetTable(table, names);
    flow.addKept(0, LINE, set::heads);
    int lines = table.lines().size();
    for (int i = 0; i < lines; i++) {
      int line = i;
      boolean kept = i + 1 < lines ? i < TOGETHER - 1 || i >= lines - TOGETHER : noted;
      if (kept) {
        flow.addKept(0, LINE, (easel, y) -> set.line(easel, y, line));
      } else {
        flow.add(0, LINE, (easel, y) -> set.line(easel, y, line));
      }
    }
  }

  private static void words(
      Easel easel, double x, double y, double size, Face face, String text, Tint tint) {
    easel.add(new Drawing.Words(x, y, size, face, Anchor.START, text, tint));
  }
}

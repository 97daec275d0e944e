package thinclick.server.words;

import java.util.ArrayList;
import java.util.List;
import thinclick.protocol.file.Take;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.json.Check;
import thinclick.server.scoring.Analysis;
import thinclick.server.scoring.Figure;
import thinclick.server.scoring.Interval;

/**
 * Two takes of one drill at one tempo under one click plan, figure beside figure. Takes that differ
 * in any of these are not compared: the figures would not mean the same.
 *
 * @param title the drill's
 * @param tempo beats a minute
 * @param rows figure by figure: the band's, the stages', those of players who are in both
 */
public record Comparison(String title, double tempo, List<Row> rows) {
  /** What is compared. */
  public enum Kind {
    /** Percent of what is written that was placed. */
    HOLD(true) {
      @Override
      public Quantity shown(Figure figure) {
        return Quantity.percent(figure);
      }
    },
    /** Unevenness, ms. */
    SPREAD(false) {
      @Override
      public Quantity shown(Figure figure) {
        return Quantity.millis(figure);
      }
    };

    private final boolean moreIsBetter;

    Kind(boolean moreIsBetter) {
      this.moreIsBetter = moreIsBetter;
    }

    /** A figure of this kind that is known, as every page shows it. */
    public abstract Quantity shown(Figure figure);
  }

  /** What two figures of one thing come to. */
  public enum Verdict {
    /** The second is better, and their intervals have nothing in common. */
    BETTER,
    /** The second is worse, and their intervals have nothing in common. */
    WORSE,
    /** Their intervals overlap, or one is not known. */
    OPEN
  }

  /**
   * One figure of both takes.
   *
   * @param of whose or where: the band, a click, a player
   * @param kind what of it
   * @param first of the first take
   * @param second of the second
   * @param verdict whether they can be told apart
   */
  public record Row(Said of, Kind kind, Figure first, Figure second, Verdict verdict) {
    static Row of(Said of, Kind kind, Figure first, Figure second) {
      Interval a = first.interval();
      Interval b = second.interval();
      boolean apart = a != null && b != null && a.partsFrom(b);
      Verdict verdict = Verdict.OPEN;
      if (apart && first.known() && second.known()) {
        boolean more = second.get() > first.get();
        verdict = more == kind.moreIsBetter ? Verdict.BETTER : Verdict.WORSE;
      }
      return new Row(of, kind, first, second, verdict);
    }

    /** True of one player's figure; else it is of the band. */
    boolean ofPlayer() {
      return of.key().equals("compare.player");
    }

    /** What is compared, with whose it is. */
    public Said name() {
      return Said.of(kind == Kind.HOLD ? "compare.hold" : "compare.spread", of);
    }
  }

  public Comparison {
    rows = List.copyOf(rows);
  }

  /**
   * Compares two takes.
   *
   * @throws BadInput where drill, tempo or click plan differ, naming the field of the second take
   */
  public static Comparison of(Analysis first, Analysis second) {
    checkAlike(first.take(), second.take());
    Take take = first.take();
    return of(
        take.title(),
        take.tempo(),
        take.stages().stream()
            .map(stage -> ClickWords.of(stage, take.meter(), take.stepsPerBeat()))
            .toList(),
        TakeFigures.of(first.review()),
        TakeFigures.of(second.review()));
  }

  /**
   * Compares the figures of two takes of which it is known that they are alike.
   *
   * @param clicks what clicks in each stage
   */
  public static Comparison of(
      String title, double tempo, List<Said> clicks, TakeFigures first, TakeFigures second) {
    List<Row> rows = new ArrayList<>();
    add(rows, Said.of("compare.band"), first.band(), second.band());
    int stages = Math.min(clicks.size(), Math.min(first.stages().size(), second.stages().size()));
    for (int i = 0; i < stages; i++) {
      add(rows, clicks.get(i), first.stages().get(i), second.stages().get(i));
    }
    first
        .players()
        .forEach(
            (player, then) -> {
              TakeFigures.Pair now = second.players().get(player);
              if (now != null) {
                add(rows, Said.of("compare.player", player), then, now);
              }
            });
    return new Comparison(title, tempo, rows);
  }

  private static void add(
      List<Row> rows, Said of, TakeFigures.Pair first, TakeFigures.Pair second) {
    rows.add(Row.of(of, Kind.HOLD, first.hold(), second.hold()));
    rows.add(Row.of(of, Kind.SPREAD, first.spread(), second.spread()));
  }

  /** Refuses takes that cannot be compared, naming the field that differs. */
  public static void checkAlike(Take first, Take second) {
    same("title", "\"" + first.title() + "\"", "\"" + second.title() + "\"");
    same("meter", first.meter().toString(), second.meter().toString());
    same("stepsPerBeat", first.stepsPerBeat(), second.stepsPerBeat());
    same("swing", first.swing().toString(), second.swing().toString());
    same("tempo", Check.number(first.tempo()), Check.number(second.tempo()));
    same("stages", first.stages(), second.stages());
  }

  private static void same(String field, Object first, Object second) {
    if (!first.equals(second)) {
      boolean stages = field.equals("stages");
      throw new BadInput(
          field,
          "expected "
              + (stages ? "the click plan of the first take" : first)
              + ", found "
              + (stages ? "another" : second)
              + "; takes are compared only at the same drill, tempo and click plan");
    }
  }

  /** A page: one sentence of what can be told, the table, the band's figures as bars. */
  public String page(Speaker speaker) {
    List<String> lines = new ArrayList<>();
    lines.addAll(
        Table.wrap(
            speaker.say(Said.of("compare.head", title, Quantity.exact(tempo)))
                + " "
                + speaker.say(verdict()),
            ""));
    lines.add("");
    List<String> heads = new ArrayList<>(heads(speaker));
    heads.set(0, "<" + heads.get(0));
    heads.set(3, "<" + heads.get(3));
    Table table = new Table(heads);
    rows.forEach(row -> table.add(cells(row, speaker)));
    lines.addAll(table.lines());
    lines.add("");
    lines.addAll(CompareBars.lines(this, speaker));
    return String.join("\n", lines) + "\n";
  }

  /** The heads of the table of both takes. */
  public List<String> heads(Speaker speaker) {
    return List.of(
        speaker.say("compare.figure"),
        speaker.say("compare.first"),
        speaker.say("compare.second"),
        speaker.say("compare.apart"));
  }

  /** A line of that table. */
  public List<String> cells(Row row, Speaker speaker) {
    return List.of(
        speaker.say(row.name()),
        shown(row.kind(), row.first(), speaker),
        shown(row.kind(), row.second(), speaker),
        speaker.say("compare." + row.verdict()));
  }

  /** What can be told of the two takes, a sentence. */
  public Said verdict() {
    List<Said> better = told(Verdict.BETTER);
    List<Said> worse = told(Verdict.WORSE);
    if (better.isEmpty() && worse.isEmpty()) {
      return Said.of("compare.nothing");
    }
    if (worse.isEmpty()) {
      return Said.of("compare.better", new Said.Row(better, true));
    }
    return better.isEmpty()
        ? Said.of("compare.worse", new Said.Row(worse, true))
        : Said.of("compare.both", new Said.Row(better, true), new Said.Row(worse, true));
  }

  private List<Said> told(Verdict verdict) {
    return rows.stream()
        .filter(row -> row.verdict() == verdict)
        .limit(3)
        .map(
            row ->
                Said.of(
                    row.kind() == Kind.HOLD ? "compare.changedHold" : "compare.changedSpread",
                    row.of(),
                    row.kind().shown(row.first()),
                    row.kind().shown(row.second())))
        .toList();
  }

  private static String shown(Kind kind, Figure figure, Speaker speaker) {
    return figure.known() ? speaker.shown(kind.shown(figure), figure.interval()) : "\u2013";
  }
}

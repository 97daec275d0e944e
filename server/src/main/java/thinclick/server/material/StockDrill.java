package thinclick.server.material;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.DealKind;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.FreeBars;
import thinclick.protocol.file.Line;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Swing;

/** The short notation that the stock is written in; every call answers a changed copy. */
record StockDrill(
    String title,
    Meter meter,
    int stepsPerBeat,
    int periodBars,
    List<Drill.Chair> chairs,
    DealKind deal,
    int tempoFrom,
    int tempoTo,
    int level,
    Rung rung) {

  /** Every drill of the stock is dealt with this seed until somebody asks for another. */
  private static final long SEED = 7;

  /** A meter and a grid in which several drills stand. */
  record Grid(Meter meter, int stepsPerBeat) {
    static Grid of(String meter, int stepsPerBeat) {
      return new Grid(Meter.parse(meter), stepsPerBeat);
    }

    /** One cell for every chair, each entering elsewhere. */
    StockDrill cell(String title, int bars, String steps) {
      return cell(title, bars, steps, null);
    }

    /** As above, with the grouping that bearings are given by. */
    StockDrill cell(String title, int bars, String steps, @Nullable Integer grouping) {
      Drill.Cell cell = cellOf(bars, steps, grouping);
      return new StockDrill(
          title,
          meter,
          stepsPerBeat,
          bars,
          List.of(Drill.Chair.of("1", cell)),
          DealKind.CANON,
          0,
          0,
          1,
          Rung.ALL_BEATS);
    }

    /** Several chairs, each with its own row. */
    StockDrill rows(String title, int bars, DealKind deal, Row... rows) {
      List<Drill.Chair> chairs = new ArrayList<>();
      for (int i = 0; i < rows.length; i++) {
        Row row = rows[i];
        chairs.add(
            new Drill.Chair(
                row.chair == null ? Integer.toString(i + 1) : row.chair,
                row.role,
                cellOf(row.bars == 0 ? bars : row.bars, row.steps, row.grouping),
                row.entry,
                row.line,
                null,
                row.instrument,
                row.free));
      }
      return new StockDrill(
          title, meter, stepsPerBeat, bars, chairs, deal, 0, 0, 1, Rung.ALL_BEATS);
    }

    private Drill.Cell cellOf(int bars, String steps, @Nullable Integer grouping) {
      return Drill.Cell.of(bars * meter.stepsPerBar(stepsPerBeat), stepsOf(steps), grouping);
    }
  }

  /** One chair's row of an ensemble. */
  record Row(
      String steps,
      int bars,
      int entry,
      @Nullable Integer grouping,
      @Nullable String chair,
      @Nullable String role,
      @Nullable String instrument,
      @Nullable Line line,
      List<FreeBars> free) {
    static Row row(String steps) {
      return new Row(steps, 0, 0, null, null, null, null, null, List.of());
    }

    /** A figure of fewer bars than the drill's period. */
    Row bars(int ofFigure) {
      return new Row(steps, ofFigure, entry, grouping, chair, role, instrument, line, free);
    }

    Row entering(int step) {
      return new Row(steps, bars, step, grouping, chair, role, instrument, line, free);
    }

    Row grouped(int by) {
      return new Row(steps, bars, entry, by, chair, role, instrument, line, free);
    }

    /** The chair's name, its role and what it is read on. */
    Row chair(String name, String itsRole, String on) {
      return new Row(steps, bars, entry, grouping, name, itsRole, on, line, free);
    }

    Row line(Line carried) {
      return new Row(steps, bars, entry, grouping, chair, role, instrument, carried, free);
    }

    /** Bars in which the chair plays freely, counted as the deal says. */
    Row free(int fromBar, int toBar) {
      List<FreeBars> bars = List.of(new FreeBars(fromBar, toBar, null));
      return new Row(steps, this.bars, entry, grouping, chair, role, instrument, line, bars);
    }
  }

  StockDrill tempo(int from, int to) {
    return new StockDrill(
        title, meter, stepsPerBeat, periodBars, chairs, deal, from, to, level, rung);
  }

  StockDrill level(int itsLevel) {
    return new StockDrill(
        title, meter, stepsPerBeat, periodBars, chairs, deal, tempoFrom, tempoTo, itsLevel, rung);
  }

  StockDrill to(Rung thinnest) {
    return new StockDrill(
        title, meter, stepsPerBeat, periodBars, chairs, deal, tempoFrom, tempoTo, level, thinnest);
  }

  /** The drill with its ladder of stages, starting a quarter of the way up its tempos. */
  Drill drill() {
    int start = (tempoFrom + (tempoTo - tempoFrom) / 4) / 4 * 4;
    return new Drill(
        Drill.FORMAT,
        Drill.VERSION,
        title,
        level,
        meter,
        stepsPerBeat,
        Swing.STRAIGHT,
        new Drill.TempoRange(tempoFrom, tempoTo, Math.max(start, tempoFrom)),
        null,
        periodBars,
        new Drill.Deal(deal, SEED),
        chairs,
        ClickLadder.stages(
            ClickLadder.between(Rung.ALL_BEATS, rung, meter, null),
            meter,
            stepsPerBeat,
            null,
            ClickLadder.barsOfStage(periodBars),
            SEED),
        null);
  }

  /** Reads {@code "0-7"}, {@code "0,3,6"} or {@code "0,3..24,27"}: from 0 by 3 to 24, then 27. */
  static List<Integer> stepsOf(String written) {
    List<Integer> steps = new ArrayList<>();
    for (String piece : written.split(",", -1)) {
      if (piece.contains("-")) {
        int[] ends = Arrays.stream(piece.split("-", -1)).mapToInt(Integer::parseInt).toArray();
        IntStream.rangeClosed(ends[0], ends[1]).forEach(steps::add);
      } else if (piece.contains("..")) {
        String[] ends = piece.split("\\.\\.", -1);
        int second = Integer.parseInt(ends[0]);
        int by = second - steps.get(steps.size() - 1);
        for (int at = second; at <= Integer.parseInt(ends[1]); at += by) {
          steps.add(at);
        }
      } else {
        steps.add(Integer.parseInt(piece));
      }
    }
    return steps;
  }
}

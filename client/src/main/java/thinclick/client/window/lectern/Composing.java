package thinclick.client.window.lectern;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.file.DealKind;
import thinclick.protocol.file.Drill;
import thinclick.protocol.file.Line;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.json.Check;
import thinclick.protocol.music.Meter;
import thinclick.server.material.ChairWishes;
import thinclick.server.material.ClickPlans;
import thinclick.server.material.Composition;
import thinclick.server.material.DrillCheck;
import thinclick.server.material.GroupedCell;
import thinclick.server.material.pitch.Instrument;
import thinclick.server.material.pitch.Key;

/**
 * What a leader writes to compose a drill, each wish as it was typed; an empty one is none.
 *
 * @param from the drill it begins with, or null for even steps
 * @param title what it is called
 * @param meter such as 4/4, where it begins with even steps
 * @param stepsPerBeat 2, 3, 4 or 6, likewise
 * @param cell attacked steps as musicians count them, from 1: "1 4 7"
 * @param grouping steps of a group laid across the bar lines
 * @param period bars until it starts again
 * @param entry the first chair's first step, from 1
 * @param scale a scale that is run through
 * @param progression chords or the name of a known progression
 * @param key the key that sounds
 * @param chairs instruments in the chairs' order, commas between
 * @param feel a lean asked for on purpose, by role, "comping 25"
 * @param free bars that are played freely, by role, "comping 5-8 of 8"
 * @param deal how it is shared out, or null for as the drill says
 * @param plan rungs of the click, such as "all beats to first only"
 */
record Composing(
    @Nullable Drill from,
    String title,
    String meter,
    String stepsPerBeat,
    String cell,
    String grouping,
    String period,
    String entry,
    String scale,
    String progression,
    String key,
    String chairs,
    String feel,
    String free,
    @Nullable DealKind deal,
    String plan) {
  private static final int MOST_STEPS = 10_000;

  /**
   * The drill.
   *
   * @throws BadInput where a wish is not understood or does not go with another, naming it
   */
  Drill drill() {
    Composition made = begin();
    Integer bars = period.isBlank() ? null : (Integer) number("period", period);
    if (!grouping.isBlank()) {
      int group = number("grouping", grouping);
      made.grouping(group, cell.isBlank() ? null : steps(group), bars, GroupedCell.Aim.UPBEAT);
    } else if (!cell.isBlank()) {
      made.cell(steps(bars == null ? MOST_STEPS : bars * made.stepsPerBar()), bars);
    } else if (bars != null) {
      made.period(bars);
    }
    if (!entry.isBlank()) {
      int step = number("entry", entry);
      Check.range("entry", step, 1L, MOST_STEPS);
      made.entry(step - 1);
    }
    if (!scale.isBlank() || !progression.isBlank() || !key.isBlank()) {
      made.lines(this::line);
    }
    if (!chairs.isBlank()) {
      made.instruments(
          Arrays.stream(chairs.split(",", -1))
              .filter(name -> !name.isBlank())
              .map(name -> Instrument.find("chairs", name))
              .toList());
    }
    if (!feel.isBlank()) {
      made.chairs(had -> ChairWishes.feel("feel", had, feel));
    }
    if (!free.isBlank()) {
      made.chairs(had -> ChairWishes.free("free", had, free));
    }
    if (deal != null) {
      made.deal(deal);
    }
    if (!plan.isBlank()) {
      made.plan(ClickPlans.parse("plan", plan, made.meter(), made.groups()));
    }
    made.title(title.isBlank() ? ownTitle() : title.strip());
    return DrillCheck.checked(made.drill());
  }

  private Composition begin() {
    if (from != null) {
      return Composition.from(from);
    }
    Meter in = meter.isBlank() ? Meter.FOUR_FOUR : Meter.parse(meter.strip());
    int steps =
        stepsPerBeat.isBlank() ? (in.compound() ? 3 : 2) : number("steps a beat", stepsPerBeat);
    return Composition.even(ownTitle(), in, steps);
  }

  /** A composed drill never goes by the title of the stock's: it is another one. */
  private String ownTitle() {
    return from == null ? "Own drill" : from.title() + ", own";
  }

  private Line line(@Nullable Line had) {
    String itsKey = key.isBlank() ? (had == null ? null : had.key()) : key.strip();
    if (itsKey != null) {
      Key.tonicOf("key", itsKey);
    }
    if (!scale.isBlank() && !progression.isBlank()) {
      throw new BadInput("scale", "expected either a scale or a progression, found both");
    }
    if (!progression.isBlank()) {
      return Line.ofProgression(itsKey, progression.strip());
    }
    if (!scale.isBlank()) {
      return Line.ofScale(Objects.requireNonNullElse(itsKey, "C"), scale.strip());
    }
    if (had != null) {
      return new Line(
          itsKey, had.scale(), had.pattern(), had.direction(), had.progression(), had.between());
    }
    boolean minor = itsKey != null && itsKey.toLowerCase(Locale.ROOT).endsWith("minor");
    return Line.ofScale(Objects.requireNonNullElse(itsKey, "C"), minor ? "natural minor" : "major");
  }

  /** The steps that are played, from 0 as files have them; what is wrong is said from 1. */
  private List<Integer> steps(int most) {
    List<Integer> counted = numbers("cell", cell);
    Check.ascending("cell", counted, 1, Math.max(1, most));
    return counted.stream().map(step -> step - 1).toList();
  }

  private static int number(String where, String written) {
    List<Integer> one = numbers(where, written);
    Check.size(where, one, 1, 1);
    return one.get(0);
  }

  private static List<Integer> numbers(String where, String written) {
    List<Integer> numbers = new ArrayList<>();
    for (String piece : written.strip().split("[\\s,]+", -1)) {
      try {
        numbers.add(Integer.valueOf(piece));
      } catch (NumberFormatException noNumber) {
        throw new BadInput(where, "expected whole numbers, found \"" + piece + "\"");
      }
    }
    return numbers;
  }
}

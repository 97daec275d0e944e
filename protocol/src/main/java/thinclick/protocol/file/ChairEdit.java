package thinclick.protocol.file;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A chair of a drill with some of its fields changed: a copy, so that the chair itself stays as it
 * is. Each method is named after the field it sets, but {@link #named}, which gives it its name.
 */
public final class ChairEdit {
  private String chair;
  private @Nullable String role;
  private Drill.Cell cell;
  private int entryStep;
  private @Nullable Line line;
  private @Nullable Feel feelMillis;
  private @Nullable String instrument;
  private List<FreeBars> free;

  ChairEdit(Drill.Chair from) {
    chair = from.chair();
    role = from.role();
    cell = from.cell();
    entryStep = from.entryStep();
    line = from.line();
    feelMillis = from.feelMillis();
    instrument = from.instrument();
    free = from.free();
  }

  public ChairEdit named(String other) {
    chair = other;
    return this;
  }

  public ChairEdit role(@Nullable String other) {
    role = other;
    return this;
  }

  public ChairEdit cell(Drill.Cell other) {
    cell = other;
    return this;
  }

  public ChairEdit entryStep(int other) {
    entryStep = other;
    return this;
  }

  public ChairEdit line(@Nullable Line other) {
    line = other;
    return this;
  }

  public ChairEdit feelMillis(@Nullable Feel other) {
    feelMillis = other;
    return this;
  }

  public ChairEdit instrument(@Nullable String other) {
    instrument = other;
    return this;
  }

  public ChairEdit free(List<FreeBars> others) {
    free = others;
    return this;
  }

  /**
   * The chair as it stands now.
   *
   * @throws thinclick.protocol.json.BadInput where a field has no such value
   */
  public Drill.Chair chair() {
    return new Drill.Chair(chair, role, cell, entryStep, line, feelMillis, instrument, free);
  }
}

package thinclick.protocol.file;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A part with some of its fields changed: a copy, so that the part itself stays as it is. Each
 * method is named after the field it sets.
 */
public final class PartEdit {
  private String player;
  private int entryStep;
  private double uncertaintyMillis;
  private List<Integer> attackSteps;
  private @Nullable List<Integer> accentSteps;
  private @Nullable List<Integer> lengthSteps;
  private @Nullable List<Integer> pitches;
  private @Nullable Feel feelMillis;
  private @Nullable String role;
  private @Nullable Double weight;
  private @Nullable String instrument;
  private boolean standIn;
  private List<Span> away;
  private @Nullable Hearing hearing;
  private List<Answer> answers;
  private @Nullable Integer level;
  private @Nullable DealtFigure figure;
  private List<FreeSpan> free;

  PartEdit(Part part) {
    player = part.player();
    entryStep = part.entryStep();
    uncertaintyMillis = part.uncertaintyMillis();
    attackSteps = part.attackSteps();
    accentSteps = part.accentSteps();
    lengthSteps = part.lengthSteps();
    pitches = part.pitches();
    feelMillis = part.feelMillis();
    role = part.role();
    weight = part.weight();
    instrument = part.instrument();
    standIn = part.standIn();
    away = part.away();
    hearing = part.hearing();
    answers = part.answers();
    level = part.level();
    figure = part.figure();
    free = part.free();
  }

  public PartEdit player(String other) {
    player = other;
    return this;
  }

  public PartEdit entryStep(int other) {
    entryStep = other;
    return this;
  }

  public PartEdit uncertaintyMillis(double other) {
    uncertaintyMillis = other;
    return this;
  }

  public PartEdit attackSteps(List<Integer> other) {
    attackSteps = other;
    return this;
  }

  public PartEdit accentSteps(@Nullable List<Integer> other) {
    accentSteps = other;
    return this;
  }

  public PartEdit lengthSteps(@Nullable List<Integer> other) {
    lengthSteps = other;
    return this;
  }

  public PartEdit pitches(@Nullable List<Integer> other) {
    pitches = other;
    return this;
  }

  public PartEdit feelMillis(@Nullable Feel other) {
    feelMillis = other;
    return this;
  }

  public PartEdit role(@Nullable String other) {
    role = other;
    return this;
  }

  public PartEdit weight(@Nullable Double other) {
    weight = other;
    return this;
  }

  public PartEdit instrument(@Nullable String other) {
    instrument = other;
    return this;
  }

  public PartEdit standIn(boolean other) {
    standIn = other;
    return this;
  }

  public PartEdit away(List<Span> other) {
    away = other;
    return this;
  }

  public PartEdit hearing(@Nullable Hearing other) {
    hearing = other;
    return this;
  }

  public PartEdit answers(List<Answer> other) {
    answers = other;
    return this;
  }

  public PartEdit level(@Nullable Integer other) {
    level = other;
    return this;
  }

  public PartEdit figure(@Nullable DealtFigure other) {
    figure = other;
    return this;
  }

  public PartEdit free(List<FreeSpan> other) {
    free = other;
    return this;
  }

  /** The part, checked as any other. */
  public Part part() {
    return new Part(
        player,
        entryStep,
        uncertaintyMillis,
        attackSteps,
        accentSteps,
        lengthSteps,
        pitches,
        feelMillis,
        role,
        weight,
        instrument,
        standIn,
        away,
        hearing,
        answers,
        level,
        figure,
        free);
  }
}

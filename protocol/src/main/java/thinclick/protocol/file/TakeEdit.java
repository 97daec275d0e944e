package thinclick.protocol.file;

import java.util.List;
import org.jspecify.annotations.Nullable;
import thinclick.protocol.music.Meter;
import thinclick.protocol.music.Stage;
import thinclick.protocol.music.Swing;

/**
 * A take with some of its fields changed: a copy, so that the take itself stays as it is. Each
 * method is named after the field it sets.
 */
public final class TakeEdit {
  private String title;
  private Meter meter;
  private double tempo;
  private int stepsPerBeat;
  private Swing swing;
  private long startMicros;
  private @Nullable Double toleranceMillis;
  private List<Stage> stages;
  private List<Part> parts;
  private List<Attack> attacks;
  private @Nullable Long endMicros;
  private List<Span> clickInterrupted;

  TakeEdit(Take take) {
    title = take.title();
    meter = take.meter();
    tempo = take.tempo();
    stepsPerBeat = take.stepsPerBeat();
    swing = take.swing();
    startMicros = take.startMicros();
    toleranceMillis = take.toleranceMillis();
    stages = take.stages();
    parts = take.parts();
    attacks = take.attacks();
    endMicros = take.endMicros();
    clickInterrupted = take.clickInterrupted();
  }

  public TakeEdit title(String other) {
    title = other;
    return this;
  }

  public TakeEdit meter(Meter other) {
    meter = other;
    return this;
  }

  public TakeEdit tempo(double other) {
    tempo = other;
    return this;
  }

  public TakeEdit stepsPerBeat(int other) {
    stepsPerBeat = other;
    return this;
  }

  public TakeEdit swing(Swing other) {
    swing = other;
    return this;
  }

  public TakeEdit startMicros(long other) {
    startMicros = other;
    return this;
  }

  public TakeEdit toleranceMillis(@Nullable Double other) {
    toleranceMillis = other;
    return this;
  }

  public TakeEdit stages(List<Stage> other) {
    stages = other;
    return this;
  }

  public TakeEdit parts(List<Part> other) {
    parts = other;
    return this;
  }

  public TakeEdit attacks(List<Attack> other) {
    attacks = other;
    return this;
  }

  public TakeEdit endMicros(@Nullable Long other) {
    endMicros = other;
    return this;
  }

  public TakeEdit clickInterrupted(List<Span> other) {
    clickInterrupted = other;
    return this;
  }

  /** The take, checked as any other. */
  public Take take() {
    return new Take(
        Take.FORMAT,
        Take.VERSION,
        title,
        meter,
        tempo,
        stepsPerBeat,
        swing,
        startMicros,
        toleranceMillis,
        stages,
        parts,
        attacks,
        endMicros,
        clickInterrupted);
  }
}

package thinclick.client.window.check;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.awaitility.Awaitility.await;

import java.util.Locale;
import java.util.Random;
import java.util.concurrent.atomic.AtomicReference;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.DoubleProperty;
import javafx.beans.property.ObjectProperty;
import javafx.beans.property.ReadOnlyBooleanProperty;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleDoubleProperty;
import javafx.beans.property.SimpleObjectProperty;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import org.junit.jupiter.api.Test;
import thinclick.client.check.Verdict;
import thinclick.client.check.Verdict.Known;
import thinclick.client.check.Verdict.Refused;
import thinclick.client.sound.CueSheet;
import thinclick.client.sound.RoomTimes;
import thinclick.client.window.check.CheckModel.Phase;
import thinclick.client.window.words.Words;
import thinclick.protocol.file.Hearing;

/** A whole check by script: its clicks are asked for, the taps come at their times. */
class CheckModelTest {
  private static final long NOW = 1_000_000_000_000L;

  private final Booth booth = new Booth();
  private final AtomicReference<Verdict> judged = new AtomicReference<>();
  private final AtomicReference<String> about = new AtomicReference<>();
  private final CheckModel model =
      new CheckModel(
          Words.in(Locale.ENGLISH),
          booth,
          Runnable::run,
          (input, verdict) -> {
            about.set(input);
            judged.set(verdict);
          });

  @Test
  void thirtySixTapsAtEightyMillisecondsGiveEighty() {
    Random luck = new Random(80);
    run(i -> 80 + luck.nextGaussian() * 2.5);
    Known known = (Known) judged.get();
    assertThat(known.latencyMillis()).isCloseTo(80, within(2.0));
    assertThat(about.get()).isEqualTo("keys");
    assertThat(model.saysProperty().get())
        .startsWith("From 36\u00a0taps: 8")
        .contains("cannot be told apart here");
    assertThat(booth.played).as("sounded once").isEqualTo(1);
  }

  @Test
  void irregularTapsAreRefusedAndTheSentenceSaysWhatHolds() {
    Random luck = new Random(7);
    run(i -> luck.nextDouble() * 500 - 250);
    assertThat(judged.get()).isInstanceOf(Refused.class);
    assertThat(model.saysProperty().get()).endsWith("until a check is passed.");
  }

  @Test
  void aStumbleIsRefused() {
    booth.stumbles = true;
    run(i -> 80);
    assertThat(((Refused) judged.get()).why()).isEqualTo(Verdict.Why.STUMBLED);
  }

  /** Nothing sounded, so nothing stumbled: it is not begun, and why is said at once. */
  @Test
  void withoutAnOutputNothingIsBegun() {
    booth.audible = false;
    model.begin(NOW);
    assertThat(model.phaseProperty().get()).isEqualTo(Phase.IDLE);
    assertThat(booth.played).isZero();
    assertThat(model.saysProperty().get())
        .startsWith("Without a\u00a0sound output there is no click to hear");
  }

  @Test
  void whileItRunsItCountsAndOnlyThenSaysWhatCameOfIt() {
    model.begin(NOW);
    long first = booth.times.nanosOf(0);
    assertThat(model.progressProperty().get()).isEqualTo("Listen to the first 4\u00a0clicks.");
    assertThat(model.soundedProperty().get()).isZero();
    model.look(first + 3 * 600_000_000L);
    assertThat(model.soundedProperty().get()).isEqualTo(4);
    model.look(first + 6 * 600_000_000L);
    model.tapped("keys", first + 6 * 600_000_000L + 30_000_000L);
    assertThat(model.progressProperty().get())
        .isEqualTo("Tap with each click. Click 7 of 40, one tap so far.");
    assertThat(model.saysProperty().get()).isEmpty();
    model.breakOff();
    assertThat(model.progressProperty().get()).isEmpty();
    assertThat(model.soundedProperty().get()).isZero();
    assertThat(model.saysProperty().get()).isEqualTo("The check was stopped: nothing has changed.");
  }

  @Test
  void onlyTheInputThatTappedFirstCounts() {
    model.begin(NOW);
    long first = booth.times.nanosOf(0);
    for (int i = 0; i < 40; i++) {
      model.tapped("pad", first + i * 600_000_000L + 20_000_000L);
      model.tapped("keys", first + i * 600_000_000L + 200_000_000L);
    }
    model.look(first + 41 * 600_000_000L);
    await().until(() -> judged.get() != null);
    assertThat(about.get()).isEqualTo("pad");
    assertThat(((Known) judged.get()).latencyMillis()).isCloseTo(20, within(0.5));
  }

  @Test
  void leavingThePageBreaksOffWithoutAVerdict() {
    model.begin(NOW);
    model.breakOff();
    model.look(NOW + 100_000_000_000L);
    assertThat(model.phaseProperty().get()).isEqualTo(Phase.IDLE);
    assertThat(judged.get()).isNull();
    assertThat(booth.over).isTrue();
  }

  private interface Offset {
    double millis(int tap);
  }

  private void run(Offset offset) {
    model.begin(NOW);
    long first = booth.times.nanosOf(0);
    assertThat(first).as("clicks are announced ahead").isGreaterThan(NOW + 1_000_000_000L);
    for (int i = 0; i < 40; i++) {
      long click = first + i * 600_000_000L;
      model.look(click);
      model.tapped("keys", click + Math.round(offset.millis(i) * 1e6));
    }
    assertThat(model.listens()).isTrue();
    model.look(first + 40 * 600_000_000L + 200_000_000L);
    await().until(() -> judged.get() != null);
  }

  private static final class Booth implements CheckSound {
    private RoomTimes times;
    private int played;
    private boolean over;
    private boolean stumbles;
    private boolean audible = true;

    @Override
    public ObservableList<String> outputs() {
      return FXCollections.observableArrayList();
    }

    @Override
    public StringProperty outputProperty() {
      return new SimpleStringProperty("");
    }

    @Override
    public ReadOnlyStringProperty soundingProperty() {
      return new SimpleStringProperty(""); // the system's own choice
    }

    @Override
    public ReadOnlyBooleanProperty audibleProperty() {
      return new SimpleBooleanProperty(audible);
    }

    @Override
    public ReadOnlyStringProperty saysProperty() {
      return new SimpleStringProperty("");
    }

    @Override
    public DoubleProperty levelProperty() {
      return new SimpleDoubleProperty(-24);
    }

    @Override
    public BooleanProperty mutedProperty() {
      return new SimpleBooleanProperty();
    }

    @Override
    public ObjectProperty<Hearing.Mode> hearingProperty() {
      return new SimpleObjectProperty<>();
    }

    @Override
    public void playForCheck(CueSheet cues, RoomTimes byTimes) {
      times = byTimes;
      played++;
    }

    @Override
    public boolean checkOver() {
      over = true;
      return stumbles;
    }
  }
}

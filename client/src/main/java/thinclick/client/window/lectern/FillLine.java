package thinclick.client.window.lectern;

import java.util.List;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import javafx.scene.control.Button;
import javafx.scene.control.ChoiceBox;
import org.jspecify.annotations.Nullable;
import thinclick.client.standin.Manner;
import thinclick.client.window.look.Choices;
import thinclick.client.window.words.Words;
import thinclick.protocol.file.Drill;
import thinclick.protocol.message.ServerMessage.Person;

/** Brings a stand-in in: how it plays, and for which chair or role. */
final class FillLine {
  private static final int MOST_CHAIRS = 24;

  private final RosterModel model;
  private final Words words;
  private final Supplier<@Nullable Person> marked;
  private final ChoiceBox<Manner> manner = new ChoiceBox<>();
  private final ChoiceBox<Integer> chair = new ChoiceBox<>();
  private final Button fill;
  private @Nullable Drill drill;

  /**
   * @param marked who is marked in the roster; where that one is away, the stand-in takes the chair
   */
  FillLine(RosterModel model, Words words, Supplier<@Nullable Person> marked) {
    this.model = model;
    this.words = words;
    this.marked = marked;
    fill = Keyed.button("fill", words.say("lectern.fill"), "Alt+F", this::fill);
    manner.getItems().setAll(Manner.values());
    manner.setValue(Manner.STEADY);
    manner.setId("manner");
    manner.setConverter(Choices.said(one -> Words.begun(words.say(one.key()))));
    manner.setAccessibleText(words.say("lectern.fill.manner"));
    chair.setId("fill-chair");
    chair.setConverter(Choices.said(at -> Words.begun(chairWords(at))));
    chair.setAccessibleText(words.say("lectern.fill.chair"));
  }

  /** The button. */
  Button button() {
    return fill;
  }

  /** Which chair the stand-in takes. */
  ChoiceBox<Integer> chair() {
    return chair;
  }

  /** How it plays. */
  ChoiceBox<Manner> manner() {
    return manner;
  }

  void fill() {
    Integer place = chair.getValue();
    model.fill(manner.getValue(), marked.get(), place == null ? 0 : place);
  }

  /** The chairs that can be filled: those of the drill, and those that are taken. */
  void show(@Nullable Drill chosen) {
    drill = chosen;
    int chairs = Math.max(model.playing().size(), chosen == null ? 1 : chosen.chairs().size());
    List<Integer> places = IntStream.rangeClosed(0, Math.min(MOST_CHAIRS, chairs)).boxed().toList();
    if (!chair.getItems().equals(places)) {
      Integer before = chair.getValue();
      chair.getItems().setAll(places);
      chair.setValue(before != null && places.contains(before) ? before : Integer.valueOf(0));
    }
  }

  /** Whether it can be done now; an absent pupil who is marked is named. */
  void enable() {
    Person person = marked.get();
    boolean absent = person != null && !person.connected();
    fill.setDisable(!model.canSeat());
    String does =
        absent ? words.say("lectern.fill.absent", person.name()) : words.say("lectern.fill");
    fill.setText(does);
    fill.setAccessibleText(does + ", Alt+F");
    manner.setDisable(!model.canSeat());
    chair.setDisable(absent || !model.canSeat());
  }

  private String chairWords(Integer number) {
    Drill chosen = drill;
    String role =
        chosen == null || number == 0
            ? null
            : chosen.chairs().get((number - 1) % chosen.chairs().size()).role();
    if (number == 0) {
      return words.say("lectern.fill.next");
    }
    return role == null
        ? words.say("lectern.fill.on", number)
        : words.say("lectern.fill.role", number, words.role(role));
  }
}

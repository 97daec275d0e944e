package thinclick.client.window.practice;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import javafx.beans.property.BooleanProperty;
import javafx.beans.property.IntegerProperty;
import javafx.beans.property.ReadOnlyListProperty;
import javafx.beans.property.ReadOnlyListWrapper;
import javafx.beans.property.ReadOnlyObjectProperty;
import javafx.beans.property.ReadOnlyObjectWrapper;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import javafx.beans.property.SimpleBooleanProperty;
import javafx.beans.property.SimpleIntegerProperty;
import javafx.beans.property.SimpleStringProperty;
import javafx.beans.property.StringProperty;
import javafx.collections.FXCollections;
import javafx.collections.ObservableList;
import org.jspecify.annotations.Nullable;
import thinclick.client.rehearse.Band;
import thinclick.client.standin.Manner;
import thinclick.client.window.session.Company;
import thinclick.client.window.session.PlayThenTap;
import thinclick.client.window.session.Session;
import thinclick.client.window.words.Words;
import thinclick.protocol.file.DealKind;
import thinclick.protocol.file.Drill;
import thinclick.server.material.Stock;

/** What is put together before one practises: a drill, a tempo, a chair, the stand-ins. */
public final class PracticeModel {
  private static final int USUAL_COMPANY = 3;

  private final Session session;
  private final Words words;
  private final StringProperty name;
  private final StringProperty looking = new SimpleStringProperty("");
  private final StringProperty tempo = new SimpleStringProperty("");
  private final ReadOnlyStringWrapper tempoSays = new ReadOnlyStringWrapper("");
  private final ReadOnlyObjectWrapper<Drill> drill;
  private final IntegerProperty count = new SimpleIntegerProperty();
  private final IntegerProperty ownPlace = new SimpleIntegerProperty();
  private final BooleanProperty playedFirst = new SimpleBooleanProperty();
  private final ObservableList<Manner> manners = FXCollections.observableArrayList();
  private final ReadOnlyListWrapper<Drill> drills =
      new ReadOnlyListWrapper<>(FXCollections.observableArrayList());

  /**
   * @param name what the player is called, as written at the door
   */
  public PracticeModel(Session session, Words words, StringProperty name) {
    this.session = session;
    this.words = words;
    this.name = name;
    looking.addListener((any, old, now) -> look(now));
    tempo.addListener(any -> tempoSays.set(""));
    count.addListener((any, old, now) -> resize(now.intValue()));
    look("");
    this.drill = new ReadOnlyObjectWrapper<>(drills.get(0));
    choose(drill.get());
  }

  private void look(String part) {
    String wanted = part.strip().toLowerCase(Locale.ROOT);
    drills.setAll(
        Stock.drills().stream()
            .filter(each -> each.title().toLowerCase(Locale.ROOT).contains(wanted))
            .sorted(Comparator.comparingInt(Drill::level).thenComparing(Drill::title))
            .toList());
  }

  private void resize(int wanted) {
    while (manners.size() > wanted) {
      manners.remove(manners.size() - 1);
    }
    while (manners.size() < wanted) {
      manners.add(Manner.STEADY);
    }
    if (ownPlace.get() > wanted) {
      ownPlace.set(wanted);
    }
  }

  /** Takes a drill; the company is set to what the drill is written for. */
  public void choose(Drill wanted) {
    drill.set(wanted);
    tempo.set(Long.toString(Math.round(wanted.tempo().start())));
    boolean forOne = wanted.chairs().size() == 1;
    boolean alone = forOne && wanted.deal().kind() == DealKind.AS_WRITTEN;
    int others = forOne ? USUAL_COMPANY : wanted.chairs().size() - 1;
    count.set(alone ? 1 : Math.min(Company.MOST, others));
    ownPlace.set(0);
  }

  /** What is looked for among the drills. */
  public StringProperty lookingProperty() {
    return looking;
  }

  /** The drills that fit what is looked for. */
  public ReadOnlyListProperty<Drill> drillsProperty() {
    return drills.getReadOnlyProperty();
  }

  /** The drill that is taken. */
  public ReadOnlyObjectProperty<Drill> drillProperty() {
    return drill.getReadOnlyProperty();
  }

  /** Beats a minute, as written. */
  public StringProperty tempoProperty() {
    return tempo;
  }

  /** What is wrong with the tempo; empty where nothing is. */
  public ReadOnlyStringProperty tempoSaysProperty() {
    return tempoSays.getReadOnlyProperty();
  }

  /** How many stand-ins come in, 0 to {@link Company#MOST}. */
  public IntegerProperty countProperty() {
    return count;
  }

  /** The chair that the player takes, from 0. */
  public IntegerProperty ownPlaceProperty() {
    return ownPlace;
  }

  /** Whether the line is played on a horn first and tapped after. */
  public BooleanProperty playedFirstProperty() {
    return playedFirst;
  }

  /** What that means with this drill, a sentence. */
  public String playedFirst() {
    int bars = PlayThenTap.bars(drill.get());
    return words.say("practice.horn", bars, bars + 1);
  }

  /** How each stand-in plays; as many as {@link #countProperty()} says. */
  public ObservableList<Manner> manners() {
    return manners;
  }

  /** The chairs that can be taken, each in words. */
  public List<String> places() {
    return IntStream.rangeClosed(0, count.get()).mapToObj(this::place).toList();
  }

  /** A chair in words: its number and what it does for the whole. */
  private String place(int at) {
    List<Drill.Chair> chairs = drill.get().chairs();
    String role = chairs.get(at % chairs.size()).role();
    return role == null
        ? words.say("practice.place", at + 1)
        : words.say("practice.place.role", at + 1, words.role(role));
  }

  /** Who stands in, and in which chair; in the order of {@link #manners()}. */
  public List<String> standIns() {
    List<String> names = Band.without(name.get(), count.get());
    List<String> said = new ArrayList<>();
    for (int i = 0; i < names.size(); i++) {
      int at = i < ownPlace.get() ? i : i + 1;
      said.add(words.say("practice.standIn", names.get(i), place(at)));
    }
    return said;
  }

  /** A manner in words. */
  public String say(Manner manner) {
    return words.say(manner.key());
  }

  /** A drill in one line. */
  public String line(Drill of) {
    return words.say("lectern.drill", of.title(), of.level(), of.meter().toString());
  }

  /** Opens the room and deals; says what is wrong where it cannot. */
  public void begin() {
    Drill chosen = drill.get();
    Double beats = beats(chosen);
    if (beats == null) {
      tempoSays.set(words.say("lectern.tempo.range", chosen.tempo().from(), chosen.tempo().to()));
      return;
    }
    session.practise(
        name.get().strip(), new Company(chosen, beats, ownPlace.get(), List.copyOf(manners)));
  }

  private @Nullable Double beats(Drill chosen) {
    try {
      double written = Double.parseDouble(tempo.get().strip());
      boolean inRange = written >= chosen.tempo().from() && written <= chosen.tempo().to();
      return inRange ? written : null;
    } catch (NumberFormatException wrong) {
      return null;
    }
  }
}

package thinclick.client.window.lectern;

import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.time.format.FormatStyle;
import java.util.Objects;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.beans.property.ReadOnlyStringWrapper;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.session.PastTakes;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.session.Session;
import thinclick.client.window.words.PastWords;
import thinclick.client.window.words.Words;
import thinclick.protocol.file.Drill;
import thinclick.server.history.FewestClicks;
import thinclick.server.words.Quantity;
import thinclick.server.words.Speaker;

/** What is proposed after a take, and the fewest clicks that were ever held at this tempo. */
public final class Proposals {
  private final Session session;
  private final Words words;
  private final LecternModel lectern;
  private final NextStep steps;
  private final ReadOnlyStringWrapper says = new ReadOnlyStringWrapper("");

  /**
   * A proposal as it is read.
   *
   * @param says what and why
   * @param changes true where it changes the drill, the click or the tempo
   */
  public record Line(String says, boolean changes) {}

  Proposals(Session session, Words words, LecternModel lectern) {
    this.session = session;
    this.words = words;
    this.lectern = lectern;
    steps = new NextStep(words);
    session.stateProperty().addListener((any, old, now) -> follow(old, now));
    lectern.changesProperty().addListener(any -> says.set(""));
  }

  private void follow(RoomState old, RoomState now) {
    if (!now.inside()) {
      steps.forget();
      says.set("");
    } else if (!Objects.equals(old.review(), now.review()) && !lectern.playsRest()) {
      steps.remember(now); // the rest of a paused take says nothing of the whole
    }
  }

  /** What is proposed; null where no take was reviewed. */
  public @Nullable Line line() {
    NextStep.Proposal proposal = proposal();
    if (proposal == null) {
      return null;
    }
    return new Line(proposal.reason(), changes(proposal));
  }

  private NextStep.@Nullable Proposal proposal() {
    return session.state().betweenTakes() ? steps.proposal(lectern.chosen()) : null;
  }

  private boolean changes(NextStep.Proposal proposal) {
    Drill drill = lectern.chosen();
    return drill != null
        && (!proposal.drill().title().equals(drill.title())
            || !proposal.plan().equals(drill.stages())
            || proposal.tempo() != lectern.tempo());
  }

  /** Takes what is proposed: its plan is dealt. */
  public void take() {
    NextStep.Proposal proposal = proposal();
    if (proposal != null && lectern.canChoose() && changes(proposal)) {
      lectern.chooseAndDeal(proposal.drill().withStages(proposal.plan()), proposal.tempo());
    }
  }

  /** What was looked up, a sentence; empty for nothing. */
  public ReadOnlyStringProperty saysProperty() {
    return says.getReadOnlyProperty();
  }

  /** Looks up the fewest clicks that were held at this drill and tempo. */
  public void lookUp() {
    Drill drill = lectern.chosen();
    if (drill == null) {
      return;
    }
    String title = drill.title();
    double tempo = lectern.tempo();
    says.set(words.say("lectern.fewest.looking"));
    session
        .past()
        .fewestClicks(
            title,
            tempo,
            (state, found) -> {
              if (state != PastTakes.State.TOLD) {
                says.set(words.say(PastWords.notTold(state)));
              } else if (found == null) {
                says.set(words.say("lectern.fewest.none", title, Math.round(tempo)));
              } else {
                says.set(said(found, title, tempo));
              }
            });
  }

  private String said(FewestClicks found, String title, double tempo) {
    String day =
        DateTimeFormatter.ofLocalizedDate(FormatStyle.LONG)
            .withLocale(words.locale())
            .withZone(ZoneId.systemDefault())
            .format(found.begunAt());
    return words.say(
        "lectern.fewest.found",
        title,
        Math.round(tempo),
        Speaker.of(words.language()).say(found.click()),
        day,
        Quantity.percent(found.holdPercent()).shown(words.locale()));
  }
}

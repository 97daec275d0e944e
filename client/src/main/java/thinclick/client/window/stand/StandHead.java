package thinclick.client.window.stand;

import static thinclick.client.window.look.Styled.styled;

import java.util.List;
import javafx.beans.property.ReadOnlyStringProperty;
import javafx.geometry.Pos;
import javafx.scene.control.Label;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.HBox;
import javafx.scene.layout.Priority;
import javafx.scene.layout.Region;
import javafx.scene.layout.VBox;
import thinclick.client.window.look.Palette;
import thinclick.client.window.look.Prose;
import thinclick.client.window.look.WrappedWords;
import thinclick.client.window.words.Words;

/**
 * The words above the music: what is played, on what and from where, and on the right where the
 * take is. Where the page is low one line is left: the title alone and the entry, and in their
 * place, once the entry is over, what the marks mean.
 */
final class StandHead {
  private final Label title = styled(Prose.in(new Label()), "heading");
  private final Label entry = wrapped("stand-entry");
  private final WordsInTurn read = new WordsInTurn("stand-read", "soft");
  private final WordsInTurn says = new WordsInTurn("stand-says", "");
  private final Label inView = wrapped("stand-in-view");
  private final Label note = styled(wrapped("stand-note"), "stand-note");
  private final WrappedWords titleWrapped = new WrappedWords(title);
  private final WrappedWords entryWrapped = new WrappedWords(entry);
  private final WordFlow names = styled(new WordFlow(titleWrapped, entryWrapped), "stand-line");
  private final MarkLegend legend;
  private final WrappedWords titled;
  private final FlowPane titleLine = styled(new FlowPane(), "stand-line");
  private final FlowPane partLine = styled(styled(new FlowPane(), "stand-line"), "stand-parts");
  private final VBox left = new VBox(2, titleLine, inView, partLine, note);
  private final WhereNow where = new WhereNow();
  private final HBox root = styled(new HBox(16, left, where.root()), "stand-top");
  private final ReaderChoice choice;

  private String fullTitle = "";
  private String shortTitle = "";
  private boolean brief;
  private boolean marked;

  /**
   * @param choice of parts, which begins the line below the title, whose size may differ from part
   *     to part; where there is no room for that line, it stands after the title
   */
  StandHead(ReaderChoice choice, Words words) {
    this.choice = choice;
    legend = new MarkLegend(words, true);
    titled = new WrappedWords(names, legend.root());
    titled.setAlignment(Pos.CENTER_LEFT);
    left.setAlignment(Pos.BOTTOM_LEFT); // the last words left and right on one line
    title.setId("stand-title");
    left.setId("stand-words");
    names.setId("stand-what");
    note.managedProperty().bind(note.visibleProperty());
    partLine
        .managedProperty()
        .bind(
            partLine
                .visibleProperty()
                .and(
                    read.textProperty()
                        .isNotEmpty()
                        .or(says.textProperty().isNotEmpty())
                        .or(choice.root().parentProperty().isEqualTo(partLine))));
    HBox.setHgrow(left, Priority.ALWAYS);
    wrapWithin();
    place();
    note("");
  }

  Region root() {
    return root;
  }

  ReadOnlyStringProperty titleProperty() {
    return title.textProperty();
  }

  ReadOnlyStringProperty noteProperty() {
    return note.textProperty();
  }

  /** Words too long for the page take another line: they hold no page wider than its window. */
  private void wrapWithin() {
    for (Region narrow : new Region[] {left, titleLine, partLine}) {
      narrow.setMinWidth(0);
    }
    for (Region words : new Region[] {names, titleWrapped, entryWrapped, titled}) {
      words.maxWidthProperty().bind(left.widthProperty());
    }
    read.within(left);
    says.within(left);
  }

  /** Puts what is read in its place. */
  void place() {
    titleLine.getChildren().setAll(titled);
    partLine.getChildren().clear();
    if (brief && !choice.isEmpty()) {
      titleLine.getChildren().add(choice.root());
    } else if (!choice.isEmpty()) {
      partLine.getChildren().add(choice.root());
    }
    // Words after the last name could be taken for one; and whichever is chosen, all stays put.
    (choice.isEmpty() || brief ? partLine : titleLine).getChildren().add(read.root());
    root.getStyleClass().remove("stand-several");
    if (!choice.isEmpty()) {
      root.getStyleClass().add("stand-several");
    }
    partLine.getChildren().add(says.root());
    legend.within(choice.isEmpty() ? left : names);
    sayTitle();
  }

  /** With one line for everything. */
  void brief(boolean now) {
    brief = now;
    where.brief(now);
    partLine.setVisible(!now);
    legend.root().setManaged(now);
    showInView();
    place();
    exchange();
  }

  /** Whether marks are there to be read, from the bar after the entry until the next deal. */
  void marked(boolean now) {
    marked = now;
    exchange();
  }

  /** In the title's place, so that the music keeps its own. */
  private void exchange() {
    legend.root().setVisible(brief && marked);
    names.setVisible(!brief || !marked);
  }

  void dress(Palette palette, double textScale) {
    legend.dress(palette, textScale);
  }

  /**
   * What is played.
   *
   * @param full with its meter and tempo
   * @param alone without, where the entry stands beside it on the one line there is
   */
  void title(String full, String alone) {
    fullTitle = full;
    shortTitle = alone;
    sayTitle();
  }

  /**
   * How it is read.
   *
   * @param now of what is in view
   * @param inTurn of what can be turned to, which has its place too
   * @param enters the entry in a few words; empty where it is not one part's
   */
  void part(PartWords now, List<PartWords> inTurn, String enters) {
    read.say(now.on(), inTurn.stream().map(PartWords::on).toList());
    says.say(now.says(), inTurn.stream().map(PartWords::says).toList());
    entry.setText(enters);
    sayTitle();
  }

  /** Whether somebody is still to come in; where not, the words that say so keep their place. */
  void comesIn(boolean now) {
    says.root().setVisible(now);
  }

  private void sayTitle() {
    boolean withEntry = brief && !entry.getText().isEmpty();
    entryWrapped.setVisible(withEntry);
    entryWrapped.setManaged(withEntry);
    title.setText(withEntry ? shortTitle : fullTitle);
  }

  /** Whether there is anything to read on the page. */
  void show(boolean wanted) {
    root.setVisible(wanted);
    root.setManaged(wanted);
  }

  /** Whose parts are in view, where not all are and no line below the title can say it. */
  void inView(String who) {
    inView.setText(who);
    showInView();
  }

  private void showInView() {
    boolean needed = brief && !inView.getText().isEmpty();
    inView.setVisible(needed);
    inView.setManaged(needed);
  }

  /** What whoever leads has written. */
  void note(String says) {
    note.setText(says);
    note.setVisible(!says.isEmpty());
  }

  void tell(StandWords.Where now) {
    where.tell(now);
  }

  private static Label wrapped(String id) {
    Label label = new Label();
    label.setId(id);
    label.setWrapText(true);
    return label;
  }
}

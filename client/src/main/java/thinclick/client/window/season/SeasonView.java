package thinclick.client.window.season;

import static thinclick.client.window.look.Styled.styled;
import static thinclick.client.window.season.Controls.button;
import static thinclick.client.window.season.Controls.heading;
import static thinclick.client.window.season.Controls.line;
import static thinclick.client.window.season.Controls.shown;
import static thinclick.client.window.season.Controls.wrapped;

import java.time.ZoneId;
import java.util.List;
import javafx.collections.ListChangeListener;
import javafx.geometry.VPos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.control.TextField;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.look.FootedPage;
import thinclick.client.window.look.Ground;
import thinclick.client.window.look.Look;
import thinclick.client.window.look.PagePane;
import thinclick.client.window.look.Palette;
import thinclick.client.window.look.TwoColumns;
import thinclick.client.window.look.WholeLines;
import thinclick.client.window.review.FittedDrawing;
import thinclick.client.window.words.Words;
import thinclick.server.season.Pupil;
import thinclick.server.season.Season;
import thinclick.server.season.SeasonPicture;
import thinclick.server.season.SeasonWords;
import thinclick.server.words.Speaker;

/** A class over its weeks, for the leader: in words, member by member, and as a picture. */
public final class SeasonView {
  private final ClassDesk desk;
  private final Words words;
  private final FlowPane titles = new FlowPane();
  private final TextField made = new TextField();
  private final VBox says = new VBox(4);
  private final Label head = wrapped("");
  private final Label none = wrapped("");
  private final MemberList members;
  private final PupilPane pupil;
  private final TakesPane takes;
  private final ClassPane whole;
  private final VBox picture = styled(new VBox(), "ruled");
  private final VBox open = new VBox(14);
  private final FootedPage root;
  private Palette palette = Palette.LIGHT;
  private double textSize = Look.USUAL_TEXT;

  public SeasonView(ClassDesk desk, Words words) {
    this.desk = desk;
    this.words = words;
    Erasure erasure = new Erasure(desk, words);
    members = new MemberList(desk, words, this::marked);
    pupil = new PupilPane(desk, words, erasure);
    takes = new TakesPane(desk, words);
    whole = new ClassPane(desk, words, erasure);
    ErasurePane question = new ErasurePane(erasure, words, this::focusFirst);
    VBox sheet = createView(question.root());
    Ground ground = new Ground(sheet);
    PagePane page = new PagePane(ground);
    WholeLines.keep(page, ground, sheet);
    page.setFocusTraversable(false);
    root = new FootedPage(page, question.root(), question.root(), question.answers());
    desk.titles().addListener((ListChangeListener<String>) any -> showTitles());
    desk.openProperty().addListener(any -> showTitles());
    desk.seasonProperty()
        .addListener(
            (any, old, now) -> {
              erasure.leave();
              show();
            });
    showTitles();
    show();
  }

  /** The page. */
  public Node root() {
    return root;
  }

  /** Reads what there is, and puts the cursor where one begins. */
  public void begin() {
    desk.look();
    desk.again();
    focusFirst();
  }

  private void focusFirst() {
    Node first =
        titles.getChildren().stream().filter(Button.class::isInstance).findFirst().orElse(made);
    (desk.seasonProperty().get() == null ? first : members.list()).requestFocus();
  }

  /**
   * Changes the colours of what is drawn, and how large its words are.
   *
   * @param text size of running text, pixels
   */
  public void dress(Palette wanted, double text) {
    palette = wanted;
    textSize = text;
    draw();
  }

  private VBox createView(Node erasure) {
    titles.setId("classes");
    picture.setId("class-picture");
    styled(titles, "season-titles");
    none.setText(words.say("season.none"));
    styled(none, "soft");
    titles.setRowValignment(VPos.BASELINE);
    says.setId("season-says");
    head.setId("season-head");
    desk.saysProperty().addListener(any -> showSaid());
    showSaid();
    Button make = button("make-class", words.say("season.new.put"), this::make);
    Button opens =
        styled(
            button(
                "open-season",
                words.say("season.open"),
                () -> ClassPane.chooseAndOpen(desk, words, root.getScene().getWindow())),
            "quiet");
    FlowPane making =
        styled(
            new FlowPane(line(words.say("season.new"), made, "class-title", make), opens),
            "season-titles");
    making.setRowValignment(VPos.BASELINE);

    VBox left = styled(new VBox(14, members.root(), takes.root()), "column");
    VBox right =
        styled(new VBox(18, pupil.root(), styled(new VBox(whole.root()), "ruled")), "column");
    open.getChildren().addAll(head, new TwoColumns(left, right, 0.52, 44), picture);
    Label what = styled(wrapped(words.say("season.what")), "soft");
    VBox sheet =
        styled(
            new VBox(
                14,
                styled(new Label(words.say("view.season")), "title"),
                none,
                titles,
                making,
                says,
                erasure,
                open,
                what),
            "sheet");
    sheet.getStyleClass().add("season-sheet");
    return sheet;
  }

  private void make() {
    if (!made.getText().isBlank()) {
      desk.open(made.getText());
      made.clear();
    }
  }

  private void showTitles() {
    titles.getChildren().clear();
    List<String> all = desk.titles();
    shown(none, all.isEmpty());
    shown(titles, !all.isEmpty());
    titles.getChildren().add(styled(new Label(words.say("season.classes")), "field-name"));
    for (String title : all) {
      Button choose = styled(button("class-" + title, title, () -> desk.open(title)), "quiet");
      if (title.equals(desk.openProperty().get())) {
        choose.getStyleClass().add("strong");
      }
      titles.getChildren().add(choose);
    }
  }

  /** What was done in bold; what that came to, line by line, plainly below. */
  private void showSaid() {
    String all = desk.saysProperty().get();
    says.getChildren().clear();
    all.lines().forEach(line -> says.getChildren().add(wrapped(line)));
    says.getChildren().stream().limit(1).forEach(first -> styled(first, "strong"));
    shown(says, !all.isEmpty());
  }

  private void show() {
    Season season = desk.seasonProperty().get();
    shown(open, season != null);
    members.show(season);
    takes.show(season);
    whole.show(season);
    if (season != null) {
      SeasonWords said = new SeasonWords(season, ZoneId.systemDefault(), desk.speaker());
      head.setText(said.head() + " " + String.join(" ", said.lastWeek()));
    }
    marked(members.marked());
    draw();
  }

  private void marked(@Nullable Pupil marked) {
    pupil.show(desk.seasonProperty().get(), marked);
  }

  private void draw() {
    picture.getChildren().clear();
    Season season = desk.seasonProperty().get();
    boolean drawn = season != null && !season.takes().isEmpty();
    shown(picture, drawn);
    if (season != null && drawn) {
      Speaker speaker = desk.speaker();
      picture
          .getChildren()
          .addAll(
              heading(SeasonPicture.title(speaker)),
              new FittedDrawing(
                  width -> SeasonPicture.plain(season, ZoneId.systemDefault(), speaker, width),
                  palette,
                  textSize));
    }
  }
}

package thinclick.client.window.lectern;

import java.util.ArrayList;
import java.util.List;
import javafx.beans.value.ObservableValue;
import javafx.geometry.VPos;
import javafx.scene.Node;
import javafx.scene.control.Button;
import javafx.scene.control.CheckBox;
import javafx.scene.control.Label;
import javafx.scene.control.ListCell;
import javafx.scene.control.ListView;
import javafx.scene.control.ScrollPane;
import javafx.scene.control.TextField;
import javafx.scene.input.KeyCode;
import javafx.scene.input.KeyEvent;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.look.TwoColumns;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.words.Words;
import thinclick.protocol.file.Drill;

/** The prompt book: roster lines, material, a sentence a stage, what can be done now. */
public final class LecternView {
  private final LecternModel model;
  private final Words words;
  private final VBox people = new VBox(4);
  private final Label address = new Label();
  private final ListView<Drill> drills = new ListView<>();
  private final Label chosen = styled(new Label(), "heading");
  private final TextField tempo = new TextField();
  private final Label tempoSays = styled(new Label(), "wrong");
  private final VBox plan = new VBox(2);
  private final VBox dealt = new VBox(4);
  private final Button deal = new Button();
  private final Button countIn = new Button();
  private final Button stop = new Button();
  private final List<Node> chosenOnly = new ArrayList<>();
  private final ScrollPane root;

  public LecternView(LecternModel model, Words words, ObservableValue<RoomState> room) {
    this.model = model;
    this.words = words;
    this.root = new ScrollPane(createView());
    root.setFitToWidth(true);
    root.setFocusTraversable(false);
    room.addListener((any, old, now) -> show(now));
    show(room.getValue());
  }

  /** The page. */
  public Node root() {
    return root;
  }

  /** Puts the cursor where one begins. */
  public void begin() {
    if (drills.getSelectionModel().isEmpty()) {
      drills.getSelectionModel().selectFirst();
    }
    drills.requestFocus();
  }

  private Node createView() {
    address.setWrapText(true);
    VBox here =
        new VBox(8, styled(new Label(words.say("lectern.people")), "heading"), people, address);

    TextField looking = new TextField();
    looking.setId("looking");
    looking.setPromptText(words.say("lectern.looking"));
    looking.setAccessibleText(words.say("lectern.looking"));
    looking.textProperty().bindBidirectional(model.lookingProperty());
    drills.setId("drills");
    drills.itemsProperty().bind(model.drillsProperty());
    drills.setPrefHeight(330);
    drills.setAccessibleText(words.say("lectern.material"));
    drills.setCellFactory(list -> new DrillCell());
    drills.addEventFilter(
        KeyEvent.KEY_PRESSED,
        key -> {
          if (key.getCode() == KeyCode.ENTER && !key.isControlDown()) {
            choose();
          }
        });
    VBox material =
        new VBox(8, styled(new Label(words.say("lectern.material")), "heading"), looking, drills);
    VBox left = new VBox(22, here, material);
    left.getStyleClass().add("lectern-left");

    tempo.setId("tempo");
    tempo.setPrefWidth(80);
    tempo.setAccessibleText(words.say("lectern.tempo"));
    tempo.setOnAction(done -> tempoSays.setText(model.tempo(tempo.getText())));
    FlowPane tempoLine =
        new FlowPane(
            10,
            4,
            new Label(words.say("lectern.tempo")),
            tempo,
            new Label(words.say("lectern.tempo.unit")));
    tempoLine.setRowValignment(VPos.BASELINE);
    tempoSays.visibleProperty().bind(tempoSays.textProperty().isNotEmpty());
    tempoSays.managedProperty().bind(tempoSays.visibleProperty());
    button(deal, "deal", model::deal);
    button(countIn, "countIn", model::countIn);
    button(stop, "stop", model::stop);
    CheckBox plays = new CheckBox(words.say("lectern.plays"));
    plays.setId("leader-plays");
    plays.selectedProperty().bindBidirectional(model.leaderPlaysProperty());
    plays.setWrapText(true);
    FlowPane commands = new FlowPane(14, 10, deal, countIn, stop);
    Label click = styled(new Label(words.say("lectern.plan")), "soft");
    chosenOnly.addAll(List.of(tempoLine, click));
    VBox right =
        styled(
            new VBox(14, chosen, tempoLine, tempoSays, click, plan, dealt, plays, commands),
            "sheet");
    right.getStyleClass().add("lectern-right");
    VBox page = styled(new VBox(new TwoColumns(left, right, 0, 36)), "page");
    return page;
  }

  private void button(Button button, String what, Runnable does) {
    button.setId(what);
    button.setText(words.say("lectern." + what));
    button.setOnAction(done -> does.run());
  }

  private void choose() {
    Drill selected = drills.getSelectionModel().getSelectedItem();
    if (selected != null) {
      model.choose(selected);
    }
  }

  private void show(RoomState room) {
    fill(people, model.people(), words.say("lectern.people.none"));
    address.setText(
        room.address().isEmpty() ? "" : words.say("lectern.address", room.address(), room.word()));
    Drill drill = model.chosen();
    chosen.setText(drill == null ? words.say("lectern.choose") : drill.title());
    tempo.setDisable(drill == null || !model.canDeal());
    if (!tempo.isFocused()) {
      tempo.setText(drill == null ? "" : Long.toString(Math.round(model.tempoOf(drill))));
    }
    chosenOnly.forEach(node -> shown(node, drill != null));
    fill(plan, model.plan(), "");
    fill(dealt, model.dealt(), words.say("lectern.undealt"));
    deal.setDisable(!model.canDeal());
    countIn.setDisable(!model.canCountIn());
    stop.setDisable(!model.canStop());
    drills.setDisable(!room.leader() || !room.betweenTakes());
  }

  private static void shown(Node node, boolean shown) {
    node.setVisible(shown);
    node.setManaged(shown);
  }

  private static void fill(VBox box, List<String> lines, String none) {
    List<String> shown = lines.isEmpty() && !none.isEmpty() ? List.of(none) : lines;
    box.getChildren()
        .setAll(
            shown.stream()
                .map(
                    line -> {
                      Label label = new Label(line);
                      label.setWrapText(true);
                      if (lines.isEmpty()) {
                        label.getStyleClass().add("soft");
                      }
                      return (Node) label;
                    })
                .toList());
  }

  private static <N extends Node> N styled(N node, String style) {
    node.getStyleClass().add(style);
    return node;
  }

  /** One line of the list; a click on it or Enter chooses. */
  private final class DrillCell extends ListCell<Drill> {
    DrillCell() {
      setOnMouseClicked(done -> choose());
    }

    @Override
    protected void updateItem(@Nullable Drill drill, boolean empty) {
      super.updateItem(drill, empty);
      setText(drill == null || empty ? "" : model.line(drill));
    }
  }
}

package thinclick.client.window.lectern;

import static thinclick.client.window.look.Styled.styled;

import javafx.scene.AccessibleRole;
import javafx.scene.canvas.Canvas;
import javafx.scene.canvas.GraphicsContext;
import javafx.scene.control.Button;
import javafx.scene.control.Label;
import javafx.scene.input.Clipboard;
import javafx.scene.input.ClipboardContent;
import javafx.scene.layout.FlowPane;
import javafx.scene.layout.VBox;
import javafx.scene.paint.Color;
import org.jspecify.annotations.Nullable;
import thinclick.client.window.look.InView;
import thinclick.client.window.look.Prose;
import thinclick.client.window.words.Words;
import thinclick.protocol.invite.JoinLink;
import thinclick.protocol.invite.QrCode;

/** The way in for others: the sentence to call, the link to copy, its QR code to photograph. */
final class InviteView {
  /** Pixels a module: read across a desk, and still narrower than the roster. */
  private static final int MODULE = 6;

  /** Where what is said stands below the code, so that it is seen with it in a small window. */
  private static final int SMALLER_MODULE = 5;

  private static final double GAP = 16;

  private final InviteModel model;
  private final Words words;
  private final Label address = Prose.in(new Label());
  private final LinkLines link = new LinkLines();
  private final Button code;
  private final FlowPane ways;
  private final Canvas picture = new Canvas();
  private final Label firewall = Prose.in(styled(new Label(), "soft"));
  private final Beside beside;
  private final VBox root;
  private boolean codeShown;
  private @Nullable JoinLink drawn;

  InviteView(InviteModel model, Words words) {
    this.model = model;
    this.words = words;
    address.setId("address");
    link.setId("join-link");
    link.setAccessibleRole(AccessibleRole.TEXT);
    Button copy =
        styled(
            Keyed.button("copy-link", words.say("lectern.invite.copy"), "", this::copy), "quiet");
    code =
        styled(
            Keyed.button("show-code", words.say("lectern.invite.show"), "", this::turn), "quiet");
    ways = new FlowPane(18, 8, copy, code);
    picture.setId("join-code");
    picture.setAccessibleText(words.say("lectern.invite.picture"));
    firewall.setId("firewall");
    VBox said = new VBox(8, address, link, ways);
    beside = new Beside(said, picture, firewall, GAP);
    beside.widthProperty().addListener(any -> drawAgain());
    root = new VBox(beside);
  }

  VBox root() {
    return root;
  }

  private void copy() {
    ClipboardContent content = new ClipboardContent();
    content.putString(link.link());
    Clipboard.getSystemClipboard().setContent(content);
  }

  private void turn() {
    codeShown = !codeShown;
    show();
    if (codeShown) {
      InView.bring(picture);
    }
  }

  /** Shows what is true now. */
  void show() {
    JoinLink now = model.link();
    address.setText(model.address());
    link.show(now == null ? "" : now.toString());
    link.setAccessibleText(words.say("lectern.invite.link") + " " + link.link());
    Keyed.shown(link, now != null);
    Keyed.shown(ways, now != null);
    Keyed.shown(picture, now != null && codeShown);
    code.setText(words.say(codeShown ? "lectern.invite.hide" : "lectern.invite.show"));
    firewall.setText(model.firewall());
    Keyed.shown(firewall, !firewall.getText().isEmpty());
    if (now != null && codeShown && !now.equals(drawn)) {
      drawn = now;
      draw(now);
    }
  }

  private void drawAgain() {
    JoinLink now = drawn;
    if (now != null) {
      draw(now);
    }
  }

  /** Dark on light whatever the window's colours: most cameras read nothing else. */
  private void draw(JoinLink now) {
    QrCode qr = QrCode.of(now.toString());
    boolean room = beside.holdsBeside(beside.getWidth(), (double) qr.side() * MODULE);
    int module = room ? MODULE : SMALLER_MODULE;
    double side = (double) qr.side() * module;
    picture.setWidth(side);
    picture.setHeight(side);
    GraphicsContext paint = picture.getGraphicsContext2D();
    paint.setFill(Color.WHITE);
    paint.fillRect(0, 0, side, side);
    paint.setFill(Color.BLACK);
    for (int row = 0; row < qr.side(); row++) {
      for (int column = 0; column < qr.side(); column++) {
        if (qr.dark(column, row)) {
          paint.fillRect((double) column * module, (double) row * module, module, module);
        }
      }
    }
  }
}

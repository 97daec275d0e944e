package thinclick.client.window.look;

import javafx.scene.Node;

/** A part of the window by the name that the stylesheet has for it. */
public final class Styled {
  private Styled() {}

  /** Gives a node a style class, and the node back. */
  public static <N extends Node> N styled(N node, String style) {
    node.getStyleClass().add(style);
    return node;
  }
}

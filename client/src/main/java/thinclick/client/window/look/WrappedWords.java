package thinclick.client.window.look;

import javafx.scene.Node;
import javafx.scene.layout.StackPane;

/**
 * Words in a flow that take another line where they are longer than the page: a flow asks for the
 * height of one line alone, and would end them in dots.
 */
public final class WrappedWords extends StackPane {
  /** The words, which have a most of width of their own to keep to. */
  public WrappedWords(Node... words) {
    super(words);
  }

  @Override
  protected double computePrefHeight(double width) {
    double most = getMaxWidth();
    boolean unasked = width < 0 && most > 0;
    return super.computePrefHeight(unasked ? Math.min(prefWidth(-1), most) : width);
  }
}

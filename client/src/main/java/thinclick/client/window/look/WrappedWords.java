package thinclick.client.window.stand;

import javafx.scene.Node;
import javafx.scene.layout.StackPane;

/**
 * Words in a flow that take another line where they are longer than the page: a flow asks for the
 * height of one line alone, and would end them in dots.
 */
final class WrappedWords extends StackPane {
  WrappedWords(Node... words) {
    super(words);
  }

  @Override
  protected double computePrefHeight(double width) {
    double most = getMaxWidth();
    boolean unasked = width < 0 && most > 0;
    return super.computePrefHeight(unasked ? Math.min(prefWidth(-1), most) : width);
  }
}

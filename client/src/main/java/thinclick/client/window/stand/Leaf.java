package thinclick.client.window.stand;

/**
 * Which page is in view.
 *
 * @param page from 0
 * @param pages how many there are; 0 where nothing is dealt
 * @param firstBar the first bar on it, from 0
 * @param endBar the first bar after it, from 0
 * @param bars how many the part has
 * @param keepsOver whether a bar that is over stays in view, so that its marks are seen at once
 * @param withOthers whether lines for other players stand below the part
 */
record Leaf(
    int page,
    int pages,
    int firstBar,
    int endBar,
    int bars,
    boolean keepsOver,
    boolean withOthers) {
  /** Nothing is dealt. */
  static final Leaf NONE = new Leaf(0, 0, 0, 0, 0, true, false);

  boolean last() {
    return page == pages - 1;
  }
}

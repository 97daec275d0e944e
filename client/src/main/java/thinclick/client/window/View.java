package thinclick.client.window;

/** The pages of the window. */
enum View {
  /** Where one comes in. */
  DOOR("door", 0),
  /** What is practised alone, and with whom; outside a room. */
  PRACTICE("practice", 0),
  /** What this chair is late by. */
  CHECK("check", 1),
  /** The player's page. */
  STAND("stand", 2),
  /** The leader's page. */
  LECTERN("lectern", 3),
  /** What the last take was worth. */
  REVIEW("review", 5),
  /** A class over its weeks. */
  SEASON("season", 6),
  /** How the window looks, and its keys. */
  SETTINGS("settings", 7),
  /** How a class, a duo and a clinic go, step by step; by F1. */
  HELP("help", 0);

  private final String key;
  private final int digit;

  View(String key, int digit) {
    this.key = key;
    this.digit = digit;
  }

  /** Its name among the words, as {@code view.stand}. */
  String key() {
    return "view." + key;
  }

  /** The digit that, with Ctrl, goes to it; 0 for none. */
  int digit() {
    return digit;
  }
}

package thinclick.server.command;

/** Rooms that are open in another program and that a renaming does not reach. */
final class StillSaid {
  private StillSaid() {}

  /** What is to be done about them, a sentence. */
  static String says(int rooms, String from, String to) {
    return (rooms == 1 ? "An open room still says " : "Open rooms still say ")
        + from
        + ": "
        + from
        + " leaves there and comes in anew as "
        + to
        + ", or the next takes say the old name again.";
  }
}

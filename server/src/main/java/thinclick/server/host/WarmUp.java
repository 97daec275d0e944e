package thinclick.server.host;

import thinclick.server.room.DealMaker;
import thinclick.server.room.Shelf;

/**
 * What a host does before anybody comes, once, on a thread that nobody waits for: what is done for
 * the first time takes a hundred times as long as later, and on one core everybody who plays waits
 * for it.
 */
final class WarmUp {
  /** The first compiler takes up what has been called 200 times. */
  private static final int ROUNDS = 220;

  /** What is refused goes the same few ways for all messages. */
  private static final int ROUNDS_A_REFUSAL = 8;

  private final Shelf shelf;
  private final DealMaker dealer;

  WarmUp(Shelf shelf, DealMaker dealer) {
    this.shelf = shelf;
    this.dealer = dealer;
  }

  /** One take in an empty room, with every message: what any host does, however short it stays. */
  void once() {
    play(0);
  }

  /** The way of strangers to the refusal, by calls at the own port; then takes in empty rooms. */
  void run(int port) {
    OwnCalls.call(port, ROUNDS);
    for (int round = 0; round < ROUNDS; round++) {
      play(round);
    }
  }

  private void play(int round) {
    String title = shelf.list().drills().get(0).title();
    new EmptyRoom(shelf, dealer, title, round, round % ROUNDS_A_REFUSAL == 0).play();
  }
}

package thinclick.client.link;

import java.util.concurrent.CompletableFuture;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.message.QuestionMessage;
import thinclick.protocol.message.TakePieces;

/**
 * One take that is asked for as a file: in one frame where it fits, else piece by piece, and from
 * the first again where it has grown meanwhile. Lives on the link's thread.
 */
final class KeptTakes {
  /** Attacks that come late are all in after that. */
  private static final int MOST_TRIES = 3;

  /** A host gives first pieces two seconds apart. */
  private static final long AGAIN_NANOS = 2_200_000_000L;

  private final Conversation talk;
  private final LinkLoop loop;
  private TakePieces pieces = new TakePieces();
  private boolean inPieces;
  private boolean changed;
  private int tries;

  KeptTakes(Conversation talk, LinkLoop loop) {
    this.talk = talk;
    this.loop = loop;
  }

  /** Asks for it; completes once the listener has it. */
  CompletableFuture<Long> ask(String takeId) {
    loop.run(
        () ->
            talk.onPiece(
                piece -> {
                  inPieces = true;
                  changed = !pieces.add(piece);
                }));
    return piece(takeId, 1);
  }

  private CompletableFuture<Long> piece(String takeId, int number) {
    return talk.request((id, seen) -> new QuestionMessage.KeepTake(id, takeId, number))
        .thenComposeAsync(revision -> come(takeId, revision), loop::run);
  }

  private CompletableFuture<Long> come(String takeId, long revision) {
    if (!inPieces) {
      return CompletableFuture.completedFuture(revision); // it came in one frame
    }
    if (changed) {
      return again(takeId, "the take changed while it was sent");
    }
    if (!pieces.complete()) {
      return piece(takeId, pieces.next());
    }
    try {
      talk.gathered(pieces.take());
      return CompletableFuture.completedFuture(revision);
    } catch (BadInput damaged) {
      return again(takeId, String.valueOf(damaged.getMessage()));
    }
  }

  private CompletableFuture<Long> again(String takeId, String why) {
    tries++;
    pieces = new TakePieces();
    changed = false;
    inPieces = false;
    if (tries >= MOST_TRIES) {
      return CompletableFuture.failedFuture(
          new BadInput("takeId", "expected a take that stays as it is: " + why));
    }
    CompletableFuture<Long> later = new CompletableFuture<>();
    loop.at(loop.nanos() + AGAIN_NANOS, () -> later.complete(0L));
    return later.thenComposeAsync(any -> piece(takeId, 1), loop::run);
  }
}

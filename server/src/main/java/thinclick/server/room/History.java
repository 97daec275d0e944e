package thinclick.server.room;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import thinclick.protocol.message.ServerMessage;

/** The last things that were said to all, so that who missed some can be told just those. */
final class History {
  /** As many as one {@code changes} holds. */
  static final int LONGEST = 256;

  private final Deque<Said> kept = new ArrayDeque<>();
  private long knownFrom;

  private record Said(long revision, ServerMessage message) {}

  /** Everything before this revision is no longer known; what follows will be. */
  void startAt(long revision) {
    kept.clear();
    knownFrom = revision;
  }

  void add(long revision, ServerMessage message) {
    kept.addLast(new Said(revision, message));
    if (kept.size() > LONGEST) {
      knownFrom = kept.removeFirst().revision();
    }
  }

  /** What was said after that revision; empty where that is not known any more. */
  Optional<List<ServerMessage>> after(long revision) {
    if (revision < knownFrom) {
      return Optional.empty();
    }
    return Optional.of(
        kept.stream().filter(said -> said.revision() > revision).map(Said::message).toList());
  }
}

package thinclick.client.link;

import java.io.IOException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import thinclick.protocol.message.ServerMessage.Done;
import thinclick.protocol.message.ServerMessage.Problem;

/** Commands that wait for their answer. Lives on the link's thread. */
final class Requests {
  private final Map<Long, CompletableFuture<Long>> waiting = new HashMap<>();
  private long nextId = 1;

  /** A fresh number whose answer goes to {@code answer}. */
  long begin(CompletableFuture<Long> answer) {
    waiting.put(nextId, answer);
    return nextId++;
  }

  void done(Done done) {
    CompletableFuture<Long> answer = waiting.remove(done.requestId());
    if (answer != null) {
      answer.complete(done.revision());
    }
  }

  void refused(Problem problem) {
    CompletableFuture<Long> answer =
        problem.requestId() == null ? null : waiting.remove(problem.requestId());
    if (answer != null) {
      answer.completeExceptionally(new CommandRefused(problem));
    }
  }

  /** Nobody knows whether they were carried out. */
  void cut(String says) {
    List<CompletableFuture<Long>> lost = List.copyOf(waiting.values());
    waiting.clear();
    lost.forEach(answer -> answer.completeExceptionally(new IOException(says)));
  }
}

package thinclick.client.window.session;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.Executor;
import java.util.function.Consumer;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import thinclick.client.link.CommandRefused;
import thinclick.client.link.RoomLink;
import thinclick.client.window.words.Refused;
import thinclick.protocol.message.ErrorCode;

/**
 * What a room is asked for, one at a time: a command names the room as it was last seen, so two at
 * once would have the second refused.
 */
final class Questions {
  private final Executor windowThread;
  private CompletableFuture<Long> asked = CompletableFuture.completedFuture(0L);

  Questions(Executor windowThread) {
    this.windowThread = windowThread;
  }

  /**
   * Asks once what was asked before has been answered.
   *
   * @param answered told, on the window's thread, why not; nothing where it was done
   */
  void ask(
      RoomLink link,
      Function<RoomLink, CompletableFuture<Long>> command,
      Consumer<Refused> answered) {
    asked =
        asked
            .handle((done, refused) -> link)
            .thenCompose(command)
            .whenCompleteAsync(
                (revision, refused) -> {
                  Throwable why = refused instanceof CompletionException ? cause(refused) : refused;
                  answered.accept(refused(why));
                },
                windowThread);
  }

  /** Nothing that was asked is waited for any more. */
  void forget() {
    asked = CompletableFuture.completedFuture(0L);
  }

  private static Refused refused(@Nullable Throwable why) {
    if (why == null) {
      return Refused.NOTHING;
    }
    ErrorCode code = why instanceof CommandRefused command ? command.code() : null;
    return new Refused(code, String.valueOf(why.getMessage()));
  }

  private static Throwable cause(Throwable wrapped) {
    return wrapped.getCause() == null ? wrapped : wrapped.getCause();
  }
}

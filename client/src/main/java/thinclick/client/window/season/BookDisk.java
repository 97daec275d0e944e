package thinclick.client.window.season;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.Executor;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.Consumer;
import java.util.function.Function;
import thinclick.client.window.session.Session;
import thinclick.client.window.words.Words;
import thinclick.protocol.json.BadInput;
import thinclick.protocol.time.Daemon;
import thinclick.server.host.ClassBook;

/**
 * The book of the classes on the disk, which is waited for elsewhere: one thing is done after the
 * other, and what comes of it is told on the window's thread.
 */
final class BookDisk implements AutoCloseable {
  private final Session session;
  private final Executor windowThread;
  private final Words words;
  private final ExecutorService disk =
      Executors.newSingleThreadExecutor(Daemon.called("thinclick-classes"));

  BookDisk(Session session, Executor windowThread, Words words) {
    this.session = session;
    this.windowThread = windowThread;
    this.words = words;
  }

  /**
   * Does something with the book. Once the window is closing nothing is begun any more.
   *
   * @param then told what it came to
   * @param complains told in a sentence why it could not be done
   */
  <T> void work(Function<ClassBook, T> does, Consumer<T> then, Consumer<String> complains) {
    if (disk.isShutdown()) {
      return;
    }
    CompletableFuture<?> unused =
        CompletableFuture.supplyAsync(() -> session.classes(does), disk)
            .whenCompleteAsync(
                (done, failed) -> {
                  if (failed != null) {
                    complains.accept(why(failed));
                  } else {
                    then.accept(done);
                  }
                },
                windowThread);
  }

  private String why(Throwable failed) {
    Throwable cause = failed instanceof CompletionException ? failed.getCause() : failed;
    String why =
        cause instanceof BadInput bad
            ? words.say(bad)
            : words.say("season.unexpected", String.valueOf(cause));
    return Words.sentence(words.say("season.not", why));
  }

  @Override
  public void close() {
    disk.shutdown();
  }
}

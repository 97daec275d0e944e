package thinclick.client.window.session;

import static org.awaitility.Awaitility.await;

import java.time.Duration;
import java.util.concurrent.Callable;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;

/** The window's thread of sessions without a window: what is done on it, asked, waited for. */
public abstract class PlainThread {
  private static final Duration PATIENCE = Duration.ofSeconds(120);

  protected final ExecutorService windowThread = Executors.newSingleThreadExecutor();

  protected final void run(Runnable task) {
    CompletableFuture.runAsync(task, windowThread).join();
  }

  protected final <T> T on(Callable<T> asked) {
    try {
      return windowThread.submit(asked).get();
    } catch (Exception failed) {
      throw new IllegalStateException(failed);
    }
  }

  protected final void until(Callable<Boolean> holds) {
    await().atMost(PATIENCE).until(() -> on(holds));
  }
}

package thinclick.client.log;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What nobody foresaw: attacks first, then a file on this computer. */
class MishapTest {
  @TempDir Path folder;

  private final List<String> order = new ArrayList<>();
  private final List<Path> told = new ArrayList<>();

  @Test
  void whatWasPlayedIsKeptBeforeTheFileIsWritten() throws Exception {
    Mishap mishap =
        new Mishap(
            folder,
            () -> order.add("attacks, with " + files().size() + " files there"),
            file -> {
              order.add("file");
              told.add(file);
            });
    Thread thread = new Thread(() -> fail(7), "some thread");
    thread.setUncaughtExceptionHandler(mishap);
    thread.start();
    thread.join();
    assertThat(order).containsExactly("attacks, with 0 files there", "file");
    assertThat(told.get(0))
        .content()
        .startsWith(
            "Something went wrong in Thinclick that nobody foresaw. Nothing of it was sent.")
        .contains("thread  some thread", "IllegalStateException: seven", "MishapTest.fail");
  }

  @Test
  void whereTheAttacksCannotBeKeptTheFileIsWrittenAllTheSame() {
    Mishap mishap =
        new Mishap(
            folder,
            () -> {
              throw new IllegalArgumentException("no disk");
            },
            told::add);
    mishap.uncaughtException(Thread.currentThread(), new IllegalStateException());
    assertThat(told.get(0)).content().contains("no disk");
  }

  @Test
  void whatGoesWrongAtEveryTurnIsWrittenOnceAndFiveFilesAreKept() {
    for (int run = 0; run < 3; run++) {
      Mishap mishap = new Mishap(folder, () -> order.add("kept"), told::add);
      for (int turn = 0; turn < 50; turn++) {
        mishap.uncaughtException(Thread.currentThread(), failed());
      }
      for (int other = 0; other < 9; other++) {
        IllegalStateException one = new IllegalStateException();
        one.setStackTrace(
            new StackTraceElement[] {new StackTraceElement("Some", "where", "Some.java", other)});
        mishap.uncaughtException(Thread.currentThread(), one);
      }
    }
    assertThat(order).as("five a run").hasSize(3 * Mishap.MOST);
    assertThat(files()).hasSize(Mishap.MOST);
  }

  private static IllegalStateException failed() {
    return new IllegalStateException("again");
  }

  private static void fail(int number) {
    if (number > 0) {
      throw new IllegalStateException("seven");
    }
  }

  private List<Path> files() {
    try (Stream<Path> all = Files.list(folder)) {
      return all.toList();
    } catch (IOException unreadable) {
      throw new AssertionError(unreadable);
    }
  }
}

package thinclick.client.log;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Stream;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * What is done where a thread ends in something that nobody foresaw: what was played goes to disk
 * first, then what went wrong, as a text file of its own. The window goes on where it can; nothing
 * is sent.
 */
public final class Mishap implements Thread.UncaughtExceptionHandler {
  /** So many files are written in one run; what goes wrong at every turn would fill the disk. */
  static final int MOST = 5;

  private static final Logger LOG = LoggerFactory.getLogger(Mishap.class);
  private static final String STEM = "mishap-";

  private final Path folder;
  private final Runnable keepFirst;
  private final Consumer<Path> told;
  private final Set<String> known = new HashSet<>();

  /**
   * @param folder where the files are written
   * @param keepFirst brings what was played to disk; must not take long
   * @param told which file tells what happened; on the thread that ended
   */
  public Mishap(Path folder, Runnable keepFirst, Consumer<Path> told) {
    this.folder = folder;
    this.keepFirst = keepFirst;
    this.told = told;
  }

  @Override
  public synchronized void uncaughtException(Thread thread, Throwable fault) {
    StackTraceElement[] where = fault.getStackTrace();
    boolean fresh = known.add(fault.getClass() + (where.length == 0 ? "" : " " + where[0]));
    if (!fresh || known.size() > MOST) {
      return;
    }
    try {
      keepFirst.run();
    } catch (RuntimeException notKept) {
      fault.addSuppressed(notKept);
    }
    LOG.error("{} in {}", fault.getClass().getName(), thread.getName());
    write(thread, fault);
  }

  private void write(Thread thread, Throwable fault) {
    try {
      Files.createDirectories(folder);
      dropOldest();
      Instant now = Instant.now().truncatedTo(ChronoUnit.MILLIS);
      String stamp = now.toString().replace(":", "");
      Path file = folder.resolve(STEM + stamp + "-" + known.size() + ".txt");
      Files.writeString(file, text(now, thread, fault));
      told.accept(file);
    } catch (IOException unwritable) {
      LOG.warn("it cannot be written down: {}", unwritable.getClass().getSimpleName());
    }
  }

  private static String text(Instant now, Thread thread, Throwable fault) {
    StringWriter trace = new StringWriter();
    fault.printStackTrace(new PrintWriter(trace, true));
    Package of = Mishap.class.getPackage();
    String version =
        of == null || of.getImplementationVersion() == null
            ? "unpacked"
            : of.getImplementationVersion();
    return String.join(
        System.lineSeparator(),
        "Something went wrong in Thinclick that nobody foresaw. Nothing of it was sent.",
        "Whoever mends Thinclick can use this file. It may hold names that were written in the"
            + " window: read it before you pass it on.",
        "",
        "when    " + now,
        "version " + version,
        "Java    " + System.getProperty("java.version"),
        "system  " + System.getProperty("os.name") + " " + System.getProperty("os.version"),
        "thread  " + thread.getName(),
        "",
        trace.toString());
  }

  /** One is written next, so one less than may be kept stays. */
  private void dropOldest() throws IOException {
    List<Path> files;
    try (Stream<Path> all = Files.list(folder)) {
      files = all.filter(file -> file.getFileName().toString().startsWith(STEM)).sorted().toList();
    }
    for (int i = 0; i <= files.size() - MOST; i++) {
      Files.delete(files.get(i));
    }
  }
}

package thinclick.client.log;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.LoggerContext;
import ch.qos.logback.classic.filter.ThresholdFilter;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.core.ConsoleAppender;
import ch.qos.logback.core.encoder.Encoder;
import ch.qos.logback.core.encoder.LayoutWrappingEncoder;
import ch.qos.logback.core.rolling.FixedWindowRollingPolicy;
import ch.qos.logback.core.rolling.RollingFileAppender;
import ch.qos.logback.core.rolling.SizeBasedTriggeringPolicy;
import ch.qos.logback.core.util.Duration;
import ch.qos.logback.core.util.FileSize;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.jspecify.annotations.Nullable;
import org.slf4j.LoggerFactory;

/**
 * A window's log on disk: {@link #FILES} files of at most {@link #MOST_BYTES}, the newest without a
 * number. What goes there are events from INFO up, which name no player and no room word; the
 * terminal shows what it showed before. Of several windows of one user the first writes.
 */
public final class OwnLog implements AutoCloseable {
  /** The newest file. */
  public static final String NAME = "thinclick.log";

  /** So many are kept, the newest included. */
  static final int FILES = 5;

  /** A file that is longer is put aside before the next line. */
  static final long MOST_BYTES = 1 << 20;

  private static final String APPENDER = "window";

  private final Logger root;
  private final @Nullable Level before;
  private final @Nullable RollingFileAppender<ILoggingEvent> file;
  private final @Nullable ConsoleAppender<ILoggingEvent> terminal;
  private final @Nullable FileChannel channel;

  private OwnLog(
      Logger root,
      @Nullable RollingFileAppender<ILoggingEvent> file,
      @Nullable ConsoleAppender<ILoggingEvent> terminal,
      @Nullable FileChannel channel) {
    this.root = root;
    this.before = root.getLevel();
    this.file = file;
    this.terminal = terminal;
    this.channel = channel;
  }

  /** Begins to write into a folder; a folder that cannot be written costs the log alone. */
  public static OwnLog into(Path folder) {
    LoggerContext context = (LoggerContext) LoggerFactory.getILoggerFactory();
    Logger root = context.getLogger(org.slf4j.Logger.ROOT_LOGGER_NAME);
    FileChannel channel = mine(folder);
    if (channel == null
        || !(root.getAppender("err") instanceof ConsoleAppender<ILoggingEvent> terminal)) {
      return new OwnLog(root, null, null, channel);
    }
    RollingFileAppender<ILoggingEvent> file = file(context, folder, terminal);
    OwnLog log = new OwnLog(root, file, terminal, channel);
    // The terminal goes on to show what it showed; the file begins at INFO, also where more is
    // shown.
    terminal.addFilter(from(context, root.getEffectiveLevel()));
    file.addFilter(from(context, Level.INFO));
    root.addAppender(file);
    if (root.getEffectiveLevel().isGreaterOrEqual(Level.INFO)) {
      root.setLevel(Level.INFO);
    }
    return log;
  }

  /** The lock by which a folder is this window's; null where it is another's or cannot be had. */
  private static @Nullable FileChannel mine(Path folder) {
    try {
      Files.createDirectories(folder);
      FileChannel channel =
          FileChannel.open(
              folder.resolve(NAME + ".lock"), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
      FileLock lock = lock(channel);
      if (lock == null) {
        channel.close();
        return null;
      }
      return channel;
    } catch (IOException unwritable) {
      LoggerFactory.getLogger(OwnLog.class)
          .warn("no log is kept on disk: {}", unwritable.getClass().getSimpleName());
      return null;
    }
  }

  private static @Nullable FileLock lock(FileChannel channel) throws IOException {
    try {
      return channel.tryLock();
    } catch (OverlappingFileLockException here) {
      return null; // another window of this very program
    }
  }

  private static RollingFileAppender<ILoggingEvent> file(
      LoggerContext context, Path folder, ConsoleAppender<ILoggingEvent> like) {
    RollingFileAppender<ILoggingEvent> file = new RollingFileAppender<>();
    file.setContext(context);
    file.setName(APPENDER);
    file.setFile(folder.resolve(NAME).toString());
    LayoutWrappingEncoder<ILoggingEvent> encoder = new LayoutWrappingEncoder<>();
    encoder.setContext(context);
    Encoder<ILoggingEvent> lines = like.getEncoder();
    if (lines instanceof LayoutWrappingEncoder<ILoggingEvent> laid) {
      encoder.setLayout(laid.getLayout());
    }
    encoder.start();
    file.setEncoder(encoder);
    FixedWindowRollingPolicy numbered = new FixedWindowRollingPolicy();
    numbered.setContext(context);
    numbered.setParent(file);
    numbered.setMinIndex(1);
    numbered.setMaxIndex(FILES - 1);
    numbered.setFileNamePattern(folder.resolve("thinclick.%i.log").toString());
    numbered.start();
    SizeBasedTriggeringPolicy<ILoggingEvent> full = new SizeBasedTriggeringPolicy<>();
    full.setContext(context);
    full.setMaxFileSize(new FileSize(MOST_BYTES));
    full.setCheckIncrement(Duration.buildByMilliseconds(0)); // before every line
    full.start();
    file.setRollingPolicy(numbered);
    file.setTriggeringPolicy(full);
    file.start();
    return file;
  }

  private static ThresholdFilter from(LoggerContext context, Level level) {
    ThresholdFilter filter = new ThresholdFilter();
    filter.setContext(context);
    filter.setLevel(level.levelStr);
    filter.start();
    return filter;
  }

  /** Nothing more is written; the terminal is as it was. */
  @Override
  public void close() {
    if (file != null && terminal != null) {
      root.detachAppender(file);
      file.stop();
      terminal.clearAllFilters();
      root.setLevel(before);
    }
    if (channel != null) {
      try {
        channel.close(); // lets the lock go
      } catch (IOException gone) {
        // The folder is gone, and the lock with it.
      }
    }
  }
}

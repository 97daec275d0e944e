package thinclick.server.host;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import thinclick.protocol.json.BadInput;

/**
 * One host a database: a lock on a file beside it, which the system takes away when the process
 * dies. (SQLite's own locks let several writers in, and a second host would take the rooms of the
 * first.)
 */
public final class HostLock implements AutoCloseable {
  private final FileChannel file;

  private HostLock(FileChannel file) {
    this.file = file;
  }

  /** Takes the lock; {@code BadInput} where another process has it. */
  public static HostLock of(Path database) {
    Path beside = database.resolveSibling(database.getFileName() + ".lock");
    FileChannel file;
    try {
      file = FileChannel.open(beside, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
    } catch (IOException problem) {
      throw new BadInput(
          "--db", "expected a folder that can be written, found " + problem.getMessage());
    }
    FileLock lock;
    try {
      lock = file.tryLock();
    } catch (IOException | OverlappingFileLockException held) {
      lock = null;
    }
    HostLock made = new HostLock(file);
    if (lock == null) {
      made.close();
      throw new BadInput("--db", "expected a database that no other host has, found " + database);
    }
    return made;
  }

  @Override
  public void close() {
    try {
      file.close();
    } catch (IOException gone) {
      // Nothing is left to let go.
    }
  }
}

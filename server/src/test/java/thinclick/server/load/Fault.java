package thinclick.server.load;

/** What goes wrong in a run. */
enum Fault {
  CUT(false),
  HALF_OPEN(false),
  DUPLICATES(false),
  REORDERED(false),
  HOSTILE_TEXT(false),
  SLOW_READER(false),
  CLOCK_JUMP(false),
  TWO_AT_ONCE(false),
  KILL(true),
  FULL_DISK(true),
  /** Killed once the journal is synced and before anybody is told; needs the C library. */
  KILL_AFTER_COMMIT(true),
  /** Needs the C library. */
  FAILING_SYNC(true);

  private final boolean ofTheProcess;

  Fault(boolean ofTheProcess) {
    this.ofTheProcess = ofTheProcess;
  }

  /** True where the host is a process of its own, so that it can be killed or starved. */
  boolean ofTheProcess() {
    return ofTheProcess;
  }

  /** True where the disk is told what to do by a library loaded before the C library. */
  boolean needsLibrary() {
    return this == KILL_AFTER_COMMIT || this == FAILING_SYNC;
  }
}

package thinclick.client.link;

import thinclick.protocol.message.ErrorCode;
import thinclick.protocol.message.ServerMessage.Problem;

/** The server did not carry out a command; the message says why, in its words. */
public final class CommandRefused extends RuntimeException {
  private static final long serialVersionUID = 1L;

  private final ErrorCode code;

  CommandRefused(Problem problem) {
    super(problem.says());
    this.code = problem.code();
  }

  /** The documented code. */
  public ErrorCode code() {
    return code;
  }
}

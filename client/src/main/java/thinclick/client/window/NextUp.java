package thinclick.client.window;

import thinclick.client.window.lectern.LecternDesk;
import thinclick.client.window.lectern.Proposals;
import thinclick.client.window.review.ReviewCommands;
import thinclick.client.window.session.Session;

/** What the lectern proposes next, as the review's button says and does it for whoever leads. */
final class NextUp {
  private NextUp() {}

  /** The proposal as it stands whenever it is asked for. */
  static ReviewCommands.Next of(Session session, LecternDesk lectern, Runnable turnToStand) {
    return new ReviewCommands.Next(
        () -> {
          Proposals.Line line = session.state().leader() ? lectern.proposals().line() : null;
          return line == null ? "" : line.says();
        },
        () -> session.state().leader() && session.state().betweenTakes(),
        () -> {
          Proposals.Line line = lectern.proposals().line();
          return line != null && line.changes();
        },
        () -> lectern.lesson().asks() ? lectern.prompt().nextStep() : "",
        () -> {
          Proposals.Line line = lectern.proposals().line();
          if (line != null && line.changes()) {
            lectern.proposals().take();
          } else if (lectern.lesson().asks()) {
            lectern.lesson().goOn();
          } else {
            lectern.lectern().deal();
          }
          turnToStand.run();
        });
  }
}

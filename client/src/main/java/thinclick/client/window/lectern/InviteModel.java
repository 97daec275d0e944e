package thinclick.client.window.lectern;

import org.jspecify.annotations.Nullable;
import thinclick.client.window.session.RoomState;
import thinclick.client.window.session.Session;
import thinclick.client.window.words.Words;
import thinclick.protocol.invite.Fingerprint;
import thinclick.protocol.invite.JoinLink;
import thinclick.server.host.RehearsalHost;

/** How others come into the room: in a sentence, as a link, and what may be in their way. */
final class InviteModel {
  private final Session session;
  private final Words words;

  InviteModel(Session session, Words words) {
    this.session = session;
    this.words = words;
  }

  /** How others come in, a sentence; empty outside a room. */
  String address() {
    RoomState room = session.state();
    if (room.address().isEmpty() || room.word().isEmpty()) {
      return "";
    }
    return words.say(
        aloneHere() ? "lectern.address.here" : "lectern.address", room.address(), room.word());
  }

  /** The join link, null where nobody at another computer could come in by it. */
  @Nullable JoinLink link() {
    return aloneHere() ? null : session.invitation();
  }

  /**
   * Where this window hosts for others: the ports that a firewall must let through, and the code by
   * which the host is known again; else empty.
   */
  String firewall() {
    RehearsalHost host = session.hosting();
    if (host == null || host.here()) {
      return "";
    }
    Fingerprint code = host.fingerprint();
    String ports = words.say("lectern.invite.firewall", Integer.toString(host.port()));
    return code == null ? ports : ports + " " + words.say("lectern.invite.code", code.said());
  }

  private boolean aloneHere() {
    RehearsalHost host = session.hosting();
    return host != null && host.here();
  }
}

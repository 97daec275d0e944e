package thinclick.client.link;

/** Where a link stands. */
public enum LinkState {
  /** On the way to the server, not yet welcomed. */
  CONNECTING,
  /** Welcomed: messages pass both ways. */
  ONLINE,
  /** The line is down; attacks are kept and the link tries again by itself. */
  AWAY,
  /** Over for good; it does not try again. */
  CLOSED
}

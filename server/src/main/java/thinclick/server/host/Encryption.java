package thinclick.server.host;

/** Who must come by an encrypted line. */
public enum Encryption {
  /** Everybody at another computer; this computer's own clients may come by a plain line. */
  OTHERS,
  /** Everybody. */
  ALL,
  /** Nobody: what is said can be read and changed by whoever is on the way. */
  NONE
}

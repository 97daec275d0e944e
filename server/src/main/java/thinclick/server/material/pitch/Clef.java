package thinclick.server.material.pitch;

/** The clefs that parts are written in. */
public enum Clef {
  /** G on the second line. */
  TREBLE,
  /** F on the fourth line. */
  BASS,
  /** No pitch: voices of a kit, or rhythm on one line. */
  PERCUSSION
}

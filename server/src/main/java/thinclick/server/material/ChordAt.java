package thinclick.server.material;

import thinclick.server.material.pitch.Chord;

/**
 * A chord from a step on.
 *
 * @param step counted from bar 1
 * @param chord as it sounds
 */
record ChordAt(int step, Chord chord) {}

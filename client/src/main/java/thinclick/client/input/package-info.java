/**
 * Attacks from a player's hands: keys and MIDI notes, stamped when they happen. Rules are pure;
 * called by the window.
 */
@NullMarked
package thinclick.client.input;

import org.jspecify.annotations.NullMarked;

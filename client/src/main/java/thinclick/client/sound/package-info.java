/**
 * The click: which sample sounds when, how the output's own clock is followed, and the one thread
 * that writes it. Rendering and clock are pure; called by the window.
 */
@NullMarked
package thinclick.client.sound;

import org.jspecify.annotations.NullMarked;

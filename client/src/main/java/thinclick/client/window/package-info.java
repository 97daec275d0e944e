/**
 * The desktop window: its start, its shell, the keys, what holds session, sound and input together.
 * Called by the command line.
 */
@NullMarked
package thinclick.client.window;

import org.jspecify.annotations.NullMarked;

/**
 * The page for the back row, in a window of its own: count and bars while a take runs, its ribbon
 * and verdict afterwards. Called by the window's desk.
 */
@NullMarked
package thinclick.client.window.wall;

import org.jspecify.annotations.NullMarked;

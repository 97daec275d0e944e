/**
 * Classes in the window: which one is open, what it has played, and what its leader puts right,
 * carries away or erases. All of it is the host's in this window; nothing is asked of a host
 * elsewhere.
 */
@NullMarked
package thinclick.client.window.season;

import org.jspecify.annotations.NullMarked;

/**
 * Simulated players on a published model of timing, each a real client of its own. Called by the
 * commands and by the window that practises alone.
 */
@NullMarked
package thinclick.client.standin;

import org.jspecify.annotations.NullMarked;

/**
 * Hosts that say in the local network that they are there. Called by the window's door; a typed
 * address does without it.
 */
@NullMarked
package thinclick.client.find;

import org.jspecify.annotations.NullMarked;

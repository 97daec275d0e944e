/**
 * Simulated players on a published timing model, for empty chairs and for trying everything out.
 * The model is arithmetic on values; the player around it is a real client. Called by the commands.
 */
@NullMarked
package thinclick.client.standin;

import org.jspecify.annotations.NullMarked;

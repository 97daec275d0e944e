/**
 * From timestamp exchanges to room time: arithmetic on values that are handed in, in three levels
 * (numbers, samples, packets). Called by the link; knows no socket, timer or clock of its own.
 */
@NullMarked
package thinclick.client.clock;

import org.jspecify.annotations.NullMarked;

/**
 * Clock and timers that are handed in, never fetched, and the threads behind them. Called by
 * everything that measures time or waits.
 */
@NullMarked
package thinclick.protocol.time;

import org.jspecify.annotations.NullMarked;

/**
 * The timing model behind the figures: for each player a hidden position that the timekeeper moves,
 * the hand blurs, and the click and the others correct. Estimation, intervals, forecasts and the
 * account of a line's delay; pure arithmetic on values. Called by the scorer.
 */
@NullMarked
package thinclick.server.scoring.model;

import org.jspecify.annotations.NullMarked;

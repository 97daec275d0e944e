/**
 * The ensemble's score: a take in, a review out; pure arithmetic on values. Called by rooms,
 * commands and the client.
 */
@NullMarked
package thinclick.server.scoring;

import org.jspecify.annotations.NullMarked;

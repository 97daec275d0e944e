/**
 * A lesson as it is run: where it stands, what is left of the hour, and what a substitute who has
 * never seen it says and does before, during and after each take. Pure, its clock is given; called
 * by the leader's page and by {@code compose --lesson}.
 */
@NullMarked
package thinclick.server.lesson;

import org.jspecify.annotations.NullMarked;

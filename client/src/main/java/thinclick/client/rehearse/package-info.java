/**
 * A whole rehearsal that runs by itself: a host, stand-ins over real sockets, the review at the
 * end. Called by the command.
 */
@NullMarked
package thinclick.client.rehearse;

import org.jspecify.annotations.NullMarked;

/**
 * A room as a state machine: events and one reading of the clock in, effects out. No socket, no
 * SQL, no thread, no logger; called by the network's edge, which owns a room on one event loop.
 */
@NullMarked
package thinclick.server.room;

import org.jspecify.annotations.NullMarked;

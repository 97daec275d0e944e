/**
 * One player's connection to a room: the socket, the clock exchanges, the attacks that are not yet
 * acknowledged, the way back after a cut. Called by the window, the stand-ins and the commands.
 */
@NullMarked
package thinclick.client.link;

import org.jspecify.annotations.NullMarked;

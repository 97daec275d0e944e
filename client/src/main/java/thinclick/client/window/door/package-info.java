/** Coming into a room: the name, the room, the three ways in. Called by the window's shell. */
@NullMarked
package thinclick.client.window.door;

import org.jspecify.annotations.NullMarked;

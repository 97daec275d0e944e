/**
 * From recorded Standard MIDI Files to the attacks of a take. Pure: bytes and values in, values
 * out; called by {@code gather}.
 */
@NullMarked
package thinclick.server.gathering;

import org.jspecify.annotations.NullMarked;

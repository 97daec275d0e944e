/**
 * How somebody is asked into a room: the link, the fingerprint in it, its picture. Written by the
 * host and read by clients; values only.
 */
@NullMarked
package thinclick.protocol.invite;

import org.jspecify.annotations.NullMarked;

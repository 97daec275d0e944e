/**
 * The one entry that hosts rooms: options in, a running host out. Called by {@code serve} and by
 * the client.
 */
@NullMarked
package thinclick.server.host;

import org.jspecify.annotations.NullMarked;

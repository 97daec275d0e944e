/**
 * The certificate that a host shows: made once and kept beside the database, or the operator's own.
 * Called by the host when it starts.
 */
@NullMarked
package thinclick.server.identity;

import org.jspecify.annotations.NullMarked;

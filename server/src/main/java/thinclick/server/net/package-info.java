/**
 * The network's edge: the port, the pipeline, frames to events and effects to frames. Everything of
 * Netty lives here; called by the host.
 */
@NullMarked
package thinclick.server.net;

import org.jspecify.annotations.NullMarked;

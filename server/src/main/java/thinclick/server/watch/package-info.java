/**
 * What a host knows of itself: counts, times and pauses, for {@code /metrics}. Fed by the edge,
 * read by whoever operates the host.
 */
@NullMarked
package thinclick.server.watch;

import org.jspecify.annotations.NullMarked;

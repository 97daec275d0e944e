/**
 * What is said of a command line that cannot be followed. Called by the entries of both jars, the
 * server's and the client's.
 */
@NullMarked
package thinclick.server.typed;

import org.jspecify.annotations.NullMarked;

/**
 * The stock of cells, drills and lessons, and what is known of them. Pure; called by rooms,
 * commands and the client.
 */
@NullMarked
package thinclick.server.material;

import org.jspecify.annotations.NullMarked;

/**
 * From a drill and its players to a part for each. Pure and repeatable by seed; called by rooms and
 * commands.
 */
@NullMarked
package thinclick.server.dealing;

import org.jspecify.annotations.NullMarked;

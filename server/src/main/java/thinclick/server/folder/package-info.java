/**
 * A user's own drills and lessons in a folder, beside the stock. Reads files; called by commands
 * and by whoever hosts rooms.
 */
@NullMarked
package thinclick.server.folder;

import org.jspecify.annotations.NullMarked;

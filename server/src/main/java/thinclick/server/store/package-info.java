/**
 * What is kept on the host's disk: rooms, takes and attacks in one SQLite file, written by one
 * thread in groups and acknowledged only once they are on the disk. Called by the host and by the
 * commands that read what is kept.
 */
@NullMarked
package thinclick.server.store;

import org.jspecify.annotations.NullMarked;

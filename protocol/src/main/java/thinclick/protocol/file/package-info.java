/**
 * What stands in files: takes, drills, lessons, and the strict reading and writing of them. Called
 * by the commands, the store and the client.
 */
@NullMarked
package thinclick.protocol.file;

import org.jspecify.annotations.NullMarked;

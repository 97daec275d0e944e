/**
 * The server jar's commands: a file a command, each a thin shell over a pure package. Called from
 * the command line.
 */
@NullMarked
package thinclick.server.command;

import org.jspecify.annotations.NullMarked;
